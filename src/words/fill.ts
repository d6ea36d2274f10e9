/** Puts values into the slots of a text. */

export type SlotValues = Readonly<Record<string, string | number>>;

const slot = /\{([a-zA-Z][a-zA-Z0-9]*)\}/g;

/** `{step}` → the value named step; a slot without a value stays as it is. */
export function fillSlots(text: string, values: SlotValues): string {
  return text.replace(slot, (whole, name: string) => String(values[name] ?? whole));
}

/** The names of the slots of a text, each once, sorted. */
export function slotNames(text: string): string[] {
  return [...new Set([...text.matchAll(slot)].map(([, name = '']) => name))].sort();
}
