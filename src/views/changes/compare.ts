/** What changed in the answers between two states of the content, in plain sentences. */
import type { AnswersDocument, ProfileAnswers } from '../../../schemas/api/answers.ts';
import { type CharacteristicName, characteristicNames, characteristicUnits } from '../../../schemas/index.ts';
import { formatQuantity } from '../../measure/format.ts';
import { characteristicLabel, verdictLabel } from '../wording.ts';

/** The answers as they were at an earlier revision of the content. */
export interface EarlierAnswers {
  readonly answers: AnswersDocument;
  /** The full name of the commit. */
  readonly commit: string;
  /** The day of the commit, ISO 8601, UTC. */
  readonly date: string;
  /** Profiles that have another id now, by their id then. */
  readonly renamed: ReadonlyMap<string, string>;
}

export interface ProfileChange {
  readonly profile: string;
  readonly code: string;
  readonly kind: 'new' | 'changed' | 'gone';
  /** What moved or flipped; empty for profiles that are new or gone. */
  readonly sentences: readonly string[];
}

type Headline = NonNullable<ProfileAnswers['values'][CharacteristicName]>;

/**
 * The profiles whose answers changed, in the order of the entries, those that are gone last. A value has changed
 * where it moved by more than the larger of its two expanded uncertainties and is written differently for it, became
 * a bound or stopped being one, or is known in one of the two only. Of plans, those that were there before are
 * compared. `planNames` are by plan id.
 */
export function changesSince(
  earlier: Pick<EarlierAnswers, 'answers' | 'renamed'>,
  now: AnswersDocument,
  planNames: ReadonlyMap<string, string>,
): ProfileChange[] {
  const before = new Map(
    Object.entries(earlier.answers.profiles).map(([id, answers]) => [earlier.renamed.get(id) ?? id, answers]),
  );
  const changes = Object.entries(now.profiles).flatMap(([profile, answers]): ProfileChange[] => {
    const was = before.get(profile);
    const { code } = answers;
    if (!was) return [{ profile, code, kind: 'new', sentences: [] }];
    const sentences = [
      ...(was.code === code ? [] : [`The code is written ${code} now; before, ${was.code}.`]),
      ...verdictSentences(was, answers, planNames),
      ...characteristicNames.flatMap((name) => valueSentence(name, was.values[name], answers.values[name])),
    ];
    return sentences.length === 0 ? [] : [{ profile, code, kind: 'changed', sentences }];
  });
  const gone = [...before].flatMap(([profile, { code }]): ProfileChange[] =>
    profile in now.profiles ? [] : [{ profile, code, kind: 'gone', sentences: [] }],
  );
  return [...changes, ...gone];
}

function verdictSentences(
  was: ProfileAnswers,
  now: ProfileAnswers,
  planNames: ReadonlyMap<string, string>,
): string[] {
  return Object.entries(now.verdicts).flatMap(([plan, verdict]) => {
    const before = was.verdicts[plan];
    if (before === undefined || before === verdict) return [];
    const name = planNames.get(plan) ?? plan;
    return [
      `For the plan “${name}” the answer is now “${verdictLabel(verdict)}”; before, “${verdictLabel(before)}”.`,
    ];
  });
}

function valueSentence(
  name: CharacteristicName,
  was: Headline | undefined,
  now: Headline | undefined,
): string[] {
  const label = characteristicLabel(name);
  if (!was) return now ? [`${label}: ${written(name, now)}; not known before.`] : [];
  if (!now) return [`${label}: not known any more; before, ${written(name, was)}.`];
  const [texts, moved] = [[written(name, now), written(name, was)], Math.abs(now[0] - was[0])];
  const hasMoved = moved > Math.max(now[1], was[1]) && texts[0] !== texts[1];
  return hasMoved || now[2] !== was[2] ? [`${label}: ${texts[0]}; before, ${texts[1]}.`] : [];
}

function written(name: CharacteristicName, [value, expandedUncertainty, bound]: Headline): string {
  return formatQuantity({ value, expandedUncertainty, bound, unit: characteristicUnits[name] });
}
