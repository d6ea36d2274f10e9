/** Puts values into the slots of a text. */

export type SlotValues = Readonly<Record<string, string | number>>;

/** Stands for `<` within a value, so that no value is taken for a mark; a private character of Unicode. */
const opening = '\ue000';
const marked = /<[a-z]+>/;
const slot = /\{([a-zA-Z][a-zA-Z0-9]*)\}/g;

/** `{step}` → the value named step; a slot without a value stays as it is. Marks are those of the text alone. */
export function fillSlots(text: string, values: SlotValues): string {
  const isMarked = marked.test(text);
  return text.replace(slot, (whole, name: string) => {
    const value = String(values[name] ?? whole);
    return isMarked ? value.replaceAll('<', opening) : value;
  });
}

/** A part of a marked text as it is to be shown. */
export function shownPart(text: string): string {
  return text.replaceAll(opening, '<');
}

/** The names of the slots of a text, each once, sorted. */
export function slotNames(text: string): string[] {
  return [...new Set([...text.matchAll(slot)].map(([, name = '']) => name))].sort();
}
