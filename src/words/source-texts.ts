/** The texts that source code says: to list them, and to put those of another language in their place. */
import type { Texts } from './language.ts';

/** A text of the interface as the code says it; with `one` where it counts. */
export interface SourceText {
  readonly text: string;
  readonly one?: string;
  /** Where it stands in the source given. */
  readonly offset: number;
}

const call = /(?<![\w.$])(?<name>phrase|countPhrase)(?:<string>)?\(/g;
const literal = /\s*('(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*")/y;
const ending = /\s*,?\s*\)/y;
const comment = /\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/[^\n]*/g;

/** A text between its quotes: what it says, and where it begins and ends. */
interface Quoted {
  readonly value: string;
  readonly from: number;
  readonly to: number;
}

interface Call {
  readonly offset: number;
  readonly text: Quoted;
  readonly one?: Quoted;
  /** Where the call ends, if it gives no values. */
  readonly end?: number;
}

/**
 * Every text of a source file (TypeScript, or Astro), in the order they stand.
 * @throws RangeError, with the line, where a text is not written out: only what is written out can be listed.
 */
export function textsOf(source: string): SourceText[] {
  return callsIn(source).map(({ offset, text, one }) => ({
    text: text.value,
    offset,
    ...(one && { one: one.value }),
  }));
}

/** Where scripts of pages have their texts filled. */
const filler = new URL('./fill.ts', import.meta.url).pathname;

/**
 * The same source saying the texts of another language; those that are missing stay English. A text without slots is
 * said outright, without the call, and one with slots is only filled: scripts of pages are the smaller for it.
 * @throws RangeError as {@link textsOf}
 */
export function replacePhrases(source: string, texts: Texts): string {
  const edits = callsIn(source)
    .map(({ offset, text, one, end }) => {
      const said = JSON.stringify(texts[text.value] ?? text.value);
      if (one) return { from: text.from, to: text.to, said };
      if (end !== undefined) return { from: offset, to: end, said };
      return { from: offset, to: text.to, said: `fillSlots(${said}` };
    })
    .sort((a, b) => b.from - a.from);
  let replaced = source;
  for (const { from, to, said } of edits) replaced = `${replaced.slice(0, from)}${said}${replaced.slice(to)}`;
  const isFilled = edits.some(({ said }) => said.startsWith('fillSlots('));
  return isFilled ? `import { fillSlots } from '${filler}';\n${replaced}` : replaced;
}

function callsIn(source: string): Call[] {
  const code = withoutComments(source);
  return [...code.matchAll(call)].flatMap((found): Call[] => {
    const offset = found.index;
    if (/function\s+$/.test(code.slice(0, offset))) return [];
    const open = offset + found[0].length;
    const isCounting = found.groups?.name === 'countPhrase';
    const one = isCounting ? quotedAt(code, afterComma(code, open)) : undefined;
    const text = quotedAt(code, one ? afterComma(code, one.to) : isCounting ? code.length : open);
    if (text) {
      ending.lastIndex = text.to;
      const isOver = !one && ending.test(code);
      return [{ offset, text, ...(one && { one }), ...(isOver && { end: ending.lastIndex }) }];
    }
    const line = source.slice(0, offset).split('\n').length;
    throw new RangeError(`line ${line}: the text is not written out between quotes`);
  });
}

function quotedAt(code: string, at: number): Quoted | undefined {
  literal.lastIndex = at;
  const [whole, quoted = ''] = literal.exec(code) ?? [];
  if (whole === undefined) return undefined;
  const to = at + whole.length;
  return { value: read(quoted), from: to - quoted.length, to };
}

/** The place after the comma that ends the argument begun at `from`; the end of the code where there is none. */
function afterComma(code: string, from: number): number {
  let depth = 0;
  for (let at = from; at < code.length; at += 1) {
    const char = code.charAt(at);
    if (char === "'" || char === '"' || char === '`') {
      for (at += 1; at < code.length && code[at] !== char; at += 1) if (code[at] === '\\') at += 1;
    } else if ('([{'.includes(char)) depth += 1;
    else if (')]}'.includes(char)) depth -= 1;
    else if (char === ',' && depth === 0) return at + 1;
    if (depth < 0) break;
  }
  return code.length;
}

/** Comments blanked out, so that places stay. */
function withoutComments(source: string): string {
  return source.replace(comment, (text) => text.replace(/[^\n]/g, ' '));
}

/** The value of a string literal, with or without double quotes. */
function read(literalText = ''): string {
  return literalText
    .slice(1, -1)
    .replace(/\\u(?:\{([0-9a-fA-F]+)\}|([0-9a-fA-F]{4}))/g, (_, braced?: string, four?: string) =>
      String.fromCodePoint(Number.parseInt(braced ?? four ?? '', 16)),
    )
    .replace(/\\n/g, '\n')
    .replace(/\\(.)/g, '$1');
}
