/** Bass boost: how much, where, how wide, and how it goes with the volume. */

import { crossing } from '../crossing.ts';
import type { Described, Group } from '../group.ts';
import { propagate, quantity, type Term } from '../propagate.ts';
import type { BoostBehaviour, Quantity } from '../quantity.ts';
import { loudest, type ResponsePoint } from '../response.ts';
import { frontChannel } from '../session-points.ts';
import { type Summit, summit } from '../summit.ts';
import { limits } from '../uncertainty.ts';

/** Bass is looked for between these frequencies, hertz: common practice, no source. */
export const bassBandHz = [20, 250] as const;

/** A rise of less than this is no boost, dB: common practice, no source. */
export const leastBoostDb = 0.5;

/** The highest level in the bass, as measured: at the frequency where it was read. */
export function bassPeak(response: readonly ResponsePoint[]): ResponsePoint | undefined {
  return loudest(response.filter(({ hz }) => hz >= bassBandHz[0] * 0.99 && hz <= bassBandHz[1]));
}

/**
 * Boost, its frequency and its bandwidth at one step. A summit between the frequencies played is found by a
 * parabola; where there is no boost, or it is greatest at the lowest frequency (a shelf), the greatest
 * reading itself stands. Bandwidth is between the frequencies of half the boost in dB, in octaves, as the
 * Audio EQ Cookbook (W3C Note, 2021) has it for a peaking filter; a shelf has none.
 */
export function bassAt(group: Group, step: number): Described[] {
  const response = group.responseOf(step);
  const peak = bassPeak(response);
  if (!peak) return [];
  const at = { channel: frontChannel, step };
  const { readings, sources } = peak;
  const index = response.indexOf(peak);
  const isBoost = peak.level.value >= leastBoostDb;
  const top = isBoost ? summit(response, index) : undefined;
  const boost = top?.level ?? peak.level;
  const described: Described[] = [
    { name: 'bass-boost', quantity: boost, at: { ...at, hz: top?.hz ?? peak.hz }, readings, sources },
  ];
  if (!isBoost) return described;
  described.push({
    name: 'bass-boost-frequency',
    quantity: top
      ? propagate(top.hz, 'Hz', [[top.hz * Math.LN2, top.octave]])
      : quantity(peak.hz, 'Hz', [limits('spacing of the frequencies played', spacingHz(response, index))]),
    at,
    readings,
    sources,
  });
  const width = top && bandwidth(response, index, top);
  if (width) described.push({ name: 'bass-boost-bandwidth', quantity: width, at, readings, sources });
  return described;
}

/** The greatest reading may stand for a summit anywhere up to its neighbours. */
function spacingHz(response: readonly ResponsePoint[], index: number): number {
  const hz = response[index]?.hz ?? 0;
  return Math.max(hz - (response[index - 1]?.hz ?? hz), (response[index + 1]?.hz ?? hz) - hz);
}

function bandwidth(response: readonly ResponsePoint[], index: number, top: Summit): Quantity | undefined {
  const half = top.level.value / 2;
  let low = index;
  while (low > 0 && (response[low]?.level.value ?? 0) > half) low -= 1;
  let high = index;
  while (high < response.length - 1 && (response[high]?.level.value ?? 0) > half) high += 1;
  const below = response.slice(0, index + 1).reverse();
  const lower = crossing(below, index - low - 1, half);
  const upper = crossing(response, high - 1, half);
  const found = (response[low]?.level.value ?? 0) <= half && (response[high]?.level.value ?? 0) <= half;
  if (!found || !lower || !upper) return undefined;
  const terms: Term[] = [
    [-1 / upper.slopeDbPerOctave, upper.level],
    [1 / lower.slopeDbPerOctave, lower.level],
    // Half the boost moves with the boost.
    [(1 / upper.slopeDbPerOctave - 1 / lower.slopeDbPerOctave) / 2, top.level],
  ];
  return propagate(Math.log2(upper.hz / lower.hz), 'oct', terms);
}

/** How boost goes with the volume, from its values at several steps. */
export function boostBehaviour(boosts: readonly Quantity[]): BoostBehaviour {
  const [first] = boosts;
  if (!first) return 'unknown';
  if (boosts.every((one) => one.value < leastBoostDb)) return 'none';
  if (boosts.length === 1) return 'unknown';
  const values = boosts.map((one) => one.value);
  const tolerance = Math.max(leastBoostDb, ...boosts.map((one) => one.expandedUncertainty));
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (most - least <= tolerance) return 'fixed';
  if (boosts.length === 2) return 'changing';
  const atEnds = values.every((one) => one - least <= tolerance || most - one <= tolerance);
  return atEnds ? 'switched' : 'fading';
}
