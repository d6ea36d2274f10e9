/** What changed in the answers between two states of the content, in plain sentences. */
import { type Change, type ProfileImpact, type States, saysSomething } from '../../impact/index.ts';
import { verdictLabel } from '../wording.ts';
import { factTexts, isToldApart, tableTexts, valueTexts } from './words.ts';

/** What has changed since an earlier revision of the content, and which that is. */
export interface SinceRevision {
  /** Said in the language at the time they are asked for. */
  readonly changes: () => readonly ProfileChange[];
  /** The full name of the commit. */
  readonly commit: string;
  /** The day of the commit, ISO 8601, UTC. */
  readonly date: string;
}

export interface ProfileChange {
  readonly profile: string;
  readonly code: string;
  readonly kind: 'new' | 'changed' | 'gone';
  /** What moved or flipped; empty for profiles that are new or gone. */
  readonly sentences: readonly string[];
}

/**
 * The profiles whose answers changed, in the order of the entries, those that are gone last. Values are told where
 * they moved beyond their uncertainty and are written differently for it; of verdicts, those of the plans that were
 * there before.
 */
export function changesSince({ states, impact }: Change): ProfileChange[] {
  return impact.profiles.filter(saysSomething).flatMap((one): ProfileChange[] => {
    const { profile, code, kind } = one;
    const sentences = kind === 'changed' ? sentencesOf(states, one) : [];
    return kind === 'changed' && sentences.length === 0 ? [] : [{ profile, code, kind, sentences }];
  });
}

function sentencesOf(states: States, one: ProfileImpact): string[] {
  const { code, formerCode, verdicts, tables, facts, values, twins } = one;
  return [
    ...(formerCode === undefined ? [] : [`The code is written ${code} now; before, ${formerCode}.`]),
    ...verdicts.flatMap(({ plan, before, now }) => {
      if (typeof plan !== 'string') return [];
      const name = states.now.base.plans.get(plan)?.data.name ?? plan;
      return [
        `For the plan “${name}” the answer is now “${verdictLabel(now)}”; before, “${verdictLabel(before)}”.`,
      ];
    }),
    ...tables.map((table) => {
      const { question, was, is, where } = tableTexts(states, table);
      return `“${question}” is answered ${is} now; before, ${was}${where === '' ? '' : ` (${where})`}.`;
    }),
    ...facts.map((fact) => {
      const { label, was, is } = factTexts(fact);
      return `${label}: ${is}; before, ${was}.`;
    }),
    ...values.filter(isToldApart).map((value) => {
      const { label, was, is } = valueTexts(value);
      if (!value.before) return `${label}: ${is}; not known before.`;
      return value.now ? `${label}: ${is}; before, ${was}.` : `${label}: not known any more; before, ${was}.`;
    }),
    ...(twins
      ? [`Puts out the same as ${codes(states, twins.now)}; before, as ${codes(states, twins.before)}.`]
      : []),
  ];
}

/** The codes of profiles, by their ids now. */
export function codes({ now, before }: States, ids: readonly string[]): string {
  if (ids.length === 0) return 'no other';
  return ids
    .map((id) => (now.base.profiles.get(id) ?? before.base.profiles.get(id))?.data.code ?? id)
    .join(', ');
}
