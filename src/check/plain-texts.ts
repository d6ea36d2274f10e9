/** The texts of entries that are shown to riders as they stand, in the shop’s own words. */
import type { Base, Entry } from '../base/index.ts';

export interface PlainText {
  readonly entry: Entry;
  readonly path: readonly (string | number)[];
  readonly text: string;
}

/**
 * Texts in the shop’s own words. Left out are names, the words of others (quotes, titles and notes of
 * sources), the columns of decision tables and what they ask,
 * what is on record (bench methods, reasons for setting readings aside), and what a screen shows.
 */
export function plainTexts(base: Base): PlainText[] {
  const texts: PlainText[] = [];
  const add = (entry: Entry, text: string, ...path: (string | number)[]): void => {
    texts.push({ entry, path, text });
  };
  for (const family of base.families.values()) {
    add(family, family.data.summary, 'summary');
    for (const [at, { feature }] of family.data.identify.entries()) {
      add(family, feature, 'identify', at, 'feature');
    }
    add(family, family.data.code.where, 'code', 'where');
  }
  for (const guide of base.guides.values()) {
    add(guide, guide.data.title, 'title');
    add(guide, guide.data.summary, 'summary');
  }
  for (const plan of base.plans.values()) {
    add(plan, plan.data.name, 'name');
    add(plan, plan.data.summary, 'summary');
  }
  for (const table of base.tables.values()) {
    const { name, question, about, rules } = table.data;
    add(table, name, 'name');
    add(table, question, 'question');
    add(table, about, 'about');
    for (const [at, { say }] of rules.entries()) {
      if (say !== undefined) add(table, say, 'rules', at, 'say');
    }
  }
  for (const equipment of base.equipment.values()) {
    add(equipment, equipment.data.name, 'name');
    add(equipment, equipment.data.summary, 'summary');
  }
  for (const profile of base.profiles.values()) {
    add(profile, profile.data.about, 'about');
    for (const [at, { hint }] of profile.data.tellApart.entries()) {
      add(profile, hint, 'tellApart', at, 'hint');
    }
  }
  for (const sequence of base.sequences.values()) {
    add(sequence, sequence.data.summary, 'summary');
    for (const [at, { say }] of sequence.data.transitions.entries()) {
      add(sequence, say, 'transitions', at, 'say');
    }
    for (const [at, { recovery }] of sequence.data.states.entries()) {
      for (const [index, { advice }] of (recovery ?? []).entries()) {
        add(sequence, advice, 'states', at, 'recovery', index, 'advice');
      }
    }
  }
  return texts;
}
