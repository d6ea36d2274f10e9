/** A sheet and what is said of it → readings, session, new profiles; and everything that is open. */
import type { Channel, Profile } from '../../schemas/index.ts';
import { profileSchema } from '../../schemas/index.ts';
import type { Base, Entry } from '../base/index.ts';
import type { CodeIndex } from '../codes/index.ts';
import { counted } from '../words/index.ts';
import { cellText, columnLetters, quoted, type Sheet, type SheetRow } from './cell.ts';
import type { Column, SaidColumns } from './columns.ts';
import { conditionsIn, type Fact, factSpecs } from './facts.ts';
import { findHeader, type Header, unknownSaid } from './header.ts';
import type { Given } from './held-keys.ts';
import { type DecimalSign, type DecimalsFound, SheetDecimals } from './numbers.ts';
import { type NewProfile, ProfileBook } from './profile-book.ts';
import type { KeyName } from './role.ts';
import { type RowsRead, readRows } from './rows.ts';
import { type SessionDraft, sessionDraft } from './session-draft.ts';
import { pairThd } from './thd-columns.ts';

export interface ImportSettings {
  readonly base: Base;
  readonly index: CodeIndex;
  readonly columns: SaidColumns;
  readonly headerRow: number | undefined;
  readonly decimals: DecimalSign | undefined;
  /** Facts said, which go before those of the sheet. */
  readonly facts: readonly Fact[];
  readonly family: string | undefined;
  readonly codes: ReadonlyMap<string, string>;
  readonly fresh: readonly string[];
  readonly channels: ReadonlyMap<string, Channel>;
  readonly isLeftOut: (row: number) => boolean;
  readonly session: string | undefined;
  readonly like: Entry<'outputs'> | undefined;
}

/** Something only a person can say. */
export interface Question {
  readonly what: string;
  readonly help: string;
}

export interface SheetImport {
  readonly header: Header | undefined;
  readonly columns: readonly Column[];
  readonly decimals: DecimalsFound;
  readonly rows: RowsRead | undefined;
  readonly session: SessionDraft;
  readonly newProfiles: readonly (NewProfile & { readonly data: Profile | undefined })[];
  readonly questions: readonly Question[];
  readonly notes: readonly string[];
}

export function importSheet(sheet: Sheet, settings: ImportSettings): SheetImport {
  const header = findHeader(sheet, settings.columns, settings.headerRow);
  const above = header ? sheet.rows.slice(0, header.at - (header.hasGroups ? 1 : 0)) : [];
  const { facts: found, others } = conditionsIn(above);
  const facts = withSaid(found, settings.facts);
  const decimals = decimalsOf(sheet, header, above).conclude(settings.decimals);
  const questions: Question[] = [];
  if (decimals.question !== undefined) questions.push({ what: decimals.question, help: decimals.help });
  const session = sessionDraft({
    base: settings.base,
    facts,
    sign: decimals.sign,
    session: settings.session,
    like: settings.like,
  });
  const book = new ProfileBook({
    base: settings.base,
    index: settings.index,
    family: settings.family,
    said: settings.codes,
    fresh: settings.fresh,
  });
  const notes = [
    ...sheet.notes,
    ...others.map(({ from, text }) => `${from} ${quoted(text)} is not taken over.`),
    ...facts
      .filter(({ name }) => factSpecs[name]?.kind === 'person')
      .map(({ from }) => `${from} names a person, and is not taken over: entries name roles.`),
  ];
  if (!header) {
    questions.push({
      what: 'No row was found that names the columns.',
      help: 'Give each column a name in one row, such as Code, Channel, Step, Frequency (Hz), Volts rms (V), THD (%); or say which row it is with --header ROW.',
    });
    return { header, columns: [], decimals, rows: undefined, session, newProfiles: [], questions, notes };
  }
  const rows = readRows(sheet, header, {
    book,
    sign: decimals.sign,
    isSine: session.isSine,
    given: givenBy(facts),
    channels: settings.channels,
    isLeftOut: settings.isLeftOut,
    asked: new Set(keysWithout(header, facts)),
  });
  questions.push(...columnQuestions(header, settings.columns, rows.lacking));
  const newProfiles = book.newProfiles.map((profile) => newProfile(profile, facts, session, questions));
  if (settings.like && !session.existing) {
    notes.push(
      `Method and conditions are those of ${settings.like.id}. What was otherwise this time is said with --fact, such as --fact "method=…".`,
    );
  }
  notes.push(...book.notes, ...rowNotes(rows));
  return { header, columns: header.columns, decimals, rows, session, newProfiles, questions, notes };
}

/** What is said goes before what the sheet says. */
function withSaid(found: readonly Fact[], said: readonly Fact[]): Fact[] {
  const names = new Set(said.map(({ name }) => name));
  return [...found.filter(({ name }) => !names.has(name)), ...said];
}

/** Figures of all columns that hold any, and of the conditions. */
function decimalsOf(sheet: Sheet, header: Header | undefined, above: readonly SheetRow[]): SheetDecimals {
  const decimals = new SheetDecimals();
  const columns = (header?.columns ?? []).filter(({ role }) => ['volts', 'thd', 'hz'].includes(role.is));
  const from = header ? header.at + header.length : 0;
  for (let at = from; at < sheet.rows.length; at += 1) {
    const row = sheet.rows[at];
    if (!row) continue;
    for (const column of columns) decimals.see(row.cells[column.at] ?? '', row.row, column.at);
  }
  for (const { name, text, from: place } of conditionsIn(above).facts) {
    const kind = factSpecs[name]?.kind;
    if (kind === 'volts' || kind === 'ohms' || kind === 'dbfs' || kind === 'percent') {
      decimals.see(text, Number(/\d+$/.exec(place)?.[0] ?? 0), 0);
    }
  }
  return decimals;
}

/** Profile, output, step or frequency that holds for the whole sheet. */
function givenBy(facts: readonly Fact[]): Given {
  return Object.fromEntries(
    facts.flatMap(({ name, text }) => {
      const spec = factSpecs[name];
      return spec?.kind === 'key' ? [[spec.field, text]] : [];
    }),
  );
}

function columnQuestions(header: Header, said: SaidColumns, lacking: ReadonlySet<KeyName>): Question[] {
  const questions: Question[] = unknownSaid(said, header).map((name) => ({
    what: `--columns names ${quoted(name)}, and there is no such column.`,
    help: `The columns are: ${header.columns.map(({ at, head }) => head || columnLetters(at)).join(', ')}.`,
  }));
  if (!header.columns.some(({ role }) => role.is === 'volts')) {
    questions.push({
      what: 'No column holds volts.',
      help: 'Say which: --columns "HEAD=volts V", or with mV, dBV, dBu, Vpp or Vp.',
    });
  }
  for (const { at, head } of pairThd(header.columns).alone) {
    questions.push({
      what: `Column ${columnLetters(at)} holds distortion, and it is not said of which volts.`,
      help: `Put it behind its column of volts; or leave it out: --columns "${head || columnLetters(at)}=note".`,
    });
  }
  for (const key of lacking) {
    const { words, example } = neededKeys[key as keyof typeof neededKeys];
    questions.push({
      what: `No column holds ${words}.`,
      help: `Say which: --columns "HEAD=${key}"; or, if it is one for the whole sheet, --fact ${example}.`,
    });
  }
  return questions;
}

/** What every reading needs, and how it is said for the whole sheet. */
const neededKeys = {
  profile: { words: 'the code', example: 'code="…"' },
  channel: { words: 'the output', example: 'channel=FL' },
  step: { words: 'the volume step', example: 'step=12' },
  hz: { words: 'the frequency', example: 'frequency=1000' },
} as const satisfies Partial<Record<KeyName, { words: string; example: string }>>;

/** The needed keys that neither a column nor the heads of all columns of volts nor anything said gives. */
function keysWithout({ columns }: Header, facts: readonly Fact[]): KeyName[] {
  const given = givenBy(facts);
  const volts = columns.flatMap(({ role }) => (role.is === 'volts' ? [role.fixed] : []));
  if (volts.length === 0) return [];
  return (Object.keys(neededKeys) as (keyof typeof neededKeys)[]).filter(
    (key) =>
      !columns.some(({ role }) => role.is === key) &&
      given[key] === undefined &&
      !volts.every((fixed) => key in fixed),
  );
}

function rowNotes({ filledDown, numberedRepeats, notFilledIn, leftOut }: RowsRead): string[] {
  const words: Readonly<Record<KeyName, string>> = {
    profile: 'code',
    unit: 'unit',
    channel: 'output',
    step: 'step',
    hz: 'frequency',
    repeat: 'repeat',
  };
  const filled = [...filledDown].map(([key, count]) => `${count} of ${words[key]}`);
  return [
    ...(filled.length > 0 ? [`Empty cells mean the same as above: ${filled.join(', ')}.`] : []),
    ...(numberedRepeats > 0
      ? [
          `${numberedRepeats} ${numberedRepeats === 1 ? 'reading is a repeat' : 'readings are repeats'} of one above, and numbered so.`,
        ]
      : []),
    ...(notFilledIn > 0 ? [`${counted(notFilledIn, 'cell')} for volts not filled in.`] : []),
    ...leftOut.slice(0, 20).map(({ row, why }) => `Row ${row} is left out: ${why}.`),
    ...(leftOut.length > 20 ? [`${leftOut.length - 20} more rows are left out.`] : []),
  ];
}

function newProfile(
  profile: NewProfile,
  facts: readonly Fact[],
  { id, session }: SessionDraft,
  questions: Question[],
): NewProfile & { data: Profile | undefined } {
  const said = (field: string): string | undefined =>
    facts.find(({ name }) => factSpecs[name]?.field === `profile.${field}`)?.text;
  const date = session?.date ?? cellText(facts.find(({ name }) => name === 'date')?.text);
  const data = profileSchema.safeParse({
    family: profile.family,
    code: profile.code,
    origin: said('origin'),
    system: said('system'),
    about: said('about') ?? `Read on the bench on ${date}. Nothing else is known of it yet.`,
    sources: [session?.source ?? `bench-${id ?? ''}`],
  });
  if (data.success) return { ...profile, data: data.data };
  for (const { path } of data.error.issues) {
    const field = String(path[0]);
    const choices =
      field === 'origin'
        ? profileSchema.shape.origin.options
        : field === 'system'
          ? profileSchema.shape.system.options
          : [];
    questions.push({
      what: `The new profile ${profile.code} needs ${field}: ${profileSchema.shape[field as 'origin']?.meta()?.description ?? ''}`,
      help: `--fact ${field}=… with one of: ${choices.join(', ')}.`,
    });
  }
  return { ...profile, data: undefined };
}
