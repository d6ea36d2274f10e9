/** Answers of the example base or the demo with edits made in it, for comparisons. */
import { type Answers, answersOf } from '../../src/answers.ts';
import { MemoryFiles, readBase } from '../../src/base/index.ts';
import { changeOf, type Impact, type Rename } from '../../src/impact/index.ts';
import { editedExample, filesOf, type TextEdit } from '../check/example-base.ts';

export async function exampleAnswers(edits: readonly TextEdit[] = []): Promise<Answers> {
  return answersOf((await readBase(editedExample(edits))).base);
}

const demoFiles = await filesOf('content');

/** The demo, with the text of some files put through a function. */
export async function demoAnswers(
  edits: Readonly<Record<string, (text: string) => string>> = {},
): Promise<Answers> {
  const files = new Map(demoFiles);
  for (const [file, edit] of Object.entries(edits)) {
    const [before, after] = [files.get(file) ?? '', edit(files.get(file) ?? '')];
    if (before === after) throw new Error(`the edit changes nothing in ${file}`);
    files.set(file, after);
  }
  return answersOf((await readBase(new MemoryFiles('demo', files))).base);
}

export function impactFrom(before: Answers, now: Answers, renames: readonly Rename[] = []): Impact {
  return changeOf(before, now, renames).impact;
}

/** A sheet with the volts of some rows put through a function. */
export function withVolts(
  isMeant: (cells: readonly string[]) => boolean,
  volts: (before: number) => number,
): (sheet: string) => string {
  return (sheet) =>
    sheet
      .split('\n')
      .map((row) => {
        const cells = row.split(',');
        return isMeant(cells) ? cells.with(4, volts(Number(cells[4])).toFixed(4)).join(',') : row;
      })
      .join('\n');
}
