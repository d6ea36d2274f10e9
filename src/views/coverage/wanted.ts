/** The readings wanted most: what would settle most of the answers that are open. */
import type { Answers } from '../../answers.ts';
import { type CharacteristicName, greatestBoost, type ProfileOutput } from '../../measure/index.ts';
import { type OpenAnswer, openAnswers } from './open-answers.ts';

/** A characteristic of a profile that answers wait for. */
export interface Wanted {
  readonly profile: string;
  readonly characteristic: CharacteristicName;
  /** Not measured at all, or measured but too near a limit of an answer. */
  readonly state: 'missing' | 'borderline';
  /** Answers that it alone would settle. */
  readonly settles: readonly OpenAnswer[];
  /** Answers it has a say in along with others. */
  readonly hasASay: readonly OpenAnswer[];
}

/**
 * What answers wait for, that which settles most first; of equals that which has a say in most, then by profile.
 */
export function wantedOf(answers: Answers, open: readonly OpenAnswer[] = openAnswers(answers)): Wanted[] {
  const wanted = new Map<string, { -readonly [Key in keyof Wanted]: Wanted[Key] }>();
  for (const answer of open) {
    for (const { characteristic, settles } of answer.waitsFor) {
      const key = `${answer.profile} ${characteristic}`;
      const output = answers.outputs.get(answer.profile);
      const one = wanted.get(key) ?? {
        profile: answer.profile,
        characteristic,
        state: output && decidingValue(output, characteristic) ? 'borderline' : 'missing',
        settles: [],
        hasASay: [],
      };
      if (settles) one.settles = [...one.settles, answer];
      else one.hasASay = [...one.hasASay, answer];
      wanted.set(key, one);
    }
  }
  return [...wanted.values()].sort(
    (a, b) =>
      b.settles.length - a.settles.length ||
      b.hasASay.length - a.hasASay.length ||
      a.profile.localeCompare(b.profile, 'en') ||
      a.characteristic.localeCompare(b.characteristic, 'en'),
  );
}

/** The value answers go by: of the bass boost the greatest, of the rest the headline. */
export function decidingValue(
  output: ProfileOutput,
  name: CharacteristicName,
): ProfileOutput['characteristics'][number] | undefined {
  return name === 'bass-boost'
    ? greatestBoost(output)
    : output.characteristics.find((one) => one.name === name);
}
