/** Speakers on an amplifier: their impedance together, the power each gets, and what the amplifier may drive. */
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, given, workedOut } from './line.ts';

/** The share of the lowest impedance that a rated one may fall to (IEC 60268-5, 16.1, as transcribed). */
export const lowestImpedanceShare = 0.8;

/** What the speakers come to: the formula in the symbols of each, and their values. */
export interface Network {
  readonly formula: string;
  readonly ohms: number;
  /** Each speaker, in order, with its share of the power. */
  readonly speakers: readonly { readonly id: string; readonly ohms: number; readonly share: number }[];
}

/** A speaker alone on its channel. */
export function oneSpeaker(id: string, ohms: number): Network {
  return { formula: 'Z_1', ohms, speakers: [{ id, ohms, share: 1 }] };
}

/** The amplifier channel the speakers hang on. */
export interface AmplifierChannel {
  readonly ratedWatts: number;
  /** The impedance that power is rated into. */
  readonly ratedOhms: number;
  /** The lowest rated impedance it may drive. */
  readonly leastOhms: number;
  readonly sources: readonly string[];
}

export interface SpeakerLoad {
  /** Whether the rated impedance is at or above what the amplifier may drive. */
  readonly drives: boolean;
  readonly lines: readonly ArithmeticLine[];
}

/** Impedance and power of speakers on one amplifier channel. */
export function speakerLoad(
  network: Network,
  { ratedWatts, ratedOhms, leastOhms, sources }: AmplifierChannel,
  speakerSources: readonly string[],
): SpeakerLoad {
  const impedance = workedOut({
    id: 'load-impedance',
    symbol: 'Z',
    formula: network.formula,
    given: network.speakers.map(({ id, ohms }, index) =>
      given(
        `Z_${index + 1}`,
        phrase('rated impedance of {speaker}', { speaker: id }),
        ohms,
        'Ω',
        speakerSources,
      ),
    ),
    unit: 'Ω',
    cautions: ['disconnect-battery'],
  });
  const rated = given(
    'Z',
    phrase('rated impedance of the speakers together'),
    impedance.result,
    'Ω',
    speakerSources,
  );
  const lowest = workedOut({
    id: 'lowest-impedance',
    symbol: 'Z_low',
    formula: '0.8·Z',
    given: [rated],
    unit: 'Ω',
    bound: 'at-least',
  });
  const margin = workedOut({
    id: 'load-margin',
    symbol: 'm',
    formula: 'Z/Z_least',
    given: [rated, given('Z_least', phrase('least rated load of the amplifier'), leastOhms, 'Ω', sources)],
    unit: '1',
  });
  const power = workedOut({
    id: 'power-into-load',
    symbol: 'P_load',
    formula: 'P·Z_rated/Z',
    given: [
      given('P', phrase('rated power of the channel'), ratedWatts, 'W', sources),
      given('Z_rated', phrase('load it is rated into'), ratedOhms, 'Ω', sources),
      rated,
    ],
    unit: 'W',
    bound: 'at-most',
    cautions: ['hearing'],
  });
  const each = network.speakers.map(({ id, share }, index) =>
    workedOut({
      id: `power-of-speaker-${index + 1}`,
      symbol: `P_${index + 1}`,
      formula: `P_load·s_${index + 1}`,
      given: [
        {
          ...given('P_load', phrase('power into the speakers together'), power.result, 'W'),
          sources: power.sources,
        },
        given(
          `s_${index + 1}`,
          phrase('share of {speaker}, by ohms in series, by the inverse of ohms in parallel', {
            speaker: id,
          }),
          share,
          '1',
        ),
      ],
      unit: 'W',
      bound: 'at-most',
    }),
  );
  // Thirds of ohms may miss a limit by the last digit of the arithmetic.
  const drives = impedance.result.value >= leastOhms * (1 - 1e-9);
  return { drives, lines: [impedance, lowest, margin, power, ...each] };
}
