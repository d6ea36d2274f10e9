/** The documents for other programs below `api/v1/`: one a profile, unit and table, and what leads to them. */
import type { IndexDocument } from '../../../schemas/api/index-document.ts';
import { openApiDocument } from '../../../schemas/api/openapi.ts';
import type { SourcesDocument } from '../../../schemas/api/sources.ts';
import type { TableDocument } from '../../../schemas/api/table.ts';
import type { Answers } from '../../answers.ts';
import type { Entry } from '../../base/index.ts';
import { type JudgedTable, judgedTables } from '../judged-tables.ts';
import {
  apiAnswersPath,
  apiIndexPath,
  apiPath,
  apiProfilePath,
  apiSourcesPath,
  apiTablePath,
  apiUnitPath,
  changesPath,
  dataPackagePath,
  openApiPath,
  relativePath,
  sourcePath,
  tableFilePath,
  tablePath,
} from '../paths.ts';
import type { Published, PublishedFile } from '../published-file.ts';
import { siteView } from '../site.ts';
import { answersDocument } from './answers-document.ts';
import { profileDocument } from './profile-document.ts';
import { unitDocument } from './unit-document.ts';

/**
 * Every document, in the order of the entries; each is made when its text is asked for. `tableForms` says in which
 * forms a table is published besides.
 */
export function apiFiles(
  answers: Answers,
  published: Published,
  tableForms: ReadonlyMap<string, readonly ('dmn' | 'csv')[]>,
): PublishedFile[] {
  const { base } = answers;
  const { address } = published;
  const tables = judgedTables(answers);
  return [
    file(apiIndexPath, () => indexDocument(answers, published, tables)),
    file(openApiPath, () => description(answers, address)),
    file(apiSourcesPath, () => sourcesDocument(answers, address)),
    file(apiAnswersPath, () => answersDocument(answers)),
    ...[...base.families.values()].map((family) =>
      file(apiUnitPath(family.id), () => unitDocument(answers, address, family)),
    ),
    ...tables.map((table) =>
      file(apiTablePath(table.entry.id), () =>
        tableDocument(address, table, tableForms.get(table.entry.id) ?? []),
      ),
    ),
    ...[...base.profiles.values()]
      .filter(({ data }) => base.families.has(data.family))
      .map((profile) => ({
        ...file(apiProfilePath(profile.id), () => known(profileDocument(answers, address, profile))),
        profile: profile.id,
      })),
  ];
}

function file(path: string, make: () => object): PublishedFile {
  return { path, text: () => `${JSON.stringify(make())}\n` };
}

function known(document: object | undefined): object {
  if (!document) throw new Error('A profile of a known family has no output.');
  return document;
}

function indexDocument(
  answers: Answers,
  { address, date }: Published,
  tables: readonly JudgedTable[],
): IndexDocument {
  const { name, about, notice, licence } = siteView(answers);
  const from = (path: string): string => relativePath(apiIndexPath, path);
  return {
    api: 'v1',
    name,
    about,
    notice: notice ?? null,
    licence: licence ?? null,
    page: address,
    contentDate: date,
    openapi: from(openApiPath),
    answers: from(apiAnswersPath),
    sources: from(apiSourcesPath),
    dataPackage: from(dataPackagePath),
    changes: from(changesPath),
    units: [...answers.base.families.values()].map(({ id, data }) => ({
      id,
      name: data.name,
      profiles: answers.base.profilesOfFamily.get(id)?.length ?? 0,
      document: from(apiUnitPath(id)),
    })),
    tables: tables.map(({ entry }) => ({
      id: entry.id,
      question: entry.data.question,
      document: from(apiTablePath(entry.id)),
    })),
  };
}

function description(answers: Answers, address: string): object {
  const { name, about, notice, licence } = siteView(answers);
  return openApiDocument({
    title: `${name}: profiles and what they put out`,
    description: [about, notice].filter((text) => text !== undefined).join('\n\n'),
    server: `${address}${apiPath}`,
    licence,
  });
}

function tableDocument(
  address: string,
  { entry, isForPlans }: JudgedTable,
  forms: readonly ('dmn' | 'csv')[],
): TableDocument {
  const { order: _order, ...written } = entry.data;
  return {
    id: entry.id,
    page: `${address}${tablePath(entry.id)}`,
    files: forms.map((form) => ({ form, address: `${address}${tableFilePath(entry.id, form)}` })),
    isForPlans,
    ...written,
  };
}

function sourcesDocument({ base }: Answers, address: string): SourcesDocument {
  const sessions = new Map<string, string[]>();
  for (const { id, data } of base.outputs.values()) {
    sessions.set(data.source, [...(sessions.get(data.source) ?? []), id]);
  }
  return {
    sources: [...base.sources.values()].map(({ id, data }: Entry<'sources'>) => ({
      ...data,
      id,
      page: `${address}${sourcePath(id)}`,
      restsOn: data.restsOn ?? [],
      sessions: sessions.get(id) ?? [],
    })),
  };
}
