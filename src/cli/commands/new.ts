/** `readback new KIND`: asks for an entry, or takes it as flags, and writes it where it belongs. */
import { join } from 'node:path';
import type { Command, Option } from 'commander';
import { entrySchemas, type Kind, kindNouns, markdownKinds } from '../../../schemas/index.ts';
import { entrySchemaFiles } from '../../../schemas/json-schemas.ts';
import type { NewResult } from '../../../schemas/results/new.ts';
import { schemaComment } from '../../base/index.ts';
import { checkContent, jsonReport, newSince, outputsAtOnce, textReport } from '../../check/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson, today } from '../command.ts';
import { keepMemory, recallMemory } from '../kept-memory.ts';
import { entryLines } from '../new/answers-yaml.ts';
import { askedDraft, givenDraft } from '../new/draft.ts';
import { type NewKind, schemaAddress } from '../new/entry-file.ts';
import { shapeOfKind } from '../new/fields.ts';
import { type Flag, flagsOf } from '../new/flags.ts';
import { writeNew } from './table-export.ts';

export interface NewOptions extends ContentOption, JsonOption {
  /** The name of the file, where the usual one will not do. */
  readonly id?: string;
}

/** What each kind is called on the command line: as its schema file is. */
export const newKinds = new Map(
  (Object.keys(entrySchemas) as Kind[])
    .filter((kind): kind is NewKind => kind !== 'site' && kind !== 'words')
    .map((kind) => [entrySchemaFiles[kind].replace('.schema.json', ''), kind]),
);

/** Adds the command, with a command below it for each kind. @param shared makes the options all commands have. */
export function addNewCommands(
  program: Command,
  shared: { readonly content: () => Option; readonly json: () => Option },
  output: Output,
  done: (command: Promise<number>) => Promise<void>,
): void {
  const all = program
    .command('new')
    .summary('write a new entry')
    .description(
      'Asks for an entry in plain words, or takes its fields as flags, and writes it where its kind belongs. Writes over nothing.',
    );
  for (const [word, kind] of newKinds) {
    const flags = flagsOf(shapeOfKind(kind));
    const command = all
      .command(word)
      .summary(`write a new ${kindNouns[kind]}`)
      .description(`${entrySchemas[kind].meta()?.description} Without flags, at a terminal, it is asked for.`)
      .option('--id <name>', 'the name of its file, without ending; absent: made from its fields');
    for (const { option } of flags) command.addOption(option);
    command
      .addOption(shared.content())
      .addOption(shared.json())
      .addHelpText(
        'after',
        '\nA block is written on one line, as YAML: \'{ name: value, other: "a text" }\'.',
      )
      .action((options: NewOptions & Record<string, unknown>) =>
        done(newEntry(kind, flags, options, output)),
      );
  }
}

/** 0 written, 2 could not run: then nothing is. */
async function newEntry(
  kind: NewKind,
  flags: readonly Flag[],
  options: NewOptions & Readonly<Record<string, unknown>>,
  output: Output,
): Promise<number> {
  const { content } = options;
  const shape = shapeOfKind(kind);
  const isGiven = flags.some(({ option }) => options[option.attributeName()] !== undefined);
  const { file, answers } =
    output.dialogue && !isGiven && options.id === undefined
      ? await askedDraft(kind, shape, content, output.dialogue)
      : await givenDraft(kind, shape, flags, options);
  const isMarkdown = markdownKinds.includes(kind);
  const schema = isMarkdown ? null : schemaAddress(content, kind, file);
  const lines = entryLines(shape, answers);
  const text = schema === null ? `---\n${lines}---\n` : `${schemaComment(schema)}${lines}`;
  const memory = recallMemory(content);
  const settings = { today: today(), memory, outputsAtOnce };
  const before = await checkContent(content, settings);
  await writeNew(join(content, file), text);
  const after = await checkContent(content, settings);
  keepMemory(content, memory);
  const report = {
    findings: newSince(after, before, []),
    folder: content,
    sourceOf: after.sourceOf,
    setAside: 0,
  };
  if (options.json) {
    const { findings } = jsonReport(report);
    const id = file.slice(kind.length + 1).replace(/(?:\/session)?\.(?:yaml|md)$/, '');
    const result: NewResult = { kind, id, file, schema, findings };
    printJson(output, result);
    return exitCodes.ok;
  }
  output.out(`Wrote ${join(content, file)}.`);
  if (isMarkdown) output.out('Its text goes below the second line of hyphens.');
  if (report.findings.length === 0) output.out('The check has nothing against it.');
  else output.out(`\nThe check now says:\n\n${textReport(report, output.colour)}`);
  return exitCodes.ok;
}
