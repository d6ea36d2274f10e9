/** Clean volts and the steps up to which the output plays clean. */
import { highestCleanStep } from '../clean-step.ts';
import { combine, unique } from '../combine.ts';
import { cleanThdPercent, hardClipOverdriveDb, hardClipRmsToRail } from '../distortion.ts';
import { pointVolts } from '../from-points.ts';
import { byStep, type Described, type Group, type UnitLimits } from '../group.ts';
import { dbRatio } from '../level.ts';
import { loudest, referenceHz } from '../response.ts';
import { frontChannel } from '../session-points.ts';

/**
 * The highest step that was read clean below the first step that any session found unclean: a session that stopped
 * before the limit, or read few steps, says nothing against those that went further. The range covers what each
 * session says within its uncertainty.
 */
export function cleanStep(group: Group, unit: UnitLimits): Described | undefined {
  const found = group.sessions.flatMap(({ run, scale }) => {
    const clean = highestCleanStep(scale);
    return clean
      ? [{ ...clean, steps: scale.map((point) => point.step), source: run.conditions.source }]
      : [];
  });
  if (found.length === 0) return undefined;
  const readClean = found.flatMap(({ step, steps }) => steps.filter((one) => one <= step));
  const highestBelow = (unclean: number): number | undefined => {
    const below = readClean.filter((one) => one < unclean);
    return below.length === 0 ? undefined : Math.max(...below);
  };
  const least = Math.min(...found.map(({ lowest }) => lowest));
  const step = highestBelow(Math.min(...found.map(({ uncleanAt }) => uncleanAt))) ?? least;
  const lowest = highestBelow(Math.min(...found.map(({ uncleanAtLeast }) => uncleanAtLeast))) ?? least;
  const highest = Math.max(step, ...found.map((one) => one.highest));
  const deciding = found.filter((one) => one.step === step);
  const isReached = found.some(({ uncleanAt }) => Number.isFinite(uncleanAt));
  return {
    name: 'highest-clean-step',
    quantity: stepRange(step, Math.max(step - lowest, highest - step), !isReached && step < unit.highestStep),
    at: { channel: frontChannel, hz: referenceHz },
    readings: deciding.flatMap((one) => one.readings),
    sources: unique(deciding.map((one) => one.source)),
  };
}

/** A step with a range of steps that covers the true one; as a normal-shaped figure it is U with k = 2. */
export function stepRange(step: number, halfRange: number, atLeast: boolean): Described['quantity'] {
  return {
    value: step,
    unit: 'step',
    standardUncertainty: halfRange / 2,
    coverageFactor: 2,
    expandedUncertainty: halfRange,
    bound: atLeast ? 'at-least' : 'exact',
    budget: [],
  };
}

/** Volts of front left at 1 kHz at a step. */
export function voltsAt(group: Group, step: number): Described | undefined {
  const found = group.scale.filter((point) => point.step === step);
  if (found.length === 0) return undefined;
  return {
    name: 'clean-volts',
    quantity: combine(found.map(pointVolts)),
    at: { channel: frontChannel, step, hz: referenceHz },
    readings: found.flatMap((point) => point.readings),
    sources: unique(found.map((point) => point.source)),
  };
}

/**
 * The highest step at which the loudest part of the response still plays clean: a boosted band reaches the
 * ceiling before 1 kHz does. The ceiling, volts of a sine at 1 % THD, follows from the first clipped 1 kHz
 * reading by the ideal hard clip; without one it lies between the last clean reading and the next. Boost
 * between measured steps is interpolated, above them carried on. Undefined without a response.
 */
export function boostedCleanStep(group: Group, clean: Described): Described | undefined {
  const peaks = group.steps.flatMap((step) => {
    if (step > clean.quantity.value) return [];
    const peak = loudest(group.responseOf(step));
    return peak
      ? [{ step, levelDb: peak.level.value, uncertaintyDb: peak.level.expandedUncertainty, peak }]
      : [];
  });
  const levels = levelsByStep(group);
  const ceiling = ceilingVolts(group, clean.quantity.value);
  const first = peaks[0];
  if (!first || !ceiling) return undefined;
  const boostAt = (step: number): number => {
    const above = peaks.find((one) => one.step >= step);
    const below = peaks.findLast((one) => one.step <= step);
    if (!above || !below) return (above ?? below ?? first).levelDb;
    if (above.step === below.step) return above.levelDb;
    const t = (step - below.step) / (above.step - below.step);
    return (1 - t) * below.levelDb + t * above.levelDb;
  };
  const worstDb = Math.max(...peaks.map((one) => one.uncertaintyDb));
  const highest = (limitVolts: number, shiftDb: number): number =>
    levels.findLast(
      ({ step, volts }) =>
        step <= clean.quantity.value && volts * dbRatio(Math.max(0, boostAt(step)) + shiftDb) <= limitVolts,
    )?.step ??
    levels[0]?.step ??
    0;
  const step = highest(ceiling.volts, 0);
  const lowest = Math.min(
    step,
    highest(ceiling.least, worstDb),
    clean.quantity.value - clean.quantity.expandedUncertainty,
  );
  const most = Math.max(step, Math.min(highest(ceiling.most, -worstDb), clean.quantity.value));
  return {
    name: 'boosted-clean-step',
    quantity: stepRange(step, Math.max(step - lowest, most - step), false),
    at: { channel: frontChannel, hz: first.peak.hz },
    readings: unique([...first.peak.readings, ...clean.readings]),
    sources: unique([...first.peak.sources, ...clean.sources]),
  };
}

/** Mean volts at each step, rising. */
function levelsByStep({ scale }: Group): { step: number; volts: number }[] {
  return byStep(scale).map((here) => ({
    step: here[0]?.step ?? 0,
    volts: here.reduce((sum, point) => sum + point.voltsRms, 0) / here.length,
  }));
}

/** Volts of a sine at 1 % THD, and the least and most they may be. */
function ceilingVolts(
  group: Group,
  cleanStepValue: number,
): { volts: number; least: number; most: number } | undefined {
  const points = group.scale;
  const last = points.findLast((point) => point.step === cleanStepValue);
  if (!last) return undefined;
  const clipped = points.find(
    (point) => point.step > cleanStepValue && point.thdPercent !== null && point.thdPercent > cleanThdPercent,
  );
  if (!clipped || clipped.thdPercent === null || clipped.thdPercent > 40) {
    const next = points.find((point) => point.step > cleanStepValue);
    const most = next?.voltsRms ?? Number.POSITIVE_INFINITY;
    return { volts: last.voltsRms, least: last.voltsRms, most };
  }
  const atLimit = hardClipOverdriveDb(cleanThdPercent / 100);
  const ceilingFrom = (thdPercent: number): number => {
    const overdriveDb = hardClipOverdriveDb(thdPercent / 100);
    const rail = clipped.voltsRms / hardClipRmsToRail(dbRatio(-overdriveDb));
    return Math.max(last.voltsRms, rail * hardClipRmsToRail(dbRatio(-atLimit)));
  };
  const volts = ceilingFrom(clipped.thdPercent);
  const drive = dbRatio(last.driveToleranceDb);
  return {
    volts,
    least: Math.min(volts, ceilingFrom(clipped.thdPercent * (1 + clipped.thdRelativeLimit))) / drive,
    most: Math.max(volts, ceilingFrom(clipped.thdPercent / (1 + clipped.thdRelativeLimit))) * drive,
  };
}
