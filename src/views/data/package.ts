/** Everything measured and computed as a Data Package: tables as CSV, and a descriptor that says what they hold. */
import type { Answers } from '../../answers.ts';
import { dataPackagePath, dataPath, sourcePath } from '../paths.ts';
import type { Published, PublishedFile } from '../published-file.ts';
import { siteView } from '../site.ts';
import { csvText } from './csv-text.ts';
import { readingRowsOf, rowsOf } from './rows.ts';
import { columnsOf, type TableSchema, tableSchemas } from './table-schemas.ts';

/** One table of the package. */
export interface DataResource extends PublishedFile {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly schema: TableSchema;
  /** Where its rows come from: title and the path of its page. */
  readonly source?: { readonly title: string; readonly path: string };
}

/** Size and SHA-256 of a file as it was written. */
export interface WrittenFile {
  readonly bytes: number;
  readonly sha256: string;
}

const titles = {
  profiles: ['Profiles', 'Every tuning profile: code, origin and what it is meant for.'],
  characteristics: [
    'Characteristics',
    'Every value computed from the readings, with expanded uncertainty and conditions.',
  ],
  answers: ['Answers to plans', 'What each usual plan makes of each profile.'],
  units: ['Units', 'The head-unit families.'],
  sessions: ['Bench sessions', 'The conditions the readings were taken under.'],
  sources: ['Sources', 'Where the facts come from, and how far to trust them.'],
} as const;

/** The tables, the readings last: one table a session. */
export function dataResources(answers: Answers): DataResource[] {
  const { base } = answers;
  const names = Object.keys(titles) as (keyof typeof titles)[];
  return [
    ...names.map((name): DataResource => {
      const [schema, [title, description]] = [tableSchemas[name], titles[name]];
      return {
        name,
        path: `${dataPath}${name}.csv`,
        title,
        description,
        schema,
        text: () => csvText(columnsOf(schema), rowsOf[name](answers)),
      };
    }),
    ...[...base.outputs.values()]
      .filter(({ id }) => base.readings.has(id))
      .map(({ id, data }): DataResource => {
        const source = base.sources.get(data.source)?.data.title ?? data.source;
        return {
          name: `readings-${id.replaceAll('/', '-')}`,
          path: `${dataPath}readings/${id}.csv`,
          title: `Readings of ${id}`,
          description: `Every reading of the bench session of ${data.date}, as it was taken.`,
          schema: tableSchemas.readings,
          source: { title: source, path: sourcePath(data.source) },
          text: () => csvText(columnsOf(tableSchemas.readings), readingRowsOf(answers, id)),
        };
      }),
  ];
}

/** The descriptor; sizes and digests are given of those files that `written` knows. */
export function dataPackage(
  answers: Answers,
  { address, date }: Published,
  resources: readonly DataResource[],
  written: ReadonlyMap<string, WrittenFile>,
): PublishedFile {
  const { name, about, notice, licence } = siteView(answers);
  const descriptor = {
    $schema: 'https://datapackage.org/profiles/2.0/datapackage.json',
    name: 'readback',
    id: `${address}${dataPackagePath}`,
    title: `${name}: readings and what follows from them`,
    description: [about, notice].filter((text) => text !== undefined).join('\n\n'),
    homepage: address,
    created: `${date}T00:00:00Z`,
    contributors: [{ title: name, path: address, roles: ['publisher'] }],
    ...(licence ? { licenses: [{ name: licence.name, title: licence.title, path: licence.address }] } : {}),
    resources: resources.map(({ name, path, title, description, schema, source }) => ({
      name,
      type: 'table',
      path: path.slice(dataPath.length),
      title,
      description,
      format: 'csv',
      mediatype: 'text/csv',
      encoding: 'utf-8',
      ...fileFacts(written.get(path)),
      ...(source ? { sources: [{ title: source.title, path: `${address}${source.path}` }] } : {}),
      schema: { $schema: 'https://datapackage.org/profiles/2.0/tableschema.json', ...schema },
    })),
  };
  return { path: dataPackagePath, text: () => `${JSON.stringify(descriptor)}\n` };
}

function fileFacts(written: WrittenFile | undefined): object {
  return written ? { bytes: written.bytes, hash: `sha256:${written.sha256}` } : {};
}
