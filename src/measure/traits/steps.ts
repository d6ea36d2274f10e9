/** The level law of the volume scale, the onset of the limiter, and the noise below it. */
import { unique } from '../combine.ts';
import { cleanCompressionDb } from '../distortion.ts';
import { levelBetween, ownUncertaintyDb, pointVolts } from '../from-points.ts';
import type { Described, Group, UnitLimits } from '../group.ts';
import { ratioDb } from '../level.ts';
import type { Point } from '../point.ts';
import { propagate } from '../propagate.ts';
import type { Quantity, StepLawPart } from '../quantity.ts';
import { referenceHz } from '../response.ts';
import { frontChannel } from '../session-points.ts';
import { stepRange } from './clean.ts';

/** A step this far below its upper neighbour is silence, not a step of the scale, dB: common practice, no source. */
const silenceDb = 15;

/** The best-measured session's points at 1 kHz by rising step, silence left out. */
export function scaleOf(group: Group): Point[] {
  const longest = group.sessions.reduce<readonly Point[]>(
    (best, { scale }) => (scale.length > best.length ? scale : best),
    [],
  );
  return longest.filter((point, index) => !isSilent(point, longest[index + 1]));
}

function isSilent(point: Point, next: Point | undefined): boolean {
  if (point.voltsRms === 0) return true;
  return (
    next !== undefined &&
    next.step === point.step + 1 &&
    next.voltsRms > point.voltsRms * 10 ** (silenceDb / 20)
  );
}

/** Noise of a unit turned down to silence, volts, where its lowest step was read and is silent. */
export function noiseFloor(group: Group): Described[] {
  return group.sessions.flatMap(({ scale }) => {
    const [lowest, next] = scale;
    if (!lowest || !isSilent(lowest, next)) return [];
    return [
      {
        name: 'noise-floor' as const,
        quantity: pointVolts(lowest),
        at: { channel: frontChannel, step: lowest.step },
        readings: lowest.readings,
        sources: [lowest.source],
      },
    ];
  });
}

/** Steps are even while they keep to the line within this, dB, or within their uncertainty. */
const evenWithinDb = 0.1;

/**
 * The scale cut into stretches of even steps, lowest first: a stretch goes on while the next step lies where
 * the stretch's own first and last point to, within 0.1 dB or the uncertainty of the two.
 */
export function stepLaw(scale: readonly Point[], cleanStep: number): StepLawPart[] {
  const clean = scale.filter((point) => point.step <= cleanStep);
  const levelsDb = clean.map((point) => ratioDb(point.voltsRms));
  const parts: StepLawPart[] = [];
  let from = 0;
  while (from < clean.length - 1) {
    let to = from + 1;
    while (to + 1 < clean.length && keepsEven(clean, levelsDb, from, to + 1)) to += 1;
    const [first, last] = [clean[from], clean[to]];
    if (!first || !last) break;
    parts.push({ fromStep: first.step, toStep: last.step, stepSize: perStep(first, last) });
    from = to;
  }
  return parts;
}

function perStep(first: Point, last: Point): Quantity {
  const rise = levelBetween(last, first);
  const perStep = 1 / (last.step - first.step);
  return propagate(rise.value * perStep, 'dB/step', [[perStep, rise]]);
}

/** Whether every point between two lies on the line through them, within 0.1 dB or its uncertainty (k = 2). */
function keepsEven(points: readonly Point[], levelsDb: readonly number[], from: number, to: number): boolean {
  const [first, last] = [points[from], points[to]];
  if (!first || !last) return false;
  const level = (at: number): number => levelsDb[at] ?? 0;
  const whole = level(to) - level(from);
  const firstDb = ownUncertaintyDb(first);
  for (let at = from + 1; at < to; at += 1) {
    const point = points[at];
    if (!point) continue;
    const t = (point.step - first.step) / (last.step - first.step);
    const offDb = Math.abs(level(at) - level(from) - t * whole);
    if (offDb > evenWithinDb && offDb > 2 * Math.hypot(firstDb, ownUncertaintyDb(point))) return false;
  }
  return true;
}

/** Decibels a step over the upper half of the clean scale: what one click of the volume is worth in use. */
export function stepSize(scale: readonly Point[], cleanStep: number): Described[] {
  const clean = scale.filter((point) => point.step <= cleanStep);
  const first = clean[Math.floor(clean.length / 2)];
  const last = clean.at(-1);
  if (!first || !last || first === last) return [];
  return [
    {
      name: 'step-size',
      quantity: perStep(first, last),
      at: { channel: frontChannel, hz: referenceHz },
      readings: [...first.readings, ...last.readings],
      sources: unique([first.source, last.source]),
    },
  ];
}

/**
 * Limiter onset: the first step whose level falls short of where the clean steps below point by more than
 * 0.3 dB (AES17's compression). The line is carried on from the last three clean steps. Never reached, it
 * is at least the highest step measured.
 */
export function limiterOnset(scale: readonly Point[], cleanStep: number, unit: UnitLimits): Described[] {
  const base = scale.filter((point) => point.step <= cleanStep).slice(-3);
  const [first, middle, last] = base;
  const top = scale.at(-1);
  if (!first || !middle || !last || !top) return [];
  const increment = (to: Point, from: Point): number => levelBetween(to, from).value / (to.step - from.step);
  const slope = increment(last, first);
  // The law may bend as it did over the last steps.
  const bend = Math.abs(increment(last, middle) - increment(middle, first));
  const short = scale
    .filter((point) => point.step > last.step)
    .map((point) => {
      const level = levelBetween(point, last);
      return {
        point,
        shortDb: slope * (point.step - last.step) - level.value,
        // The line's own slope is uncertain too, the more the further it is carried.
        uncertaintyDb:
          level.expandedUncertainty * (1 + (point.step - last.step) / 2) + bend * (point.step - last.step),
      };
    });
  const onset = (shift: -1 | 0 | 1): number | undefined =>
    short.find((one) => one.shortDb + shift * one.uncertaintyDb > cleanCompressionDb)?.point.step;
  const at = { channel: frontChannel, hz: referenceHz };
  const step = onset(0);
  const deciding = short.find((one) => one.point.step === step)?.point ?? top;
  const origin = {
    readings: [...last.readings, ...deciding.readings],
    sources: unique([last.source, deciding.source]),
  };
  const earliest = onset(1) ?? step ?? top.step;
  const latest = onset(-1);
  // Perhaps not reached at all: then all that can be said is that it does not come before.
  const quantity =
    step === undefined || latest === undefined
      ? stepRange(earliest, 0, top.step <= unit.highestStep)
      : stepRange(step, Math.max(step - earliest, latest - step), false);
  return [{ name: 'limiter-onset', quantity, at, ...origin }];
}
