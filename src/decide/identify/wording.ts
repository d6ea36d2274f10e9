/** The answer in the words of somebody at the telephone. */
import type { Channel } from '../../../schemas/index.ts';
import { formatHz } from '../../measure/index.ts';
import { audibleVolts } from './constants.ts';
import type { Identification } from './identify.ts';
import type { NextReading } from './next-reading.ts';

const channelNames: Readonly<Record<Channel, string>> = {
  FL: 'front left',
  FR: 'front right',
  RL: 'rear left',
  RR: 'rear right',
};

/** Which profile it is and how sure that is, in a sentence or two. `codeOf` gives the code of a profile. */
export function conclusion(
  { candidates, sureness }: Identification,
  readings: number,
  codeOf: (profile: string) => string,
): string {
  const [best] = candidates;
  if (readings === 0 || !best) return 'Nothing read yet.';
  const codes = either([best.profile, ...best.twins].map(codeOf));
  const twins = best.twins.length > 0 ? ' These cannot be told apart by measuring: same output.' : '';
  switch (sureness) {
    case 'sure':
      return `Sure: it is ${codes}.${twins}`;
    case 'likely':
      return `Likely ${codes}, but not sure.${twins}`;
    case 'not-sure':
      return 'Not sure: the readings fit more than one profile, or none of them well.';
    case 'none-of-these':
      return 'None of these, it seems: the readings fit no profile measured. Look again which unit it is, check step, tone and leads of each reading, and read it once more.';
  }
}

/** The reading to take next and what to expect of it, or that none would help. */
export function nextSentence(
  identification: Identification,
  readings: number,
  codeOf: (profile: string) => string,
): string {
  const { nextReading, sureness, candidates } = identification;
  if (!nextReading) {
    const twins = (candidates[0]?.twins.length ?? 0) > 0;
    return sureness === 'sure' && twins
      ? 'No further reading would help: what is left has the same output.'
      : 'No further reading of this kind would help.';
  }
  const opening =
    readings === 0
      ? 'Begin with'
      : sureness === 'sure'
        ? 'To be surer still, read'
        : 'Take one more reading:';
  const { step, hz, channel } = nextReading;
  const expected = expectations(nextReading, codeOf);
  const condition = readings === 0 && expected !== '' ? ' for a full-scale tone' : '';
  return `${opening} step ${step}, ${formatHz(hz)}, ${channelNames[channel]}${expected && `: expect${condition} ${expected}`}.`;
}

/** “1.2 V if X or Y, 0.4 V if Z”: profiles that would show the same are named together. */
function expectations({ expect }: NextReading, codeOf: (profile: string) => string): string {
  const byVolts = new Map<string, string[]>();
  for (const { profiles, voltsRms } of expect) {
    const shown = expectedVolts(voltsRms);
    byVolts.set(shown, [...(byVolts.get(shown) ?? []), ...profiles.map(codeOf)]);
  }
  return [...byVolts].map(([volts, codes]) => `${volts} if ${either(codes)}`).join(', ');
}

function expectedVolts(voltsRms: number): string {
  if (voltsRms < audibleVolts) return 'next to nothing';
  return `${voltsRms < 0.1 ? voltsRms.toFixed(3) : voltsRms.toPrecision(2)}\u00a0V`;
}

/** “A”, “A or B”, “A, B or C”. */
export function either(words: readonly string[]): string {
  const [last, ...before] = [...words].reverse();
  return before.length === 0 ? (last ?? '') : `${before.reverse().join(', ')} or ${last}`;
}
