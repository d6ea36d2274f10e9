/** What a preview of an import shows. */
import type { ImportResult } from '../../../schemas/results/import.ts';
import { quoted } from '../../import/index.ts';
import { counted } from '../../words/index.ts';

/** As many of a kind are shown; `--json` has them all. */
const mostShown = 25;

export function previewText(result: ImportResult): string {
  const parts = [
    titleOf(result),
    columnsText(result),
    section(
      'Conditions',
      table(result.conditions.map(({ field, value, from }) => [field, clipped(value), from])),
    ),
    section('Readings', readingsText(result)),
    section(
      'To know',
      result.notes.map((note) => `- ${note}`),
    ),
    section('Not understood', faultsText(result)),
    section('To be said', [
      ...result.questions.flatMap(({ what, help }) => [`- ${what}`, `  → ${help}`]),
      ...(result.missing.length > 0 ? missingText(result) : []),
    ]),
    section('What it changes', differenceText(result)),
    section('What the check would find', findingsText(result)),
    section('Files', table(result.files.map(({ file, bytes, is }) => [file, `${bytes} bytes`, is]))),
    closingText(result),
  ];
  return parts.filter((part) => part !== '').join('\n\n');
}

function titleOf({ sheet, session, difference }: ImportResult): string {
  if (session === null) return `${sheet}: the session has no name yet`;
  return `${sheet} → session ${session}${difference ? ', which is there already' : ''}`;
}

function section(title: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : [title, ...lines.map((line) => `  ${line}`)].join('\n');
}

function table(rows: readonly (readonly string[])[]): string[] {
  const widths = [0, 1, 2, 3].map((at) => Math.max(0, ...rows.map((row) => (row[at] ?? '').length)));
  return rows.map((row) =>
    row
      .map((cell, at) => cell.padEnd(widths[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );
}

function columnsText({ columns, decimals }: ImportResult): string {
  const rows = columns.map(({ column, head, holds, certainty, why }) => [
    column,
    clipped(head || '(no name)', 28),
    holds === 'note' ? 'left out' : holds,
    certainty === 'guessed' ? `? ${why}` : why.startsWith('left out: ') ? why.slice(10) : why,
  ]);
  const sign = decimals === null ? [] : [`Decimals stand behind a ${decimals}.`];
  return section('Columns, as understood (? is a guess)', [...table(rows), ...sign]);
}

function readingsText({ readings }: ImportResult): string[] {
  const byProfile = new Map<string, string[]>();
  for (const { profile, channel, count } of readings) {
    byProfile.set(profile, [...(byProfile.get(profile) ?? []), `${channel} ${count}`]);
  }
  const rows = [...byProfile].map(([profile, counts]) => [profile, counts.join(', ')]);
  return limited(table(rows), rows.length, 'profiles');
}

function faultsText({ notUnderstood, notUnderstoodCount }: ImportResult): string[] {
  // A code that is not known stands in many rows: it is told once.
  const groups = new Map<string, ImportResult['notUnderstood']>();
  for (const fault of notUnderstood) {
    const key = `${fault.text}\n${fault.problem}\n${fault.help}`;
    groups.set(key, [...(groups.get(key) ?? []), fault]);
  }
  const lines = [...groups.values()].slice(0, mostShown).flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { place, row, line, text, problem, help } = first;
    const where = /^\d+$/.test(place) ? `Row ${place}` : place;
    const more = group.length > 1 ? ` and ${group.length - 1} more` : '';
    const inFile = line === row ? '' : ` (line ${line})`;
    const isSentence = /^[A-Z“]/.test(problem);
    const what = isSentence
      ? problem.replace(/\.$/, '')
      : `${text === '' ? '' : `${quoted(text)} `}${problem}`;
    return [`${where}${more}${inFile}: ${what}.`, `  → ${help}`];
  });
  const hidden = groups.size - mostShown;
  if (hidden > 0) lines.push(`… and ${hidden} more; --json lists them all.`);
  if (notUnderstoodCount > 0) {
    const rows = [...new Set(notUnderstood.map(({ row }) => row))];
    const ranges = asRanges(rows);
    lines.push(
      rows.length === 1 ? 'One row is not read.' : `${rows.length} rows are not read.`,
      ...(ranges.length < 200 ? [`  → Put them right, or go on without them: --leave-out ${ranges}`] : []),
    );
  }
  return lines;
}

/** `3,7-9` */
function asRanges(rows: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const row of [...rows].sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last && row === last[1] + 1) last[1] = row;
    else ranges.push([row, row]);
  }
  return ranges.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(',');
}

function missingText({ missing }: ImportResult): string[] {
  return [
    '- The session still needs what no sheet and no option says:',
    ...missing.flatMap(({ words, help }) => [`    ${words}`, `      ${help}`]),
    '  → --like SESSION takes what an earlier session of the same bench has. Or begin the session by hand: write',
    '    its session.yaml, and import into it with --session.',
  ];
}

function differenceText({ difference }: ImportResult): string[] {
  if (!difference) return [];
  const { added, removed, changed, fields } = difference;
  type One = (typeof added)[number];
  const name = ({ profile, channel, step, hz, repeat }: One): string =>
    `${profile} ${channel} step ${step} ${hz} Hz${repeat > 1 ? ` repeat ${repeat}` : ''}`;
  const volts = ({ voltsRms, thdPercent }: One): string =>
    `${voltsRms} V${thdPercent === null ? '' : `, ${thdPercent} %`}`;
  const lines = [
    ...fields.map(({ field, before, now }) => `${field}: ${clipped(before)} → ${clipped(now)}`),
    ...changed.map(({ before, now }) => `~ ${name(now)}: ${volts(before)} → ${volts(now)}`),
    ...added.map((reading) => `+ ${name(reading)}: ${volts(reading)}`),
    ...removed.map((reading) => `− ${name(reading)}: ${volts(reading)}`),
  ];
  if (lines.length === 0) return [];
  const counts = `${added.length} added, ${changed.length} changed, ${removed.length} removed.`;
  return [...limited(lines, lines.length, 'differences'), counts];
}

function findingsText({ findings }: ImportResult): string[] {
  const lines = (findings ?? []).map(({ rule, severity, place, message, help }) => [
    `${place}  ${severity}  ${rule}: ${message}`,
    `  → ${help}`,
  ]);
  const shown = lines.slice(0, mostShown).flat();
  return lines.length > mostShown
    ? [...shown, `… and ${lines.length - mostShown} more; --json lists them all.`]
    : shown;
}

function limited(lines: readonly string[], count: number, what: string): string[] {
  if (count <= mostShown) return [...lines];
  return [...lines.slice(0, mostShown), `… and ${count - mostShown} more ${what}; --json lists them all.`];
}

function closingText(result: ImportResult): string {
  const { outcome, files, command, session } = result;
  if (outcome === 'unchanged') return `All of it is in ${session} already. Nothing changed.`;
  if (outcome === 'written') {
    const written = files.filter(({ is }) => is !== 'unchanged').length;
    return `Wrote ${counted(written, 'file')}. readback check looks at everything once more.`;
  }
  const guessed = result.columns.filter(({ certainty }) => certainty === 'guessed');
  const errors = (result.findings ?? []).filter(({ severity }) => severity === 'error').length;
  const unsaid = [
    ...(result.notUnderstoodCount > 0 ? ['rows are not understood'] : []),
    ...(result.questions.length + result.missing.length > 0 ? ['something has to be said'] : []),
  ];
  const unwanted = [
    ...(result.difference
      ? ['the session is there already, and differs: --replace takes what the sheet says']
      : []),
    ...(errors > 0 ? ['the check would find errors: put them right, or --despite-findings'] : []),
  ];
  const why = [...unsaid, ...(guessed.length > 0 ? ['guesses are not confirmed'] : []), ...unwanted];
  const isRefused = outcome === 'refused' && !result.ready;
  const first = isRefused
    ? `Nothing was written: ${why.join('; ')}.`
    : unwanted.length > 0 && !result.ready
      ? `Nothing was written, and as it is --write would be refused: ${unwanted.join('; ')}.`
      : 'Nothing was written.';
  if (command === null) return first;
  const confirm = guessed.length > 0 ? 'Correct what is wrong behind --columns. ' : '';
  return `${first} ${confirm}To write it:\n  ${command}`;
}

function clipped(text: string, most = 60): string {
  return text.length > most ? `${text.slice(0, most - 1)}…` : text;
}
