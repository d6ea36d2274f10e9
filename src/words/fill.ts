/** Puts values into the slots of a text. */

export type SlotValues = Readonly<Record<string, string | number>>;

/** Stands for `<` within a value, so that no value is taken for a mark; a private character of Unicode. */
const opening = '\ue000';
const marked = /<[a-z]+>/;
const slot = /\{([a-zA-Z][a-zA-Z0-9]*)\}/g;

/** The texts of the program, cut once: they are filled hundreds of times for a page. Every second part is a slot’s name. */
const cut = new Map<string, readonly string[]>();

/** `{step}` → the value named step; a slot without a value stays as it is. Marks are those of the text alone. */
export function fillSlots(text: string, values: SlotValues): string {
  const parts = cut.get(text) ?? text.split(slot);
  cut.set(text, parts);
  const isMarked = marked.test(text);
  let filled = '';
  for (const [at, part] of parts.entries()) {
    const value = at % 2 === 0 ? part : String(values[part] ?? `{${part}}`);
    filled += isMarked && at % 2 === 1 ? value.replaceAll('<', opening) : value;
  }
  return filled;
}

/** A part of a marked text as it is to be shown. */
export function shownPart(text: string): string {
  return text.replaceAll(opening, '<');
}

/** The names of the slots of a text, each once, sorted. */
export function slotNames(text: string): string[] {
  return [...new Set([...text.matchAll(slot)].map(([, name = '']) => name))].sort();
}
