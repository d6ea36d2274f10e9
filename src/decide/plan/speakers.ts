/** Speakers on an amplifier: their impedance together, the power each gets, and what the amplifier may drive. */
import { phrase } from '../../words/index.ts';
import { type ArithmeticLine, given, workedOut } from './line.ts';

/** One speaker, or several in series or in parallel. */
export type Wiring =
  | { readonly id: string; readonly ohms: number }
  | { readonly series: readonly Wiring[] }
  | { readonly parallel: readonly Wiring[] };

/** The share of the lowest impedance that a rated one may fall to (IEC 60268-5, 16.1, as transcribed). */
export const lowestImpedanceShare = 0.8;

/** What the speakers come to: the formula in the symbols of each, and their values. */
interface Network {
  readonly formula: string;
  readonly ohms: number;
  /** Each speaker, in order, with its share of the power. */
  readonly speakers: readonly { readonly id: string; readonly ohms: number; readonly share: number }[];
}

function networkOf(wiring: Wiring, from = 1): Network {
  if ('ohms' in wiring) {
    return { formula: `Z_${from}`, ohms: wiring.ohms, speakers: [{ ...wiring, share: 1 }] };
  }
  const inSeries = 'series' in wiring;
  const parts: Network[] = [];
  let next = from;
  for (const one of inSeries ? wiring.series : wiring.parallel) {
    const part = networkOf(one, next);
    parts.push(part);
    next += part.speakers.length;
  }
  if (parts.length === 0) throw new Error('a wiring without speakers');
  const conductance = parts.reduce((sum, { ohms }) => sum + 1 / ohms, 0);
  const ohms = inSeries ? parts.reduce((sum, part) => sum + part.ohms, 0) : 1 / conductance;
  const terms = parts.map(({ formula }) => (inSeries ? formula : `1/${bracketed(formula)}`)).join(' + ');
  return {
    formula: inSeries || parts.length === 1 ? (inSeries ? terms : (parts[0]?.formula ?? '')) : `1/(${terms})`,
    ohms,
    // One current through what is in series: power by ohms. One voltage across what is parallel: by conductance.
    speakers: parts.flatMap((part) => {
      const share = inSeries ? part.ohms / ohms : ohms / part.ohms;
      return part.speakers.map((one) => ({ ...one, share: one.share * share }));
    }),
  };
}

function bracketed(formula: string): string {
  return /[ /]/.test(formula) ? `(${formula})` : formula;
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
  wiring: Wiring,
  { ratedWatts, ratedOhms, leastOhms, sources }: AmplifierChannel,
  speakerSources: readonly string[],
): SpeakerLoad {
  const network = networkOf(wiring);
  const impedance = workedOut({
    id: 'load-impedance',
    title: phrase('Rated impedance of the speakers together'),
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
    note: phrase(
      'In series impedances add, in parallel their inverses do. Rated values; the true ones vary with frequency.',
    ),
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
    title: phrase('Lowest impedance the speakers may have at any frequency'),
    symbol: 'Z_low',
    formula: '0.8·Z',
    given: [rated],
    unit: 'Ω',
    bound: 'at-least',
    note: phrase(
      'A speaker’s impedance may fall to 0.8 of its rated value (IEC 60268-5, 16.1, as transcribed); amplifiers that state a least rated load allow for it.',
    ),
  });
  const margin = workedOut({
    id: 'load-margin',
    title: phrase('Rated impedance over the least the amplifier may drive'),
    symbol: 'm',
    formula: 'Z/Z_least',
    given: [rated, given('Z_least', phrase('least rated load of the amplifier'), leastOhms, 'Ω', sources)],
    unit: '1',
    note: phrase('Below 1 the amplifier is overloaded: it may shut down, overheat or fail.'),
  });
  const power = workedOut({
    id: 'power-into-load',
    title: phrase('Power into the speakers together'),
    symbol: 'P_load',
    formula: 'P·Z_rated/Z',
    given: [
      given('P', phrase('rated power of the channel'), ratedWatts, 'W', sources),
      given('Z_rated', phrase('load it is rated into'), ratedOhms, 'Ω', sources),
      rated,
    ],
    unit: 'W',
    bound: 'at-most',
    note: phrase(
      'By the same volts into another load. An amplifier whose supply gives way makes less into a lower one; what its maker states for the load comes first.',
    ),
    cautions: ['hearing'],
  });
  const each = network.speakers.map(({ id, share }, index) =>
    workedOut({
      id: `power-of-speaker-${index + 1}`,
      title: phrase('Power of {speaker}', { speaker: id }),
      symbol: `P_${index + 1}`,
      formula: `P_load·s_${index + 1}`,
      given: [
        {
          ...given('P_load', phrase('power into the speakers together'), power.result, 'W'),
          sources: power.sources,
        },
        given(
          `s_${index + 1}`,
          phrase('its share, by ohms in series, by the inverse of ohms in parallel'),
          share,
          '1',
        ),
      ],
      unit: 'W',
      bound: 'at-most',
      note: phrase('By rated impedances; compare it with the rated power of the speaker.'),
    }),
  );
  // Thirds of ohms may miss a limit by the last digit of the arithmetic.
  const drives = impedance.result.value >= leastOhms * (1 - 1e-9);
  return { drives, lines: [impedance, lowest, margin, power, ...each] };
}
