/** Speakers in series and in parallel: what they come to, and the share of the power each gets. */
import type { Network } from './speakers.ts';

/** One speaker, or several in series or in parallel. */
export type Wiring =
  | { readonly id: string; readonly ohms: number }
  | { readonly series: readonly Wiring[] }
  | { readonly parallel: readonly Wiring[] };

/** @param from number of the first speaker in the formula: `Z_1`. */
export function networkOf(wiring: Wiring, from = 1): Network {
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
