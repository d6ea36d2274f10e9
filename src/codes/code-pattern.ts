/** The pattern of a family's codes, made ready to be tested: refused where testing a code could take for ever. */

/** Codes are at most this long; see the schema of profiles. */
const longestCode = 40;
/** No pattern of a code needs more; a longer one is a list of codes. */
const longestPattern = 500;
/** More ways than this to read one code: testing could take seconds and more. */
const mostWays = 100_000;

export type CodePattern =
  | { readonly kind: 'ready'; readonly matches: (code: string) => boolean }
  /** `reason` in the words of the JavaScript engine. */
  | { readonly kind: 'invalid'; readonly reason: string }
  | { readonly kind: 'too-long'; readonly most: number }
  | { readonly kind: 'too-costly' };

/**
 * Compiles a pattern (ECMA-262), by Unicode rules where it allows, else by the older, laxer ones.
 * A backtracking engine tries a failing text in every way the pattern could be laid over it, and `(A+)+` has
 * 2ⁿ of them; so the ways are counted before anything is tested, and a pattern with too many is not run.
 */
export function codePattern(pattern: string): CodePattern {
  if (pattern.length > longestPattern) return { kind: 'too-long', most: longestPattern };
  const expression = compiled(pattern, 'u') ?? compiled(pattern, '');
  if (!expression) return { kind: 'invalid', reason: whyInvalid(pattern) };
  if (waysToRead(pattern) > mostWays) return { kind: 'too-costly' };
  return { kind: 'ready', matches: (code) => expression.test(code.slice(0, longestCode)) };
}

function compiled(pattern: string, flags: string): RegExp | undefined {
  try {
    return new RegExp(pattern, flags);
  } catch {
    return undefined;
  }
}

function whyInvalid(pattern: string): string {
  try {
    new RegExp(pattern);
    return '';
  } catch (error) {
    const message = error instanceof Error ? error.message : '';
    return message.slice(message.lastIndexOf(': ') + 2);
  }
}

/** How many ways a part can be laid over a text of at most `longestCode` characters, and its shortest match. */
interface Part {
  readonly ways: number;
  readonly shortest: number;
}

/**
 * An upper bound on the ways a valid pattern can be laid over a code: alternatives add up, parts in a row
 * multiply, and a repetition adds the ways of every count that fits. What alternatives have in common is not
 * looked at, so `(A|B)+` counts as costly though it is not; `[AB]+` says the same.
 */
export function waysToRead(pattern: string): number {
  const reader = { pattern, at: 0 };
  const { ways } = alternatives(reader);
  return pattern.startsWith('^') ? ways : ways * (longestCode + 1);
}

interface Reader {
  readonly pattern: string;
  at: number;
}

function alternatives(reader: Reader): Part {
  let ways = 0;
  let shortest = Number.POSITIVE_INFINITY;
  for (;;) {
    const one = sequence(reader);
    ways += one.ways;
    shortest = Math.min(shortest, one.shortest);
    if (reader.pattern[reader.at] !== '|') return { ways, shortest };
    reader.at += 1;
  }
}

function sequence(reader: Reader): Part {
  let ways = 1;
  let shortest = 0;
  while (reader.at < reader.pattern.length && !'|)'.includes(reader.pattern[reader.at] ?? '')) {
    const one = repeated(reader, atom(reader));
    ways *= one.ways;
    shortest += one.shortest;
  }
  return { ways, shortest };
}

function atom(reader: Reader): Part {
  const { pattern } = reader;
  const first = pattern[reader.at];
  const rest = pattern.slice(reader.at);
  if (first === '(') {
    const opening = /^\((?:\?(?::|<?[=!]|<[^>]*>|[a-z-]*:))?/.exec(rest)?.[0] ?? '(';
    const isLookaround = /[=!]$/.test(opening);
    reader.at += opening.length;
    const inner = alternatives(reader);
    reader.at += 1;
    return isLookaround ? { ways: inner.ways, shortest: 0 } : inner;
  }
  const text =
    /^\[(?:\\.|[^\]\\])*\]|^\\(?:u\{[^}]*\}|[pPk][{<][^}>]*[}>]|u[0-9a-fA-F]{4}|x[0-9a-fA-F]{2}|c[A-Za-z]|\d+|.)|^[\s\S]/u.exec(
      rest,
    )?.[0] ?? rest.slice(0, 1);
  reader.at += Math.max(1, text.length);
  // Anchors take no room, and a reference to a group may take none.
  const isEmpty = /^(?:[\^$]|\\[bB1-9k])/.test(text);
  return { ways: 1, shortest: isEmpty ? 0 : 1 };
}

function repeated(reader: Reader, part: Part): Part {
  const quantifier = /^(?:[*+?]|\{(\d+)(,?)(\d*)\})\??/.exec(reader.pattern.slice(reader.at));
  if (!quantifier) return part;
  reader.at += quantifier[0].length;
  const sign = quantifier[0].charAt(0);
  const least = sign === '{' ? Number(quantifier[1]) : sign === '+' ? 1 : 0;
  const open = sign === '*' || sign === '+' || (quantifier[2] === ',' && quantifier[3] === '');
  const most = open ? Number.POSITIVE_INFINITY : sign === '?' ? 1 : Number(quantifier[3] || quantifier[1]);
  const room = part.shortest === 0 ? longestCode : Math.floor(longestCode / part.shortest);
  let ways = 0;
  for (let count = least; count <= Math.max(least, Math.min(most, room)); count += 1) {
    ways += part.ways ** count;
    if (ways > mostWays) break;
  }
  return { ways: Math.max(1, ways), shortest: part.shortest * least };
}
