/** What an import comes to → the files of the entries, by path below the content folder. */
import { isDeepStrictEqual } from 'node:util';
import { parseDocument } from 'yaml';
import { type Base, benchSourceId, entryLineWidth, entryText } from '../base/index.ts';
import { sheetHeader, sheetLine } from '../measure/recording/index.ts';
import type { SheetImport } from './import-sheet.ts';

/** Every file that has to be there, new and old, by path; undefined while anything is missing. */
export function entryFiles(base: Base, found: SheetImport): ReadonlyMap<string, string> | undefined {
  const { id, session, source, existing, changed } = found.session;
  if (id === undefined || !session || !source || !found.rows) return undefined;
  const files = new Map<string, string>();
  const folder = `outputs/${id}`;
  if (!existing) files.set(`${folder}/session.yaml`, entryText('session', 3, session));
  else if (changed.some(({ field }) => !field.startsWith('source.'))) {
    files.set(`${folder}/session.yaml`, edited(existing.source.text, existing.data, session));
  }
  files.set(`${folder}/readings.csv`, readingsText(found));
  const sourceId = existing?.data.source ?? benchSourceId(id);
  const known = base.sources.get(sourceId);
  if (!known) files.set(`sources/${sourceId}.yaml`, entryText('source', 2, source));
  else if (!isDeepStrictEqual(known.data, source)) {
    files.set(`sources/${sourceId}.yaml`, edited(known.source.text, known.data, source));
  }
  for (const profile of found.newProfiles) {
    if (!profile.data) return undefined;
    const { family, code, origin, system, about, sources } = profile.data;
    files.set(
      `profiles/${profile.id}.yaml`,
      entryText('profile', 3, { family, code, origin, system, about, sources }),
    );
  }
  return files;
}

function readingsText({ rows }: SheetImport): string {
  return `${[sheetHeader, ...(rows?.readings ?? []).map(sheetLine)].join('\n')}\n`;
}

/** The text of an entry with the fields that differ set anew; comments and the rest stay. */
function edited(text: string, before: object, now: object): string {
  const document = parseDocument(text);
  const walk = (was: unknown, is: unknown, path: readonly string[]): void => {
    if (isDeepStrictEqual(was, is)) return;
    if (isRecord(was) && isRecord(is)) {
      for (const key of Object.keys(is)) walk(was[key], is[key], [...path, key]);
    } else document.setIn(path, is);
  };
  walk(before, now, []);
  return document.toString({ lineWidth: entryLineWidth });
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return value !== null && typeof value === 'object' && !Array.isArray(value);
}
