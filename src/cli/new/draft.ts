/** An entry and its file, from what was answered or given as flags. */
import { join } from 'node:path';
import { kindNouns } from '../../../schemas/index.ts';
import { CannotRun, type DataPath, readBase, valueAt } from '../../base/index.ts';
import { isThere } from '../commands/whole-file.ts';
import { type EntryAnswers, faultsOf, isWithin } from './answers.ts';
import type { Dialogue } from './dialogue.ts';
import { fileFor, type NewKind, usualName } from './entry-file.ts';
import type { BlockShape, UnionShape } from './fields.ts';
import { answersFrom, type Flag } from './flags.ts';
import { Questions } from './questions.ts';

export interface Draft {
  /** Below the content folder. */
  readonly file: string;
  readonly answers: EntryAnswers;
}

/**
 * The entry that flags give.
 * @throws CannotRun where fields are missing or wrong, or the file is there.
 */
export async function givenDraft(
  kind: NewKind,
  shape: BlockShape | UnionShape,
  flags: readonly Flag[],
  options: Readonly<Record<string, unknown>> & { readonly content: string; readonly id?: string },
): Promise<Draft> {
  const { content, id } = options;
  const { base } = await readBase(content);
  const answers = answersFrom(flags, options);
  const faults = faultsOf(kind, shape, answers, base);
  if (faults.length > 0) {
    const flagAt = (path: DataPath): string =>
      flags.find((flag) => isWithin(path, flag.path))?.option.long ?? '';
    const isMissing = ({ path }: { path: DataPath }): boolean => valueAt(answers, path) === undefined;
    const missing = flags.filter(
      (flag) => flag.needed && faults.some((fault) => isMissing(fault) && isWithin(flag.path, fault.path)),
    );
    // What lies within the value of a flag has no flag of its own.
    const told = faults.filter(
      (one) => !isMissing(one) || !flags.some(({ path }) => isWithin(path, one.path)),
    );
    throw new CannotRun(
      [
        `No ${kindNouns[kind]} was written.`,
        ...told.map(({ path, message, help }) => `  ${flagAt(path)}: ${message} ${help}`),
        ...(missing.length > 0 ? ['  Missing:'] : []),
        ...missing.map(({ option }) => `    ${option.flags}  ${option.description}`),
      ].join('\n'),
      'Put the flags right; at a terminal the command without flags asks for each field.',
    );
  }
  const name = id ?? usualName(kind, answers) ?? '';
  const file = fileFor(kind, name, answers);
  if (await isThere(join(content, file))) {
    throw new CannotRun(
      `${join(content, file)} is there already, and is left as it is.`,
      'Give another name: --id NAME.',
    );
  }
  return { file, answers };
}

/**
 * The entry a person gives at a terminal.
 * @throws CannotRun where it was stopped.
 */
export async function askedDraft(
  kind: NewKind,
  shape: BlockShape | UnionShape,
  content: string,
  open: () => Dialogue,
): Promise<Draft> {
  const { base } = await readBase(content);
  const dialogue = open();
  try {
    dialogue.tell(`A new ${kindNouns[kind]}. Ctrl-C stops; until the last answer nothing is written.`);
    const questions = new Questions(kind, shape, base, dialogue);
    let file: string | undefined;
    await questions.askAll(async () => {
      // As soon as the fields are known that it is named by: nobody should type a page for nothing.
      if (file === undefined) file = await nameFor(kind, questions.answers, content, dialogue);
    });
    if (file === undefined) throw new Error('an entry without a name');
    return { file, answers: questions.answers };
  } finally {
    dialogue.close();
  }
}

/** Asks for the name of the file; undefined where it does not follow from the answers yet. */
async function nameFor(
  kind: NewKind,
  answers: EntryAnswers,
  content: string,
  dialogue: Dialogue,
): Promise<string | undefined> {
  const usual = usualName(kind, answers);
  if (usual === undefined) return undefined;
  for (;;) {
    const path = join(content, fileFor(kind, usual, answers));
    const isFree = !(await isThere(path));
    const question = isFree
      ? `It goes to ${path}. Enter, or another name:`
      : `${path} is there already. Another name:`;
    const name = (await dialogue.ask(`${question}\n> `)).trim();
    if (name === '' && isFree) return fileFor(kind, usual, answers);
    if (name === '') continue;
    try {
      const file = fileFor(kind, name, answers);
      if (!(await isThere(join(content, file)))) return file;
      dialogue.tell(`  ${join(content, file)} is there already.`);
    } catch (error) {
      if (!(error instanceof CannotRun)) throw error;
      dialogue.tell(`  ${error.message}\n  → ${error.help}`);
    }
  }
}
