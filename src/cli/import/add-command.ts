/** `readback import` and its options. */
import { type Command, Option } from 'commander';
import type { Output } from '../command.ts';
import { importReadings } from '../commands/import.ts';
import type { ImportOptions } from './settings.ts';

/** Options that other commands have too. */
interface SharedOptions {
  readonly content: () => Option;
  readonly json: () => Option;
}

export function addImportCommand(
  program: Command,
  options: SharedOptions,
  output: Output,
  done: (command: Promise<number>) => Promise<void>,
): void {
  const again = (text: string, before: readonly string[] | undefined) => [...(before ?? []), text];
  program
    .command('import')
    .summary('a spreadsheet of readings as a bench session')
    .description(
      'Reads a spreadsheet of any layout, CSV or XLSX, and shows what would be written: what each column was taken for, the readings, and row by row what is not understood. Writes nothing without --write, and then all or nothing.',
    )
    .argument('[sheet]', 'the .csv or .xlsx file')
    .addOption(new Option('--write', 'write it, if nothing stands against it'))
    .addOption(
      new Option(
        '--columns <what>',
        'what columns hold, such as "Level=volts mV,Pos=step"; may be given again',
      ).argParser(again),
    )
    .addOption(new Option('--as-shown', 'the guessed columns are as the preview shows them'))
    .addOption(
      new Option('--like <session>', 'take conditions, instrument and method from an earlier session'),
    )
    .addOption(
      new Option(
        '--fact <name=value>',
        'what the sheet does not say, such as supply=14.4 or date=2026-03-14; may be given again',
      ).argParser(again),
    )
    .addOption(new Option('--session <name>', 'the session to enter it as; else made of date and bench'))
    .addOption(new Option('--unit <family>', 'the head-unit family the codes are of, by id or name'))
    .addOption(
      new Option(
        '--code <code=profile>',
        'which profile a code in the sheet means; may be given again',
      ).argParser(again),
    )
    .addOption(
      new Option('--new <code>', 'a code of a profile not yet known; may be given again').argParser(again),
    )
    .addOption(
      new Option(
        '--channel <name=output>',
        'which output a name means, such as "A=FL"; may be given again',
      ).argParser(again),
    )
    .addOption(new Option('--decimals <sign>', 'what stands before decimals').choices(['point', 'comma']))
    .addOption(new Option('--header <row>', 'the row that names the columns'))
    .addOption(new Option('--sheet <name>', 'which sheet of a workbook'))
    .addOption(new Option('--leave-out <rows>', 'rows to leave out, such as 12,17-19').argParser(again))
    .addOption(new Option('--replace', 'change a session that is there already'))
    .addOption(
      new Option('--despite-findings', 'write it although the check would find errors in the readings'),
    )
    .addOption(new Option('--blank-sheet <file>', 'write an empty sheet to fill in; imports nothing'))
    .addOption(
      new Option('--profile <id>', 'with --blank-sheet: a profile to be read; may be given again').argParser(
        again,
      ),
    )
    .addOption(options.content())
    .addOption(options.json())
    .action((sheet: string | undefined, given: ImportOptions) => done(importReadings(sheet, given, output)));
}
