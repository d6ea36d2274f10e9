/** The answers that pages are made from, whoever runs Astro. */
import { type Answers, readAnswers } from '../answers.ts';
import { answersInStore } from './store.ts';

let readOnce: Promise<Answers> | undefined;

/**
 * The answers handed over by the command, or, where Astro runs by itself, those of the content folder named
 * by READBACK_CONTENT (default `content`), read once.
 */
export async function currentAnswers(): Promise<Answers> {
  const given = answersInStore();
  if (given) return given;
  const { READBACK_CONTENT: folder = 'content' } = process.env;
  readOnce ??= readAnswers(folder).then(({ answers }) => answers);
  return readOnce;
}
