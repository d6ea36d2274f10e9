/** What the check tells of the example base once edits are made in it. */
import { checkContent } from '../../src/check/index.ts';
import { editedExample, type TextEdit } from './example-base.ts';

/** Each finding as “rule file: message”, in the order they are shown. */
export async function told(...edits: readonly TextEdit[]): Promise<string[]> {
  const { findings } = await checkContent(editedExample(edits));
  return findings.map(({ rule, place, message }) => `${rule} ${place.file}: ${message}`);
}

/** An edit of one file. */
export function edit(file: string, good: string, bad: string): TextEdit {
  return { file, good, bad };
}

/** A new file. */
export function add(file: string, text: string): TextEdit {
  return { file, good: '', bad: text };
}
