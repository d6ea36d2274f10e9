/** `readback table check FILE…`: what is wrong with these decision tables? */
import { join } from 'node:path';
import type { TableCheckResult } from '../../../schemas/results/table-check.ts';
import { type Base, CannotRun, compareFindings, type Finding, type TextFile } from '../../base/index.ts';
import {
  checkContent,
  isFailing,
  jsonReport,
  outputsAtOnce,
  type Report,
  textReport,
} from '../../check/index.ts';
import { counted } from '../../words/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson, today } from '../command.ts';
import { keepMemory, recallMemory } from '../kept-memory.ts';
import { lookAtCsv, lookAtDmn, unreadable } from '../tables/file-findings.ts';
import { type NamedTable, namedTable, readTableFile, UnreadableTable } from '../tables/table-file.ts';

export type TableCheckOptions = ContentOption & JsonOption;

interface Looked {
  readonly tables: TableCheckResult['tables'];
  readonly findings: readonly Finding[];
  readonly sources: ReadonlyMap<string, TextFile>;
}

/** 0 clean or notes only, 1 findings, 2 could not run. */
export async function tableCheck(
  names: readonly string[],
  options: TableCheckOptions,
  output: Output,
): Promise<number> {
  const all: Looked[] = [];
  for (const name of names) all.push(await look(name, options));
  const tables = all.flatMap((one) => one.tables);
  const sources = new Map(all.flatMap((one) => [...one.sources]));
  const report: Report = {
    findings: all.flatMap((one) => one.findings).toSorted(compareFindings),
    folder: '',
    sourceOf: (file) => sources.get(file),
    setAside: 0,
  };
  if (options.json) {
    const { findings, counts } = jsonReport(report);
    const result: TableCheckResult = { tables, findings, counts };
    printJson(output, result);
  } else {
    const text = textReport(report, output.colour);
    // The closing line of the check speaks of a whole content folder.
    const news = report.findings.length > 0 ? text.slice(0, text.lastIndexOf('\n') + 1) : '';
    output.out(isFailing(report.findings) ? text : `${news}${cleanLine(tables)}`);
  }
  return isFailing(report.findings) ? exitCodes.findings : exitCodes.ok;
}

function cleanLine(tables: TableCheckResult['tables']): string {
  const rules = tables.reduce((sum, one) => sum + one.rules, 0);
  const unanalysed = tables.filter(({ analysed }) => !analysed).map(({ table }) => `“${table}”`);
  const of = `${counted(tables.length, 'table')}, ${counted(rules, 'rule')}`;
  return unanalysed.length === 0
    ? `No gaps, no contradictions: ${of}.`
    : `Nothing is wrong with ${of}; ${unanalysed.join(', ')} can be evaluated, but not analysed.`;
}

async function look(name: string, options: TableCheckOptions): Promise<Looked> {
  const named = await namedTable(name, options);
  if (named.kind === 'entry') return lookAtEntry(name, named);
  try {
    const file = await readTableFile(name, options);
    if (file.kind === 'entry') throw new Error('an entry is looked at by the check');
    const looked = file.kind === 'csv' ? [lookAtCsv(file)] : lookAtDmn(file);
    return {
      tables: looked.map(({ table, rules, analysed }) => ({ file: name, table, rules, analysed })),
      findings: looked.flatMap(({ findings }) => findings),
      sources: new Map([[file.source.file, file.source]]),
    };
  } catch (error) {
    if (!(error instanceof UnreadableTable)) throw error;
    const { source } = error;
    return { tables: [], findings: [unreadable(error)], sources: new Map([[source.file, source]]) };
  }
}

/** The check looks at the whole content folder, for entries link to each other; told is what concerns this one. */
async function lookAtEntry(name: string, { id, content }: NamedTable & { kind: 'entry' }): Promise<Looked> {
  const memory = recallMemory(content);
  const { answers, findings, sourceOf } = await checkContent(content, {
    today: today(),
    memory,
    outputsAtOnce,
  });
  keepMemory(content, memory);
  const file = `tables/${id}.yaml`;
  const own = findings.filter(({ place }) => place.file === file);
  const table = answers.tables.get(id)?.table;
  if (!answers.base.tables.has(id) && own.length === 0) throw noSuchTable(id, content, answers.base);
  const path = (one: string): string => join(content, one);
  const placed = own.map(
    (one): Finding => ({
      ...one,
      place: { ...one.place, file: path(one.place.file) },
      related: one.related.map((other) => ({
        ...other,
        place: { ...other.place, file: path(other.place.file) },
      })),
    }),
  );
  const files = new Set(
    own.flatMap((one) => [one.place.file, ...one.related.map(({ place }) => place.file)]),
  );
  const sources = [...files].flatMap((one): [string, TextFile][] => {
    const source = sourceOf(one);
    return source ? [[path(one), source]] : [];
  });
  const rules = answers.base.tables.get(id)?.data.rules.length ?? 0;
  return {
    tables: [{ file: name, table: id, rules, analysed: table !== undefined }],
    findings: placed,
    sources: new Map(sources),
  };
}

function noSuchTable(id: string, content: string, { tables }: Base): CannotRun {
  const all = [...tables.keys()];
  return new CannotRun(
    `There is no table “${id}” in ${content}.`,
    all.length === 0 ? 'It has no tables.' : `It has: ${all.join(', ')}.`,
  );
}
