/**
 * Which cautions an entry calls for. All of it is common practice, no source: what workshops tell riders
 * before work on a live harness and before a service screen.
 */
import type { CautionId, Family, Sequence } from '../../schemas/index.ts';

/** A way in that may take longer than this with the ignition on drains a weak battery. Common practice, no source. */
const mostSecondsWithoutDrain = 60;

interface Need<T> {
  readonly caution: CautionId;
  /** Why, to follow “because”. */
  readonly because: string;
  readonly when: (subject: T) => boolean;
}

/** For sequences, by their steps. */
export const sequenceNeeds: readonly Need<Sequence>[] = [
  {
    caution: 'parked',
    because: 'every way to the service screen is walked at a standstill',
    when: () => true,
  },
  { caution: 'look-only', because: 'service screens hold settings and resets as well', when: () => true },
  { caution: 'engine-off-indoors', because: 'the ignition is turned on', when: turnsIgnitionOn },
  {
    caution: 'battery-drain',
    because: `the ignition is on, and the steps may take longer than ${mostSecondsWithoutDrain} s`,
    when: (sequence) => turnsIgnitionOn(sequence) && longestSeconds(sequence) > mostSecondsWithoutDrain,
  },
];

/** For families, by their output stage. */
export const familyNeeds: readonly Need<Family>[] = [
  {
    caution: 'bridged-outputs',
    because: 'its outputs are bridged',
    when: ({ output }) => output.topology === 'bridged',
  },
];

/** For guides, by what their text speaks of. */
export const textNeeds: readonly Need<string>[] = [
  { caution: 'look-only', because: 'the text speaks of the service screen', when: says('service screen') },
  {
    caution: 'bridged-outputs',
    because: 'the text speaks of bridged outputs',
    when: says('bridged outputs?'),
  },
  { caution: 'fuse', because: 'the text speaks of fuses', when: says('fuses?') },
  { caution: 'hearing', because: 'the text speaks of test tones', when: says('test tones?') },
];

/** The needs of a subject that its cautions do not meet. */
export function unmet<T>(needs: readonly Need<T>[], subject: T, cautions: readonly CautionId[]): Need<T>[] {
  return needs.filter(({ caution, when }) => !cautions.includes(caution) && when(subject));
}

function turnsIgnitionOn({ transitions }: Sequence): boolean {
  return transitions.some(
    ({ action }) =>
      (action.kind === 'ignition' && action.position !== 'off') ||
      (action.kind === 'hold' && (action.begin === 'with-ignition' || action.end === 'with-ignition')),
  );
}

/** The longest times of all holds and waits together, seconds. */
function longestSeconds({ transitions }: Sequence): number {
  return transitions.reduce((sum, { action }) => sum + ('mostSeconds' in action ? action.mostSeconds : 0), 0);
}

function says(words: string): (text: string) => boolean {
  const pattern = new RegExp(`\\b${words}\\b`, 'i');
  return (text) => pattern.test(text);
}
