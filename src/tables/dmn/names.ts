/** Names: ids of entries, names FEEL can read, and ids XML can hold. */

/** Words a FEEL name must not begin with, as a reader would take them for something else (DMN 1.3, 10.3.1.2). */
const reserved =
  /^(and|between|date|duration|else|every|external|false|for|function|if|in|instance|not|null|of|or|return|satisfies|some|then|time|true)( |$)/;

/**
 * The name FEEL knows an id by. Hyphens become blanks, for `clean-volts` would be a subtraction; a name that begins
 * with a digit or a word of FEEL’s own gets `_` before it. {@link idOfFeelName} undoes it.
 */
export function feelName(id: string): string {
  const name = id.replaceAll('-', ' ');
  return reserved.test(name) || /^[\d_]/.test(name) ? `_${name}` : name;
}

/** The id {@link feelName} made a name of, where it is one that could have come from an id: lower-case words. */
export function idOfFeelName(name: string): string {
  return name.replace(/^_/, '').replaceAll(' ', '-');
}

/** An id for any name: lower-case letters and digits in words joined by hyphens. */
export function idFor(name: string): string {
  const words = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, '$1-$2')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return words === '' ? 'unnamed' : words;
}

/** What is alike in two spellings of a name: capitals, and blanks, hyphens and underscores between words, aside. */
export function likeName(name: string): string {
  return name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}

/**
 * Texts as one XML id (NCName): a prefix of letters, then what tells it apart. Other characters than letters, digits and
 * hyphens are written by their number, so that no two ids are one.
 */
export function xmlId(prefix: string, ...parts: readonly string[]): string {
  const encoded = parts.map((part) =>
    part.replace(/[^A-Za-z0-9-]/gu, (one) => `_${one.codePointAt(0)?.toString(16)}_`),
  );
  return [prefix, ...encoded].join('.');
}

/** A FEEL text with names put for other names, outside of quoted texts; longer names first. */
export function renamed(text: string, names: ReadonlyMap<string, string>): string {
  const changed = [...names].filter(([from, to]) => from !== to).sort(([a], [b]) => b.length - a.length);
  if (changed.length === 0) return text;
  const escaped = changed.map(([from]) => from.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  const pattern = new RegExp(`"(?:[^"\\\\]|\\\\.)*"|(?<![\\w-])(?:${escaped.join('|')})(?![\\w-])`, 'g');
  const lookup = new Map(changed);
  return text.replace(pattern, (found) => lookup.get(found) ?? found);
}
