/** The commands and their options, as `readback --help` lists them. */
import { Command, CommanderError, InvalidArgumentError, Option } from 'commander';
import { type ContentOption, exitCodes, explainFailure, type JsonOption, type Output } from './command.ts';
import { type BuildOptions, build } from './commands/build.ts';
import { type CheckOptions, check } from './commands/check.ts';
import { type DevOptions, dev } from './commands/dev.ts';
import { type ExplainOptions, explain } from './commands/explain.ts';
import { type FindOptions, find } from './commands/find.ts';
import { type IdentifyOptions, identify } from './commands/identify.ts';
import { type ImpactOptions, impact, impactFormats } from './commands/impact.ts';
import { init } from './commands/init.ts';
import { addNewCommands } from './commands/new.ts';
import { type PlanOptions, plan } from './commands/plan.ts';
import { type ServeOptions, serve } from './commands/serve.ts';
import { type SweepOptions, sweep } from './commands/sweep.ts';
import { addTableCommands } from './commands/table.ts';
import { words } from './commands/words.ts';
import { addImportCommand } from './import/add-command.ts';
import { reportFormats } from './report-file.ts';

/**
 * Runs one command line (without the program's own name) and gives its exit code: 0 clean or found,
 * 1 findings or not found, 2 could not run.
 */
export async function run(argv: readonly string[], output: Output): Promise<number> {
  let code: number = exitCodes.ok;
  const done = async (command: Promise<number>): Promise<void> => {
    code = await command;
  };
  const program = programFor(output, done);
  try {
    await program.parseAsync([...argv], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCodes.ok : exitCodes.cannotRun;
    return explainFailure(output, error);
  }
}

function programFor(output: Output, done: (command: Promise<number>) => Promise<void>): Command {
  const program = new Command('readback')
    .description(
      'Measured outputs of head-unit tuning profiles: checks the entries of a content folder, looks codes up in them, and builds the site riders read.',
    )
    .configureOutput({
      writeOut: (text) => output.out(text.trimEnd()),
      writeErr: (text) => output.err(text.trimEnd()),
    })
    .exitOverride()
    .showHelpAfterError('See readback --help.')
    .addHelpText(
      'after',
      `
Exit codes: 0 clean or found, 1 findings, not found, or a recording that cannot be used, 2 could not run.

Examples:
  readback init ../our-help                 begin a repository of your own entries
  readback new profile                      write an entry, asked for field by field
  readback impact --since main              which answers does a change flip?
  readback check                            is everything sourced, nothing contradictory?
  readback import march.xlsx --like 2025-11-north
                                            what would become of a spreadsheet of readings?
  readback find 8BOS-I5Z                    which profiles may this be, misread or not?
  readback explain 8B0S-I5Z --unit brasslight
  readback table decide amplifier-without-reflash --input 'clean volts=3.9+-0.15'
  readback build --out dist --base /help/   the site, to copy to any web server
  readback serve --content ../our-help/content
                                            check, build and look at it here`,
    );

  const contentOption = () =>
    new Option('--content <dir>', 'the folder that holds site.yaml and the entries').default('content');
  const jsonOption = () => new Option('--json', 'print one JSON object instead of text');
  const outOption = () => new Option('--out <dir>', 'where the site is written').default('dist');
  const baseOption = () =>
    new Option('--base <path>', 'the path it will be served under').default('/').argParser(basePath);
  const hostOption = () => new Option('--host <address>', 'address to listen on').default('127.0.0.1');
  const portOption = () =>
    new Option('--port <number>', 'port to listen on; 0 takes a free one').default(8047).argParser(port);

  program
    .command('init')
    .summary('begin a content repository')
    .description(
      'Begins a content repository in a new or empty folder: one invented unit with all that belongs to it, the workflow that checks every change, a contributor’s guide, and settings for editors. Writes over nothing.',
    )
    .argument('<dir>', 'the folder, which is made where there is none')
    .addOption(jsonOption())
    .action((folder: string, options: JsonOption) => done(init(folder, options, output)));

  addNewCommands(program, { content: contentOption, json: jsonOption }, output, done);

  program
    .command('check')
    .summary('check every entry and reading')
    .description(
      'Checks every entry and reading of the content folder and says what is wrong, where, and what to do.',
    )
    .addOption(contentOption())
    .addOption(new Option('--format <format>', 'how to report').choices(reportFormats).default('text'))
    .addOption(jsonOption())
    .addOption(
      new Option(
        '--out <file>',
        'write a report to a file as well: .txt, .json, .sarif or .html; may be given again',
      ).argParser((text: string, before: readonly string[] | undefined) => [...(before ?? []), text]),
    )
    .addOption(new Option('--since <revision>', 'report only what has come in since a git revision'))
    .addOption(
      new Option('--afresh', 'look at everything anew, not only at what has changed since the last run'),
    )
    .addOption(new Option('--explain <rule>', 'say what a rule demands, with examples; checks nothing'))
    .addOption(new Option('--rules', 'list the rules; checks nothing'))
    .action((options: CheckOptions) => done(check(options, output)));

  program
    .command('impact')
    .summary('what does a change do to the answers?')
    .description(
      'Compares the answers of the content with those at a git revision: verdicts and tables that flipped, values that moved and by how many times their uncertainty, profiles that put out the same, pages. Finds fault with an answer that changed without a new source.',
    )
    .addOption(
      new Option(
        '--since <revision>',
        'the git revision to compare with (default: where the branch left the default branch)',
      ),
    )
    .addOption(contentOption())
    .addOption(new Option('--format <format>', 'how to report').choices(impactFormats).default('text'))
    .addOption(jsonOption())
    .addOption(
      new Option(
        '--out <file>',
        'write a report to a file as well: .txt, .json or .md; may be given again',
      ).argParser((text: string, before: readonly string[] | undefined) => [...(before ?? []), text]),
    )
    .action((options: ImpactOptions) => done(impact(options, output)));

  program
    .command('find')
    .summary('find the profile a code stands for')
    .description(
      'Finds the profiles a code may stand for, likeliest first, misread and oddly typed codes included.',
    )
    .argument('<code>', 'the code as it was read')
    .addOption(new Option('--unit <family>', 'the head-unit family, by id or name'))
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((code: string, options: FindOptions) => done(find(code, options, output)));

  program
    .command('explain')
    .summary('say what a code puts out')
    .description(
      'Says what a profile puts out, with uncertainty, readings and sources, and whether it suits each plan.',
    )
    .argument('<code>', 'the code of the profile')
    .addOption(new Option('--unit <family>', 'the head-unit family, by id or name').makeOptionMandatory())
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((code: string, options: ExplainOptions) => done(explain(code, options, output)));

  program
    .command('plan')
    .summary('keep it, correct it, reflash it or replace it?')
    .description(
      'Holds a profile against a plan and shows the arithmetic: level, bass, channels, speakers, supply, hearing. Classes of equipment are the entries of equipment/.',
    )
    .argument('<code>', 'the code of the profile')
    .addOption(new Option('--unit <family>', 'the head-unit family, by id or name').makeOptionMandatory())
    .addOption(new Option('--amplifier <class>', 'what the unit is to drive; none: speakers straight off it'))
    .addOption(new Option('--fitted <class>', 'the factory amplifier the machine has'))
    .addOption(new Option('--front <class>', 'front speakers'))
    .addOption(new Option('--rear <class>', 'rear speakers'))
    .addOption(new Option('--subwoofer <class>', 'subwoofer'))
    .addOption(new Option('--first <what>', 'what to buy first: amplifier, front, rear or subwoofer'))
    .addOption(new Option('--replacement', 'another unit takes the place of this one'))
    .addOption(new Option('--least <volts>', 'the amplifier’s own: input for full power, gain fully up'))
    .addOption(new Option('--most <volts>', 'the amplifier’s own: what its input takes, gain fully down'))
    .addOption(new Option('--watts <watts>', 'the amplifier’s own: rated power of a channel'))
    .addOption(new Option('--load <ohms>', 'the amplifier’s own: the load that power is rated into'))
    .addOption(new Option('--wire <metres>', 'length of the feed from the battery, one way'))
    .addOption(new Option('--supply <volts>', 'supply at the amplifier while riding'))
    .addOption(new Option('--ear <metres>', 'from the speakers to the ear'))
    .addOption(new Option('--overlap <db>', 'overlap of the gain setting'))
    .addOption(new Option('--generator <amperes>', 'current of the generator'))
    .addOption(new Option('--machine <amperes>', 'current the machine itself takes'))
    .addOption(new Option('--battery <ampere-hours>', 'capacity of the battery'))
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((code: string, options: PlanOptions) => done(plan(code, options, output)));

  program
    .command('identify')
    .summary('tell the profile from meter readings')
    .description(
      'Ranks the profiles of a unit by a few meter readings, says how sure that is, and names the next reading that would tell most.',
    )
    .addOption(new Option('--unit <family>', 'the head-unit family, by id or name').makeOptionMandatory())
    .addOption(
      new Option(
        '--reading <what>',
        'a reading, such as step=12,hz=60,volts=3.4; may be given again',
      ).argParser((text: string, before: readonly string[] | undefined) => [...(before ?? []), text]),
    )
    .addOption(new Option('--accuracy <percent>', 'limit of error of readings that state none, per cent'))
    .addOption(new Option('--level-known', 'the test tone is a full-scale one, not a phone’s'))
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((options: IdentifyOptions) => done(identify(options, output)));

  program
    .command('sweep')
    .summary('measure a recording of a sweep or a tone')
    .description(
      'Measures a WAV recording of an output: response, harmonics and THD from an exponential sine sweep; level, THD and THD+N from a steady tone. Says why where it cannot.',
    )
    .argument('<file>', 'the WAV file: PCM of 16, 24 or 32 bits, or 32-bit float')
    .addOption(
      new Option(
        '--stimulus <what>',
        'what was played: sweep:FROM:TO:SECONDS or tone:HERTZ',
      ).makeOptionMandatory(),
    )
    .addOption(new Option('--take <channel>', 'which channel of a stereo file: left or right'))
    .addOption(
      new Option('--reference <hz=volts>', 'volts rms read with a meter at a frequency, such as 1000=1.00'),
    )
    .addOption(new Option('--full-scale <volts>', 'volts rms of a full-scale sine at this input gain'))
    .addOption(new Option('--session <folder>', 'write the readings into this bench session'))
    .addOption(new Option('--profile <id>', 'with --session: the profile the unit was set to'))
    .addOption(new Option('--channel <output>', 'with --session: the output, FL, FR, RL or RR'))
    .addOption(new Option('--step <number>', 'with --session: the volume step'))
    .addOption(new Option('--repeat <number>', 'with --session: number of the repeat, 1 where left out'))
    .addOption(new Option('--append', 'with --session: add to the readings it has'))
    .addOption(contentOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      '\nBridged outputs: neither terminal is ground. Record through an isolating transformer or a differential input, never with the ground of the interface on a terminal.',
    )
    .action((file: string, options: SweepOptions) => done(sweep(file, options, output)));

  addImportCommand(program, { content: contentOption, json: jsonOption }, output, done);
  addTableCommands(program, { content: contentOption, json: jsonOption }, output, done);

  program
    .command('words')
    .summary('list the texts of the pages a language does not say yet')
    .description(
      'Lists the texts of the interface that a language does not say yet, as lines for words/<tag>.yaml in the content folder. English and Spanish are shipped.',
    )
    .argument('<tag>', 'the language: fr, pt-BR')
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((tag: string, options: ContentOption & JsonOption) => done(words(tag, options, output)));

  program
    .command('build')
    .summary('write the site')
    .description('Checks the content and, where it is clean, writes the site with its search index.')
    .addOption(outOption())
    .addOption(baseOption())
    .addOption(
      new Option(
        '--since <revision>',
        'tell in the feed of changes what answers differ from that git revision',
      ),
    )
    .option('--nginx <file>', 'write a configuration for nginx too: headers, caching, redirects')
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((options: BuildOptions) => done(build(options, output)));

  program
    .command('serve')
    .summary('check, build and serve the site')
    .description('Checks the content, builds the site, serves it on this machine and prints the address.')
    .addOption(outOption())
    .addOption(baseOption())
    .addOption(hostOption())
    .addOption(portOption())
    .addOption(contentOption())
    .addOption(jsonOption())
    .action((options: ServeOptions) => done(serve(options, output)));

  program
    .command('dev')
    .summary('serve the site while entries are edited')
    .description(
      'Serves the site and reloads the page when an entry is saved. Text search needs a built site.',
    )
    .addOption(hostOption())
    .addOption(portOption())
    .addOption(contentOption())
    .action((options: DevOptions) => done(dev(options, output)));

  return program;
}

function basePath(text: string): string {
  if (!/^\/(?:[\w.~-]+\/)*$/.test(`${text.replace(/\/*$/, '')}/`)) {
    throw new InvalidArgumentError('Give a path such as / or /help/.');
  }
  return `${text.replace(/\/*$/, '')}/`;
}

function port(text: string): number {
  const number = Number(text);
  if (!/^\d+$/.test(text) || number > 65_535)
    throw new InvalidArgumentError('Give a number from 0 to 65535.');
  return number;
}
