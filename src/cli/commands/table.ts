/** `readback table …`: decision tables of entries, DMN files and CSV files. */
import { type Command, Option } from 'commander';
import type { Output } from '../command.ts';
import { type TableCheckOptions, tableCheck } from './table-check.ts';
import { type TableDecideOptions, tableDecide } from './table-decide.ts';
import { type TableExportOptions, tableExport } from './table-export.ts';
import { type TableImportOptions, tableImport } from './table-import.ts';

const files = 'an entry (tables/x.yaml, or its id), a .dmn file, or a .csv file';

/** Adds the commands. @param shared makes the options all commands have. */
export function addTableCommands(
  program: Command,
  shared: { readonly content: () => Option; readonly json: () => Option },
  output: Output,
  done: (command: Promise<number>) => Promise<void>,
): void {
  const table = program
    .command('table')
    .summary('check, decide, export and import decision tables')
    .description('Decision tables (OMG DMN): of entries, of DMN files (1.2 to 1.5), and of CSV files.');

  const again = (text: string, before: readonly string[] | undefined) => [...(before ?? []), text];
  const decision = () =>
    new Option('--decision <name>', 'which decision of a DMN file: its name, label or id');

  table
    .command('check')
    .summary('find gaps, overlaps and rules that do nothing')
    .description(
      'Reads tables and says what is wrong with them: tests that cannot be read, cases no rule holds for, rules that contradict each other, rules and inputs that do nothing.',
    )
    .argument('<file...>', files)
    .addOption(shared.content())
    .addOption(shared.json())
    .action((names: readonly string[], options: TableCheckOptions) =>
      done(tableCheck(names, options, output)),
    );

  table
    .command('decide')
    .summary('say what a table answers')
    .description(
      'Says what a table answers to the values given, and by which rules; of values with an uncertainty, every answer that is possible.',
    )
    .argument('<file>', files)
    .addOption(
      new Option(
        '--input <name=value>',
        'a value, such as "clean volts=3.9" or, with its expanded uncertainty, "clean volts=3.9+-0.15"; may be given again',
      ).argParser(again),
    )
    .addOption(decision())
    .addOption(shared.content())
    .addOption(shared.json())
    .addHelpText(
      'after',
      `
Values: numbers with a point; yes or no; dates as 2026-03-14; texts with or without quotes; null where it is not known.
What is not given counts as not known. Rules are named by their ids; those of a DMN file by their annotation “rule id”,
else their XML id, else their number counted from 1.`,
    )
    .action((name: string, options: TableDecideOptions) => done(tableDecide(name, options, output)));

  table
    .command('export')
    .summary('write a table as DMN or CSV')
    .description(
      'Writes a table as DMN 1.3 XML or as CSV, to the terminal or to a file that is not there yet.',
    )
    .argument('<file>', files)
    .addOption(new Option('--format <format>', 'what to write').choices(['dmn', 'csv']).makeOptionMandatory())
    .addOption(new Option('--out <file>', 'the file to write; it must not be there yet'))
    .addOption(decision())
    .addOption(shared.content())
    .addOption(shared.json())
    .action((name: string, options: TableExportOptions) => done(tableExport(name, options, output)));

  table
    .command('import')
    .summary('make an entry of a DMN or CSV file')
    .description(
      'Makes an entry of a table of a DMN file (1.2 to 1.5) or a CSV file, and says what has to be filled in by hand.',
    )
    .argument('<file>', 'a .dmn file or a .csv file')
    .addOption(new Option('--out <file>', 'the entry to write, tables/x.yaml; it must not be there yet'))
    .addOption(
      new Option('--format <format>', 'what it is, where its name does not say').choices(['dmn', 'csv']),
    )
    .addOption(decision())
    .addOption(shared.json())
    .action((name: string, options: TableImportOptions) => done(tableImport(name, options, output)));
}
