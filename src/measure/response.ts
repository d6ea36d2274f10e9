/** Frequency response relative to 1 kHz, and what is read off it: bass boost and corners. */
import { halfPowerDb } from './level.ts';
import { levelBetween, type Point } from './points.ts';
import type { Bound, Quantity } from './quantity.ts';
import { limits, quantity, scaled } from './uncertainty.ts';

/** The reference frequency of every response, hertz. */
export const referenceHz = 1000;

/** Bass is looked for between these frequencies, hertz: common practice, no source. */
export const bassBandHz = [20, 250] as const;

export interface ResponsePoint {
  readonly hz: number;
  /** Level relative to 1 kHz at the same step. */
  readonly level: Quantity;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
  /** What was read there, volts rms; the highest where several sessions did. */
  readonly voltsRms: number;
}

/**
 * The response of one session, channel and step: levels relative to its own 1 kHz point, by rising
 * frequency. Undefined where 1 kHz is missing, reads nothing, or stands alone.
 */
export function responseAt(points: readonly Point[]): ResponsePoint[] | undefined {
  const reference = points.find((point) => Math.abs(point.hz / referenceHz - 1) < 1e-6);
  if (!reference || reference.voltsRms === 0 || points.length < 2) return undefined;
  return points
    .filter((point) => point.voltsRms > 0)
    .sort((a, b) => a.hz - b.hz)
    .map((point) => ({
      hz: point.hz,
      level: point === reference ? quantity(0, 'dB', []) : levelBetween(point, reference),
      readings: point === reference ? point.readings : [...point.readings, ...reference.readings],
      sources: [point.source],
      voltsRms: point.voltsRms,
    }));
}

/** The highest level in the bass, as measured: at the frequency where it was read. */
export function bassPeak(response: readonly ResponsePoint[]): ResponsePoint | undefined {
  const bass = response.filter(({ hz }) => hz >= bassBandHz[0] && hz <= bassBandHz[1]);
  return bass.reduce<ResponsePoint | undefined>(
    (best, one) => (best === undefined || one.level.value > best.level.value ? one : best),
    undefined,
  );
}

export interface Corner {
  readonly frequency: Quantity;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

/**
 * The half-power (−3.01 dB) frequency below or above 1 kHz, by straight interpolation of the level over
 * the logarithm of frequency. Its uncertainty holds that of the two levels, divided by the slope between
 * them, and an allowance for the curve's bend between the points, from its second difference.
 * Where the response never falls that far, the end of what was measured stands as a bound.
 */
export function corner(response: readonly ResponsePoint[], side: 'lower' | 'upper'): Corner | undefined {
  const outward =
    side === 'lower'
      ? response.filter(({ hz }) => hz <= referenceHz * (1 + 1e-6)).reverse()
      : response.filter(({ hz }) => hz >= referenceHz * (1 - 1e-6));
  if (outward.length < 2) return undefined;
  const beyond = outward.findIndex(({ level }) => level.value < halfPowerDb);
  if (beyond === -1) {
    const end = outward.at(-1);
    const bound: Bound = side === 'lower' ? 'at-most' : 'at-least';
    return (
      end && { frequency: quantity(end.hz, 'Hz', [], bound), readings: end.readings, sources: end.sources }
    );
  }
  const inside = outward[beyond - 1];
  const outside = outward[beyond];
  if (!inside || !outside) return undefined;

  const octaves = Math.log2(outside.hz / inside.hz);
  const slopeDbPerOctave = (outside.level.value - inside.level.value) / octaves;
  const fraction = (halfPowerDb - inside.level.value) / (outside.level.value - inside.level.value);
  const hz = inside.hz * 2 ** (octaves * fraction);

  // A second difference flattens a bend narrower than the points: half as much again is allowed for.
  const bend =
    1.5 *
    Math.max(Math.abs(secondDifference(outward, beyond - 1)), Math.abs(secondDifference(outward, beyond)));
  // d(hz) per dB of level: what the two levels share (their reference) is counted once, with its sign.
  const hzPerDb = (hz * Math.LN2) / slopeDbPerOctave;
  return {
    frequency: quantity(hz, 'Hz', [
      ...scaled(inside.level.budget, -(1 - fraction) * hzPerDb),
      ...scaled(outside.level.budget, -fraction * hzPerDb),
      limits('interpolation', Math.abs((fraction * (1 - fraction) * bend * hzPerDb) / 2)),
    ]),
    readings: [...new Set([...inside.readings, ...outside.readings])],
    sources: [...new Set([...inside.sources, ...outside.sources])],
  };
}

/** Second difference of the level about a point, dB, per interval squared; 0 at the ends. */
function secondDifference(points: readonly ResponsePoint[], at: number): number {
  const before = points[at - 1];
  const here = points[at];
  const after = points[at + 1];
  if (!before || !here || !after) return 0;
  return after.level.value - 2 * here.level.value + before.level.value;
}
