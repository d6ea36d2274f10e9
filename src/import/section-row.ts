/** A line between blocks of readings that says what those below are of: `Profile: 8B0S-I5Z`, or a code alone. */
import { quoted, type SheetRow } from './cell.ts';
import { channelOf } from './channels.ts';
import type { Column } from './columns.ts';
import { conditionsIn, factSpecs } from './facts.ts';
import type { HeldKeys } from './held-keys.ts';
import type { ProfileBook } from './profile-book.ts';
import type { KeyName } from './role.ts';

/**
 * Takes such a line up into `keys`; false where the row is none.
 * @param columns those of keys.
 * @param leaveOut told why something of the line is left out.
 */
export function takeSection(
  row: SheetRow,
  columns: readonly Column[],
  keys: HeldKeys,
  book: ProfileBook,
  leaveOut: (why: string) => void,
): boolean {
  const { facts, others } = conditionsIn([row]);
  if (others.length === 0 && facts.length > 0) {
    for (const { name, text } of facts) {
      const spec = factSpecs[name];
      if (spec?.kind === 'key') keys.hold(spec.field as KeyName, text, undefined, row);
      else leaveOut(`“${name}: ${text}” stands between readings: say it above the header`);
    }
    return true;
  }
  const filled = row.cells.filter((cell) => cell !== '');
  const [only] = filled;
  if (filled.length !== 1 || only === undefined) return false;
  const at = row.cells.indexOf(only);
  const column = columns.find((one) => one.at === at);
  if (column?.role.is === 'profile') return false;
  if (book.find(only, undefined).problem === undefined) {
    keys.hold('profile', only, at, row);
    return true;
  }
  if (column && keys.valueOf(column.role.is as KeyName, only).problem === undefined) return false;
  if (channelOf(String(only))) {
    keys.hold('channel', only, at, row);
    return true;
  }
  if (columns.some(({ role }) => role.is === 'profile')) {
    leaveOut(`${quoted(only)} stands alone and names nothing that is known`);
    return true;
  }
  // It may be the code of what stands below, and must not be passed over.
  keys.hold('profile', only, at, row);
  return true;
}
