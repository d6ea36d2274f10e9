/** Imports a sheet given as text against the demo, with what may be said of it. */
import { readBase } from '../../src/base/index.ts';
import { codeIndexOf } from '../../src/cli/commands/find.ts';
import { type ImportSettings, importSheet, readSheet, type SheetImport } from '../../src/import/index.ts';

export const { base } = await readBase('content');
const index = codeIndexOf(base);

export const unsaid: ImportSettings = {
  base,
  index,
  columns: new Map(),
  headerRow: undefined,
  decimals: undefined,
  facts: [],
  family: undefined,
  codes: new Map(),
  fresh: [],
  channels: new Map(),
  isLeftOut: () => false,
  session: undefined,
  like: undefined,
};

export function imported(text: string | Uint8Array, said: Partial<ImportSettings> = {}): SheetImport {
  const bytes = typeof text === 'string' ? new TextEncoder().encode(text) : text;
  return importSheet(readSheet(bytes, undefined), { ...unsaid, ...said });
}

/** The readings as lines: profile channel step hz volts thd repeat. */
export function linesOf({ rows }: SheetImport): string[] {
  return (rows?.readings ?? []).map(({ profile, channel, step, hz, voltsRms, thdPercent, repeat }) =>
    [profile, channel, step, hz, voltsRms, thdPercent ?? '-', repeat].join(' '),
  );
}

/** What each column holds and how sure that is. */
export function rolesOf({ columns }: SheetImport): string[] {
  return columns.map(({ role, certainty }) => `${role.is} ${certainty}`);
}

/** What is not understood: place and reason. */
export function faultsOf({ rows }: SheetImport): string[] {
  return (rows?.faults ?? []).map(({ place, problem }) => `${place} ${problem}`);
}
