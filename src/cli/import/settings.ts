/** The options of `readback import` as settings. */
import { type Channel, channels } from '../../../schemas/index.ts';
import { type Base, CannotRun, type Entry, nearest } from '../../base/index.ts';
import {
  columnNumber,
  type DecimalSign,
  type Fact,
  headKey,
  type ImportSettings,
  type Role,
  roleHelp,
  roleNamed,
  saidFact,
} from '../../import/index.ts';
import type { ContentOption, JsonOption } from '../command.ts';
import { codeIndexOf } from '../commands/find.ts';
import { unitOf } from '../unit.ts';

export interface ImportOptions extends ContentOption, JsonOption {
  readonly columns?: readonly string[];
  readonly asShown?: boolean;
  readonly write?: boolean;
  readonly session?: string;
  readonly like?: string;
  readonly fact?: readonly string[];
  readonly unit?: string;
  readonly code?: readonly string[];
  readonly new?: readonly string[];
  readonly channel?: readonly string[];
  readonly decimals?: DecimalSign;
  readonly header?: string;
  readonly sheet?: string;
  readonly leaveOut?: readonly string[];
  readonly replace?: boolean;
  readonly despiteFindings?: boolean;
  readonly blankSheet?: string;
  readonly profile?: readonly string[];
}

/** @throws CannotRun where an option names what is not there, or cannot be understood. */
export function settingsOf(options: ImportOptions, base: Base): ImportSettings {
  return {
    base,
    index: codeIndexOf(base),
    columns: columnsSaid(options.columns ?? []),
    headerRow: options.header === undefined ? undefined : rowNumber(options.header, '--header'),
    decimals: options.decimals,
    facts: (options.fact ?? []).map(factSaid),
    family: options.unit === undefined ? undefined : unitOf(base, options.unit).id,
    codes: codesSaid(options.code ?? [], base),
    fresh: options.new ?? [],
    channels: new Map((options.channel ?? []).map(channelSaid)),
    isLeftOut: rowsSaid(options.leaveOut ?? []),
    session: options.session === undefined ? undefined : sessionName(options.session),
    like: options.like === undefined ? undefined : sessionNamed(options.like, base),
  };
}

/** `Level=volts mV, Pos=step`: a comma parts two columns where a name and an equals sign follow. */
function columnsSaid(texts: readonly string[]): ReadonlyMap<string, Role> {
  const said = new Map<string, Role>();
  for (const text of texts.flatMap((one) => one.split(/,(?=[^=,]+=)/))) {
    const cut = text.lastIndexOf('=');
    const name = text.slice(0, cut).trim();
    const role = cut <= 0 ? `“${text}” is not NAME=WHAT.` : roleNamed(text.slice(cut + 1));
    if (typeof role === 'string') throw new CannotRun(`--columns “${text}”: ${role}`, roleHelp);
    said.set(headKey(name), role);
  }
  return said;
}

function factSaid(text: string): Fact {
  const fact = saidFact(text);
  if (typeof fact === 'string')
    throw new CannotRun(`--fact: ${fact}`, 'Write for one: --fact "supply=14.4 V ±0.1".');
  return fact;
}

function codesSaid(texts: readonly string[], base: Base): ReadonlyMap<string, string> {
  return new Map(
    texts.map((text) => {
      const cut = text.lastIndexOf('=');
      const id = text.slice(cut + 1).trim();
      if (cut > 0 && base.profiles.has(id)) return [text.slice(0, cut).trim().toLowerCase(), id] as const;
      const guess = nearest(id, base.profiles.keys());
      throw new CannotRun(
        `--code “${text}” names no profile.`,
        guess ? `Did you mean “${guess}”?` : 'Write --code "WHAT THE SHEET SAYS=family/profile".',
      );
    }),
  );
}

function channelSaid(text: string): readonly [string, Channel] {
  const cut = text.lastIndexOf('=');
  const channel = channels.find(
    (one) =>
      one ===
      text
        .slice(cut + 1)
        .trim()
        .toUpperCase(),
  );
  if (cut > 0 && channel) return [text.slice(0, cut).trim().toLowerCase(), channel];
  throw new CannotRun(
    `--channel “${text}” names no output.`,
    `Write --channel "WHAT THE SHEET SAYS=FL", with one of ${channels.join(', ')}.`,
  );
}

/** `12`, `17-19`, several by commas. */
function rowsSaid(texts: readonly string[]): (row: number) => boolean {
  const ranges = texts
    .flatMap((text) => text.split(','))
    .map((text) => {
      const [from = '', to = from] = text.trim().split('-');
      return [rowNumber(from, '--leave-out'), rowNumber(to, '--leave-out')] as const;
    });
  return (row) => ranges.some(([from, to]) => row >= from && row <= to);
}

function rowNumber(text: string, option: string): number {
  if (/^[1-9]\d{0,6}$/.test(text)) return Number(text);
  const hint = columnNumber(text) >= 0 ? ' Columns are named with --columns.' : '';
  throw new CannotRun(`${option} “${text}” is no number of a row.${hint}`, `Write ${option} 12.`);
}

function sessionName(text: string): string {
  if (/^[a-z0-9]+(-[a-z0-9]+)*$/.test(text)) return text;
  throw new CannotRun(
    `“${text}” cannot name a session.`,
    'Use lower-case letters, digits and single hyphens, such as 2026-03-north.',
  );
}

function sessionNamed(text: string, base: Base): Entry<'outputs'> {
  const session = base.outputs.get(text);
  if (session) return session;
  const guess = nearest(text, base.outputs.keys());
  throw new CannotRun(
    `There is no session “${text}”.`,
    guess ? `Did you mean --like ${guess}?` : `The sessions are: ${[...base.outputs.keys()].join(', ')}.`,
  );
}
