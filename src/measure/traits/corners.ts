/** Corner frequencies, the slopes beyond them, treble tilt and ripple. */
import { linear } from '../combine.ts';
import { crossing } from '../crossing.ts';
import { fallenScale } from '../curve-scale.ts';
import type { Described, Group } from '../group.ts';
import { halfPowerDb } from '../level.ts';
import { propagate, quantity, type Term } from '../propagate.ts';
import { type ResponsePoint, referenceHz } from '../response.ts';
import { frontChannel } from '../session-points.ts';
import { limits } from '../uncertainty.ts';

/**
 * The half-power frequency below or above 1 kHz: where the level is 3.01 dB below that at 1 kHz. Where the
 * response never falls that far, the end of what was measured stands as a bound; where the points are too far
 * apart to tell, the last point before the fall does.
 */
export function cornerAt(group: Group, step: number, side: 'lower' | 'upper'): Described[] {
  const outward = outwardFrom(group.responseOf(step), side);
  const end = outward.at(-1);
  if (outward.length < 2 || !end) return [];
  const at = { channel: frontChannel, step };
  const name = `${side}-corner` as const;
  const boundAt = ({ hz, readings, sources }: ResponsePoint): Described[] => {
    const bound = side === 'lower' ? 'at-most' : 'at-least';
    return [{ name, quantity: quantity(hz, 'Hz', [], bound), at, readings, sources }];
  };
  const beyond = outward.findIndex(({ level }) => level.value < halfPowerDb);
  if (beyond === -1) return boundAt(end);
  const place = crossing(outward, beyond - 1, halfPowerDb);
  if (!place) return boundAt(outward[beyond - 1] ?? end);
  const { readings, sources } = place;
  const hzPerDb = (place.hz * Math.LN2) / place.slopeDbPerOctave;
  const found: Described[] = [
    { name, quantity: propagate(place.hz, 'Hz', [[-hzPerDb, place.level]]), at, readings, sources },
  ];
  const slope = slopeBeyond(outward, Math.max(0, beyond - 1), side);
  if (slope) found.push({ ...slope, at });
  return found;
}

/** The response from 1 kHz outwards to one side. */
function outwardFrom(response: readonly ResponsePoint[], side: 'lower' | 'upper'): ResponsePoint[] {
  return side === 'lower'
    ? response.filter(({ hz }) => hz <= referenceHz * (1 + 1e-6)).reverse()
    : response.filter(({ hz }) => hz >= referenceHz * (1 - 1e-6));
}

/** Levels between these, dB, tell a slope: below the pass band's edge, above where noise sets in. */
const slopeRangeDb = [-40, -1] as const;

/**
 * The slope a filter tends to beyond its corner, dB an octave (negative outwards): for a Butterworth response
 * 10^(−L/10) − 1 = (f/fc)^(±2n), a straight line of its logarithm over that of frequency, whose slope is
 * 2n and asymptote 20·n·lg 2 dB an octave (standard filter theory). Fitted by weighted least squares; its
 * uncertainty is that of the levels, or the scatter about the line where that is larger, and what is left of a
 * pass band that is not level with 1 kHz. `from` is the point of `outward` before the corner.
 */
function slopeBeyond(
  outward: readonly ResponsePoint[],
  from: number,
  side: 'lower' | 'upper',
): Omit<Described, 'at'> | undefined {
  const used = outward
    .slice(from)
    .filter(({ level }) => level.value >= slopeRangeDb[0] && level.value <= slopeRangeDb[1]);
  const [nearest] = used;
  if (!nearest || used.length < 3) return undefined;
  const inwards = outward.slice(0, outward.indexOf(nearest));
  const lines = used.map(({ hz, level }) => {
    const perDb = fallenScale.slope(level.value);
    return {
      x: Math.log2(hz),
      y: -fallenScale.toLine(level.value),
      // d(y)/d(level) = −perDb.
      perDb,
      weight: 1 / Math.max(1e-6, perDb * level.standardUncertainty) ** 2,
      level,
    };
  });
  const total = lines.reduce((sum, one) => sum + one.weight, 0);
  const centre = lines.reduce((sum, one) => sum + one.weight * one.x, 0) / total;
  const spread = lines.reduce((sum, one) => sum + one.weight * (one.x - centre) ** 2, 0);
  const share = (one: (typeof lines)[number]): number => (one.weight * (one.x - centre)) / spread;
  const slope = lines.reduce((sum, one) => sum + share(one) * one.y, 0);
  const level = lines.reduce((sum, one) => sum + one.weight * one.y, 0) / total;
  const scatter = lines.reduce(
    (sum, one) => sum + one.weight * (one.y - level - slope * (one.x - centre)) ** 2,
    0,
  );
  const degreesOfFreedom = lines.length - 2;
  // A power grows by 2 for each octave and order; 10·lg 2 dB is one such doubling.
  const perDoubling = -10 * Math.log10(2) * (side === 'lower' ? -1 : 1);
  const terms = lines.map((one): Term => [-share(one) * one.perDb * perDoubling, one.level]);
  const lack = Math.sqrt(Math.max(0, scatter / degreesOfFreedom - 1) / spread);
  const departure = {
    name: 'departure from a straight slope',
    standardUncertainty: Math.abs(lack * perDoubling),
    degreesOfFreedom,
  };
  const expectedDb = ({ hz }: ResponsePoint): number =>
    fallenScale.toLevel(-level - slope * (Math.log2(hz) - centre));
  // The fall is counted from 1 kHz; a pass band a little off that level is corrected for, first order.
  const edge = inwards.findLast((point) => expectedDb(point) > passBandDb) ?? inwards[0];
  const offDb = edge ? edge.level.value - expectedDb(edge) : 0;
  const perShift = terms.reduce((sum, [sensitivity]) => sum + sensitivity, 0);
  const isCorrected = edge !== undefined && Math.abs(offDb) < mostCorrectedDb;
  if (isCorrected) terms.push([-perShift, edge.level]);
  const passBand = limits('level of the pass band', perShift * offDb * (isCorrected ? 1 / 2 : 1));
  const value = slope * perDoubling - (isCorrected ? perShift * offDb : 0);
  return {
    name: `${side}-slope`,
    quantity: propagate(Math.abs(value), 'dB/oct', terms, [departure, passBand]),
    readings: [...new Set([...used, edge ?? nearest].flatMap((one) => one.readings))],
    sources: [...new Set([...used, edge ?? nearest].flatMap((one) => one.sources))],
  };
}

/** Where a filter takes less than this away, dB, its pass band begins. */
const passBandDb = -0.1;

/** A pass band off the level of 1 kHz by more than this, dB, is a boost or a dip: no correction, but uncertainty. */
const mostCorrectedDb = 0.3;

/** The level at 10 kHz relative to 1 kHz, dB. */
export function trebleTiltAt(group: Group, step: number): Described[] {
  const treble = group.responseOf(step).find(({ hz }) => Math.abs(hz / 10_000 - 1) < 0.001);
  if (!treble) return [];
  const { level, readings, sources, hz } = treble;
  return [
    { name: 'treble-tilt', quantity: level, at: { channel: frontChannel, step, hz }, readings, sources },
  ];
}

/** Ripple is looked for between these frequencies, hertz, away from bass boost and treble roll-off. */
const rippleBandHz = [315, 5000] as const;

/**
 * Ripple: the greatest less the least level between 315 Hz and 5 kHz, about the straight line through the
 * band's ends, dB. Within its uncertainty of none it is a bound.
 */
export function rippleAt(group: Group, step: number): Described[] {
  const band = group
    .responseOf(step)
    .filter(({ hz }) => hz >= rippleBandHz[0] * 0.99 && hz <= rippleBandHz[1] * 1.01);
  const first = band[0];
  const last = band.at(-1);
  if (band.length < 7 || !first || !last) return [];
  const along = (one: ResponsePoint): number => Math.log(one.hz / first.hz) / Math.log(last.hz / first.hz);
  const offDb = (one: ResponsePoint): number =>
    one.level.value - (1 - along(one)) * first.level.value - along(one) * last.level.value;
  const most = band.reduce((best, one) => (offDb(one) > offDb(best) ? one : best));
  const least = band.reduce((best, one) => (offDb(one) < offDb(best) ? one : best));
  // The line's own ends come in by the difference of the two places along it.
  const shift = along(most) - along(least);
  const between = linear([
    [1, most.level],
    [-1, least.level],
    [shift, first.level],
    [-shift, last.level],
  ]);
  const told = between.value > between.expandedUncertainty;
  return [
    {
      name: 'ripple',
      quantity: told ? between : quantity(between.value + between.expandedUncertainty, 'dB', [], 'at-most'),
      at: { channel: frontChannel, step },
      readings: [...new Set([...most.readings, ...least.readings])],
      sources: [...new Set([...most.sources, ...least.sources])],
    },
  ];
}
