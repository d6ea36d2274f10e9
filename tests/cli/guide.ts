/** A guide in Markdown, followed step by step: what its commands are shown to print is what they print. */
import { readback } from './run.ts';

/** What a block of a guide shows: a command with what it prints, or something else in a language. */
export interface Step {
  readonly kind: string;
  readonly text: string;
}

/** The blocks of these languages, in their order. */
export function stepsOf(guide: string, kinds: readonly string[]): Step[] {
  const blocks = [...guide.matchAll(/^```(\w+)\n(.*?)^```$/gms)];
  return blocks
    .map(([, kind = '', text = '']) => ({ kind, text }))
    .filter(({ kind }) => kinds.includes(kind));
}

/**
 * Runs the command of a console block on a content folder: the lines it is shown to print, and those it prints.
 * @param prefix what stands before the command’s own words: `npx readback`.
 */
export async function follow(
  text: string,
  prefix: string,
  content: string,
): Promise<{ readonly shown: string[]; readonly printed: string[] }> {
  const [command = '', ...shown] = text
    .trimEnd()
    .replaceAll(/ \\\n\s*/g, ' ')
    .split('\n');
  if (!command.startsWith(`$ ${prefix} `)) throw new Error(`“${command}” does not begin with ${prefix}`);
  const words = [...command.slice(prefix.length + 3).matchAll(/"([^"]*)"|(\S+)/g)];
  const { out, err } = await readback(
    ...words.map(([, quoted, bare]) => quoted ?? bare ?? ''),
    '--content',
    content,
  );
  const printed = [out, err].filter(Boolean).join('\n').replaceAll(content, 'content').split('\n');
  return { shown, printed };
}
