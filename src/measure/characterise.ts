/** The output of one profile: every characteristic its readings give, each with uncertainty and readings. */
import type { Session } from '../../schemas/index.ts';
import { highestCleanStep } from './clean-step.ts';
import { betweenBenchDeviation, consistencyTest, leastProbability } from './consistency.ts';
import { levelBetween, type Point, pointsOf, pointVolts, type Run } from './points.ts';
import {
  type Characteristic,
  type CharacteristicName,
  type Conditions,
  characteristicNames,
  type LevelAtStep,
  type ProfileOutput,
  type Quantity,
  type ResponseAtStep,
} from './quantity.ts';
import { bassPeak, corner, type ResponsePoint, referenceHz, responseAt } from './response.ts';
import { limits, quantity, scaled } from './uncertainty.ts';

/** What the family says of the unit that was measured. */
export interface UnitLimits {
  readonly ratedLoadOhms: number;
  readonly highestStep: number;
}

/** A rear output this far below front is silent, dB: common practice, no source. */
export const mutedBelowDb = -40;

/** The channel that stands for the front in level and response. */
const frontChannel = 'FL';

/**
 * Computes the output of a profile from all sessions that measured it. Sessions under the conditions
 * nearest the unit's rating (load, then the usual supply and a full-scale signal) give the headline
 * values, by weighted mean where there are several; the others stand under their own conditions.
 */
export function characterise(profile: string, runs: readonly Run[], unit: UnitLimits): ProfileOutput {
  const groups = likeConditions(runs, unit);
  const [main, ...rest] = groups.map((group) => describeGroup(group, unit));
  const found = main?.characteristics ?? [];
  return {
    profile,
    characteristics: found,
    others: [...(main?.others ?? []), ...rest.flatMap((one) => [...one.characteristics, ...one.others])],
    levelByStep: main?.levelByStep ?? [],
    responses: main?.responses ?? [],
    mutedChannels: main?.mutedChannels ?? [],
    conditions: main?.conditions,
    sessions: runs.map((run) => run.session),
    missing: characteristicNames
      .filter((name) => !found.some((one) => one.name === name))
      .map((name) => ({ name, reason: missingReasons[name] })),
  };
}

const missingReasons: Readonly<Record<CharacteristicName, string>> = {
  'clean-volts': 'needs readings of front left at 1 kHz from two or more volume steps, with THD',
  'highest-clean-step': 'needs readings of front left at 1 kHz from two or more volume steps, with THD',
  'bass-boost': 'needs readings of front left at 20–250 Hz and at 1 kHz at one clean step',
  'bass-boost-frequency': 'needs readings of front left at 20–250 Hz and at 1 kHz at one clean step',
  'lower-corner': 'needs readings of front left below 1 kHz and at 1 kHz at one clean step',
  'upper-corner': 'needs readings of front left above 1 kHz and at 1 kHz at one clean step',
  'rear-to-front': 'needs readings of a rear and a front output at 1 kHz at one clean step',
};

/** Conditions are alike when the load is, within a tenth, the supply within 0.5 V, the signal within 0.1 dB. */
export function areAlike(a: Session, b: Session): boolean {
  return (
    a.signal.kind === b.signal.kind &&
    Math.abs(a.load.ohms / b.load.ohms - 1) <= 0.1 &&
    Math.abs(a.supply.volts - b.supply.volts) <= 0.5 &&
    Math.abs(a.signal.levelDbfs - b.signal.levelDbfs) <= 0.1
  );
}

/** Runs grouped by like conditions, the group nearest the unit's rating first. */
function likeConditions(runs: readonly Run[], unit: UnitLimits): Run[][] {
  const groups: Run[][] = [];
  for (const run of runs) {
    const group = groups.find((one) => one[0] && areAlike(one[0].conditions, run.conditions));
    if (group) group.push(run);
    else groups.push([run]);
  }
  const distance = (group: readonly Run[]): number => {
    const conditions = group[0]?.conditions;
    if (!conditions) return Number.POSITIVE_INFINITY;
    const load = Math.abs(Math.log(conditions.load.ohms / unit.ratedLoadOhms));
    return load * 100 - conditions.signal.levelDbfs - group.length / 100;
  };
  return groups.sort((a, b) => distance(a) - distance(b));
}

interface GroupOutput {
  readonly characteristics: Characteristic[];
  readonly others: Characteristic[];
  readonly levelByStep: LevelAtStep[];
  readonly responses: ResponseAtStep[];
  readonly mutedChannels: string[];
  readonly conditions: Conditions;
}

function describeGroup(runs: readonly Run[], unit: UnitLimits): GroupOutput {
  const sessions = runs.map((run) => ({ run, points: pointsOf(run) }));
  const conditions = sharedConditions(runs);
  const describe = (value: Described): Characteristic => ({
    ...value.quantity,
    name: value.name,
    conditions: { ...conditions, ...value.at },
    readings: value.readings,
    sources: value.sources,
  });

  const clean = cleanStepOf(sessions, unit);
  const headline: Described[] = [];
  const others: Described[] = [];
  if (clean) {
    headline.push(...cleanVolts(sessions, clean.step), clean.described);
    const fromCurves = fromResponses(sessions, clean.step);
    for (const name of ['bass-boost', 'bass-boost-frequency', 'lower-corner', 'upper-corner'] as const) {
      const [first, ...rest] = fromCurves.filter((one) => one.name === name);
      if (first) headline.push(first);
      others.push(...rest);
    }
    const rear = sessions.flatMap(({ points }) => rearToFront(points, clean.step));
    const [first, ...rest] = combineByStep(rear);
    if (first) headline.push(first);
    others.push(...rest);
  }
  return {
    characteristics: inNameOrder(headline.map(describe)),
    others: inNameOrder(others.map(describe)),
    levelByStep: levelByStep(sessions, clean?.step),
    responses: responsesByStep(sessions),
    mutedChannels: mutedChannels(sessions),
    conditions,
  };
}

/** A value on its way to becoming a characteristic. */
interface Described {
  readonly name: CharacteristicName;
  readonly quantity: Quantity;
  readonly at: Pick<Conditions, 'channel' | 'step' | 'hz'>;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

interface SessionPoints {
  readonly run: Run;
  readonly points: readonly Point[];
}

function sharedConditions(runs: readonly Run[]): Conditions {
  const [first] = runs;
  return {
    loadOhms: first?.conditions.load.ohms ?? Number.NaN,
    supplyVolts: first?.conditions.supply.volts ?? Number.NaN,
    signalDbfs: first?.conditions.signal.levelDbfs ?? Number.NaN,
  };
}

function inNameOrder(values: Characteristic[]): Characteristic[] {
  const rank = (one: Characteristic): number => characteristicNames.indexOf(one.name);
  return values.sort((a, b) => rank(a) - rank(b) || (a.conditions.step ?? 0) - (b.conditions.step ?? 0));
}

/** Points of the front channel at 1 kHz, one for each step measured. */
function levelPoints(points: readonly Point[]): Point[] {
  return points.filter((point) => point.channel === frontChannel && isReference(point.hz));
}

function isReference(hz: number): boolean {
  return Math.abs(hz / referenceHz - 1) < 1e-6;
}

/** The lowest of the sessions' clean steps, with a range that covers them all. */
function cleanStepOf(
  sessions: readonly SessionPoints[],
  unit: UnitLimits,
): { step: number; described: Described } | undefined {
  const found = sessions.flatMap(({ run, points }) => {
    const clean = highestCleanStep(levelPoints(points));
    return clean ? [{ ...clean, source: run.conditions.source }] : [];
  });
  if (found.length === 0) return undefined;
  const step = Math.min(...found.map((one) => one.step));
  const deciding = found.filter((one) => one.step === step);
  const halfRange = Math.max(
    step - Math.min(...found.map((one) => one.lowest)),
    Math.max(...found.map((one) => one.highest)) - step,
  );
  const atTop = found.every((one) => one.limitNotReached) && step < unit.highestStep;
  const described: Described = {
    name: 'highest-clean-step',
    quantity: {
      value: step,
      unit: 'step',
      // The range is a set of steps that covers the true one; as a normal-shaped figure it is U with k = 2.
      standardUncertainty: halfRange / 2,
      coverageFactor: 2,
      expandedUncertainty: halfRange,
      bound: atTop ? 'at-least' : 'exact',
      budget: [],
    },
    at: { channel: frontChannel, hz: referenceHz },
    readings: deciding.flatMap((one) => one.readings),
    sources: unique(deciding.map((one) => one.source)),
  };
  return { step, described };
}

function cleanVolts(sessions: readonly SessionPoints[], step: number): Described[] {
  const found = sessions.flatMap(({ points }) => levelPoints(points).filter((point) => point.step === step));
  if (found.length === 0) return [];
  return [
    {
      name: 'clean-volts',
      quantity: combine(found.map(pointVolts)),
      at: { channel: frontChannel, step, hz: referenceHz },
      readings: found.flatMap((point) => point.readings),
      sources: unique(found.map((point) => point.source)),
    },
  ];
}

/** Bass boost and corners at each step whose response was taken clean, the highest step first. */
function fromResponses(sessions: readonly SessionPoints[], cleanStep: number): Described[] {
  const ceilings = sessions
    .flatMap(({ points }) => levelPoints(points).filter((point) => point.step === cleanStep))
    .map((point) => pointVolts(point))
    .map((volts) => volts.value + volts.expandedUncertainty);
  const ceilingVolts = ceilings.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...ceilings);
  const steps = stepsOf(sessions.flatMap(({ points }) => points)).filter((step) => step <= cleanStep);
  return steps.reverse().flatMap((step) => {
    const response = responseOf(sessions, step);
    const peak = bassPeak(response);
    // A boosted band that has reached the clean ceiling is held down by it: that is no response.
    if (peak && peak.voltsRms > ceilingVolts) return [];
    const at = { channel: frontChannel, step };
    const described: Described[] = [];
    if (peak) {
      const { readings, sources } = peak;
      described.push(
        { name: 'bass-boost', quantity: peak.level, at: { ...at, hz: peak.hz }, readings, sources },
        {
          name: 'bass-boost-frequency',
          quantity: peakFrequency(
            response.map(({ hz }) => hz),
            peak.hz,
          ),
          at,
          readings,
          sources,
        },
      );
    }
    for (const side of ['lower', 'upper'] as const) {
      const found = corner(response, side);
      if (!found) continue;
      const { frequency, readings, sources } = found;
      described.push({ name: `${side}-corner`, quantity: frequency, at, readings, sources });
    }
    return described;
  });
}

/** The response at one step from all sessions that took it, each frequency combined; empty where none did. */
function responseOf(sessions: readonly SessionPoints[], step: number): ResponsePoint[] {
  const curves = sessions.flatMap(({ points }) => {
    const here = points.filter((point) => point.channel === frontChannel && point.step === step);
    return responseAt(here) ?? [];
  });
  const frequencies = unique(curves.map(({ hz }) => hz)).sort((a, b) => a - b);
  return frequencies.map((hz) => {
    const here = curves.filter((one) => one.hz === hz);
    return {
      hz,
      level: combine(here.map((one) => one.level)),
      readings: unique(here.flatMap((one) => one.readings)),
      sources: unique(here.flatMap((one) => one.sources)),
      voltsRms: Math.max(...here.map((one) => one.voltsRms)),
    };
  });
}

/** The peak was read at one of the frequencies played: it may lie anywhere up to its neighbours. */
function peakFrequency(played: readonly number[], hz: number): Quantity {
  const at = played.indexOf(hz);
  const halfWidth = Math.max(hz - (played[at - 1] ?? hz), (played[at + 1] ?? hz) - hz);
  return quantity(hz, 'Hz', [limits('spacing of the frequencies played', halfWidth)]);
}

/** Rear relative to front at 1 kHz, left and right averaged in dB where both were read. */
function rearToFront(points: readonly Point[], cleanStep: number): Described[] {
  return stepsOf(points).flatMap((step) => {
    if (step > cleanStep) return [];
    const at = (channel: string): Point | undefined =>
      points.find((point) => point.channel === channel && point.step === step && isReference(point.hz));
    const pairs = (
      [
        ['RL', 'FL'],
        ['RR', 'FR'],
      ] as const
    ).flatMap(([rear, front]) => {
      const rearPoint = at(rear);
      const frontPoint = at(front);
      return rearPoint && frontPoint && frontPoint.voltsRms > 0 ? [{ rearPoint, frontPoint }] : [];
    });
    if (pairs.length === 0) return [];
    const levels = pairs.map(({ rearPoint, frontPoint }) =>
      // Nothing at all read: the last digit is the most it can have been.
      levelBetween(rearPoint.voltsRms > 0 ? rearPoint : atLastDigit(rearPoint), frontPoint),
    );
    const level = mean(levels);
    return [
      {
        name: 'rear-to-front' as const,
        quantity: level.value < mutedBelowDb ? quantity(mutedBelowDb, 'dB', [], 'at-most') : level,
        at: { step, hz: referenceHz },
        readings: pairs.flatMap(({ rearPoint, frontPoint }) => [
          ...rearPoint.readings,
          ...frontPoint.readings,
        ]),
        sources: unique(pairs.map(({ frontPoint }) => frontPoint.source)),
      },
    ];
  });
}

function atLastDigit(point: Point): Point {
  return { ...point, voltsRms: point.influences.resolutionVolts };
}

/** The mean of values, what they share counted once with its weight. */
function mean(values: readonly Quantity[]): Quantity {
  const [first] = values;
  if (!first) throw new Error('mean() needs at least one value');
  const weight = 1 / values.length;
  return quantity(
    values.reduce((sum, one) => sum + one.value, 0) * weight,
    first.unit,
    values.flatMap((one) => scaled(one.budget, weight)),
  );
}

/** Outputs whose highest 1 kHz reading beside a playing front output stays below {@link mutedBelowDb}. */
function mutedChannels(sessions: readonly SessionPoints[]): string[] {
  const points = sessions.flatMap((session) => session.points.filter((point) => isReference(point.hz)));
  const loudestFront = Math.max(0, ...levelPoints(points).map((point) => point.voltsRms));
  const channels = unique(points.map((point) => point.channel)).filter((one) => one !== frontChannel);
  return channels.filter((channel) => {
    const played = points.filter((point) => point.channel === channel);
    const fronts = points.filter(
      (point) => point.channel === frontChannel && played.some((one) => one.step === point.step),
    );
    const front = Math.max(0, ...fronts.map((point) => point.voltsRms));
    const loudest = Math.max(0, ...played.map((point) => point.voltsRms));
    return loudestFront > 0 && front > 0 && loudest < front * 10 ** (mutedBelowDb / 20);
  });
}

function levelByStep(sessions: readonly SessionPoints[], cleanStep: number | undefined): LevelAtStep[] {
  const points = sessions.flatMap((session) => levelPoints(session.points));
  return stepsOf(points).map((step) => {
    const here = points.filter((point) => point.step === step);
    const thd = here.flatMap((point) => (point.thdPercent === null ? [] : [point.thdPercent]));
    return {
      step,
      volts: combine(here.map(pointVolts)),
      thdPercent: thd.length === 0 ? null : thd.reduce((sum, one) => sum + one, 0) / thd.length,
      clean: cleanStep !== undefined && step <= cleanStep,
      readings: here.flatMap((point) => point.readings),
    };
  });
}

function responsesByStep(sessions: readonly SessionPoints[]): ResponseAtStep[] {
  return stepsOf(sessions.flatMap(({ points }) => points)).flatMap((step) => {
    const points = responseOf(sessions, step);
    // A handful of spot frequencies is not a curve.
    return points.length < 8
      ? []
      : [{ step, points: points.map(({ hz, level, readings }) => ({ hz, level, readings })) }];
  });
}

function stepsOf(points: readonly Point[]): number[] {
  return unique(points.map((point) => point.step)).sort((a, b) => a - b);
}

/** Values of one name combined where they were taken at the same step; the highest step first. */
function combineByStep(values: readonly Described[]): Described[] {
  const steps = unique(values.map((one) => one.at.step ?? 0)).sort((a, b) => b - a);
  return steps.flatMap((step) => {
    const here = values.filter((one) => (one.at.step ?? 0) === step);
    const [first] = here;
    if (!first) return [];
    return [
      {
        ...first,
        quantity: combine(here.map((one) => one.quantity)),
        readings: unique(here.flatMap((one) => one.readings)),
        sources: unique(here.flatMap((one) => one.sources)),
      },
    ];
  });
}

/**
 * One value from several sessions: their weighted mean (Cox 2002, procedure A), what they share counted with
 * its weight. Where they are inconsistent (χ² test), a deviation between benches is added that makes them
 * consistent (Mandel–Paule). Bounds do not average: a bound beside exact values gives way to them, and of
 * bounds alone the first stands.
 */
function combine(values: readonly Quantity[]): Quantity {
  const exact = values.filter((one) => one.bound === 'exact');
  const [first] = exact.length > 0 ? exact : values;
  if (!first) throw new Error('combine() needs at least one value');
  if (exact.length < 2 || exact.some((one) => one.standardUncertainty === 0)) return first;
  const consistent = consistencyTest(exact).probability >= leastProbability;
  const betweenBench = consistent ? 0 : betweenBenchDeviation(exact);
  const weights = exact.map((one) => 1 / (one.standardUncertainty ** 2 + betweenBench ** 2));
  const total = weights.reduce((sum, one) => sum + one, 0);
  const share = (index: number): number => (weights[index] ?? 0) / total;
  return quantity(
    exact.reduce((sum, one, index) => sum + one.value * share(index), 0),
    first.unit,
    [
      ...exact.flatMap((one, index) => scaled(one.budget, share(index))),
      {
        name: 'between benches',
        standardUncertainty: betweenBench * Math.hypot(...exact.map((_, index) => share(index))),
        degreesOfFreedom: exact.length - 1,
      },
    ],
  );
}

function unique<T>(values: readonly T[]): T[] {
  return [...new Set(values)];
}
