/** What is wrong with the texts of a language, held against what the code says. */
import { slotNames } from './fill.ts';
import { type Texts, tagTexts, type WordForms } from './language.ts';
import { tagNames } from './tagged.ts';

export interface TextFault {
  readonly kind: 'missing' | 'unknown' | 'slots' | 'marks' | 'forms';
  /** The English text. */
  readonly text: string;
  /** What is to be there, for slots, marks and forms. */
  readonly needed: readonly string[];
}

/**
 * Texts that are missing, that nothing says, or whose slots, marks or plural forms differ from the English ones.
 * @param said every text of the interface; true where it counts.
 * @param tag the language, for its plural categories. Of those only “one” and “other” have to be there where it has
 * them, as “many” and the like fall back to “other” (CLDR: Spanish says “many” from a million on).
 */
export function textFaults(said: ReadonlyMap<string, boolean>, texts: Texts, tag: string): TextFault[] {
  const faults: TextFault[] = [];
  const categories: readonly string[] = new Intl.PluralRules(tag).resolvedOptions().pluralCategories;
  const needed = ['one', 'few', 'other'].filter((one) => categories.includes(one));
  for (const [text, counts] of said) {
    const found = texts[text];
    if (found === undefined) {
      faults.push({ kind: 'missing', text, needed: [] });
      continue;
    }
    if (typeof found !== 'string') {
      if (!counts || needed.some((form) => found[form] === undefined)) {
        faults.push({ kind: 'forms', text, needed: counts ? needed : [] });
        continue;
      }
    } else if (counts && needed.length > 1) {
      faults.push({ kind: 'forms', text, needed });
      continue;
    }
    faults.push(...differing(text, found));
  }
  for (const text of Object.keys(texts)) {
    if (!said.has(text) && !tagTexts.includes(text)) faults.push({ kind: 'unknown', text, needed: [] });
  }
  return faults;
}

function differing(text: string, found: string | WordForms): TextFault[] {
  const forms = typeof found === 'string' ? [found] : Object.values(found);
  const slots = slotNames(text);
  const marks = tagNames(text);
  // A form for one thing may leave its number out: “the only reading”.
  const isOfSlots = (form: string): boolean => {
    const has = slotNames(form);
    return (
      has.every((name) => slots.includes(name)) &&
      slots.every((name) => has.includes(name) || (name === 'count' && forms.length > 1))
    );
  };
  if (!forms.every(isOfSlots)) return [{ kind: 'slots', text, needed: slots }];
  if (!forms.every((form) => tagNames(form).join() === marks.join()))
    return [{ kind: 'marks', text, needed: marks }];
  return [];
}
