/** The part of the report that is about the content itself: pages, rules, entries. */
import type { Change } from '../../impact/index.ts';
import type { PageChanges } from './pages.ts';
import type { Piece, ReportItem } from './report-parts.ts';

export function pageItems({ added, removed }: PageChanges): ReportItem[] {
  const code = (path: string): Piece => ({ code: `/${path}` });
  return [
    ...removed
      .filter(({ redirected }) => !redirected)
      .map(
        ({ path, now }): ReportItem => ({
          title: [
            'Gone, and its address leads nowhere: ',
            code(path),
            ...(now === undefined ? [] : [' (it is at ', code(now), ' now)']),
          ],
          lines: [],
        }),
      ),
    ...removed
      .filter(({ redirected }) => redirected)
      .map(
        ({ path, now }): ReportItem => ({
          title: ['Moved: ', code(path), ' → ', code(now ?? '')],
          lines: [],
        }),
      ),
    ...added.map((path): ReportItem => ({ title: ['New: ', code(path)], lines: [] })),
  ];
}

export function ruleItems({ states, impact }: Change): ReportItem[] {
  return impact.rules.map(({ table, added, removed, edited, otherwise }) => {
    const line = (what: string, ids: readonly string[]): (readonly Piece[])[] =>
      ids.length === 0 ? [] : [[`${what}: `, { code: ids.join(', ') }]];
    return {
      title: [states.now.base.tables.get(table)?.data.question ?? table],
      lines: [
        ...line('Edited', edited),
        ...line('New', added),
        ...line('Taken out', removed),
        ...(otherwise ? [['Columns, answers, hit policy or order']] : []),
      ],
    };
  });
}

export function entryItems({ impact }: Change, folder: string): ReportItem[] {
  return impact.entries.map(({ file, what, formerFile, decisive }) => ({
    title: [
      { code: below(folder, file) },
      `: ${what}${decisive || what === 'renamed' ? '' : ', wording alone'}`,
      ...(formerFile === undefined ? [] : [' from ', { code: below(folder, formerFile) }]),
    ],
    lines: [],
  }));
}

/** A path as seen from where the command runs. */
export function below(folder: string, file: string): string {
  const start = folder.replace(/\/+$/, '');
  return start === '' || start === '.' ? file : `${start}/${file}`;
}
