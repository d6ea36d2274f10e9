/** What changed in the answers between two states of the content, in plain sentences. */
import { type Change, type ProfileImpact, type States, saysSomething } from '../../impact/index.ts';
import { phrase } from '../../words/index.ts';
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
    ...(formerCode === undefined
      ? []
      : [phrase('The code is written {code} now; before, {was}.', { code, was: formerCode })]),
    ...verdicts.flatMap(({ plan, before, now }) => {
      if (typeof plan !== 'string') return [];
      const name = states.now.base.plans.get(plan)?.data.name ?? plan;
      return [
        phrase('For the plan “{plan}” the answer is now “{is}”; before, “{was}”.', {
          plan: name,
          is: verdictLabel(now),
          was: verdictLabel(before),
        }),
      ];
    }),
    ...tables.map((table) => {
      const { question, was, is, where } = tableTexts(states, table);
      return where === ''
        ? phrase('“{question}” is answered {is} now; before, {was}.', { question, is, was })
        : phrase('“{question}” is answered {is} now; before, {was} ({where}).', { question, is, was, where });
    }),
    ...facts.map((fact) => {
      const { label, was, is } = factTexts(fact);
      return phrase('{label}: {is}; before, {was}.', { label, is, was });
    }),
    ...values.filter(isToldApart).map((value) => {
      const { label, was, is } = valueTexts(value);
      if (!value.before) return phrase('{label}: {is}; not known before.', { label, is });
      return value.now
        ? phrase('{label}: {is}; before, {was}.', { label, is, was })
        : phrase('{label}: not known any more; before, {was}.', { label, was });
    }),
    ...(twins
      ? [
          phrase('Puts out the same as {is}; before, as {was}.', {
            is: codes(states, twins.now),
            was: codes(states, twins.before),
          }),
        ]
      : []),
  ];
}

/** The codes of profiles, by their ids now. */
export function codes({ now, before }: States, ids: readonly string[]): string {
  if (ids.length === 0) return phrase('no other');
  return ids
    .map((id) => (now.base.profiles.get(id) ?? before.base.profiles.get(id))?.data.code ?? id)
    .join(', ');
}
