/** The output of one profile: every characteristic its readings give, each with uncertainty and readings. */

import { combine } from './combine.ts';
import type { ComparableOutput } from './compare-outputs.ts';
import { pointVolts } from './from-points.ts';
import {
  areAlikeButForLevel,
  byStep,
  combineByStep,
  type Described,
  Group,
  likeConditions,
  normalisedTo,
  type UnitLimits,
} from './group.ts';
import { missingFrom } from './missing.ts';
import type { Point, Run } from './point.ts';
import {
  type BoostBehaviour,
  type Characteristic,
  type CharacteristicName,
  type Conditions,
  characteristicNames,
  type LevelAtStep,
  type ProfileOutput,
  type Quantity,
  type ResponseAtStep,
  type StepLawPart,
} from './quantity.ts';
import type { ResponsePoint } from './response.ts';
import { sessionAgreement } from './session-agreement.ts';
import { bassAt, bassPeak, boostBehaviour } from './traits/bass.ts';
import { leftToRight, mutedChannels, rearToFront } from './traits/channels.ts';
import { boostedCleanStep, cleanStep, voltsAt } from './traits/clean.ts';
import { cornerAt, rippleAt, trebleTiltAt } from './traits/corners.ts';
import { sourceResistance } from './traits/source-resistance.ts';
import { limiterOnset, noiseFloor, scaleOf, stepLaw, stepSize } from './traits/steps.ts';

/**
 * Computes the output of a profile from all sessions that measured it. Sessions under the conditions
 * nearest the unit's rating (load, then a full-scale signal) give the headline values, by weighted mean
 * where there are several; the others stand under their own conditions.
 */
export function characterise(profile: string, runs: readonly Run[], unit: UnitLimits): ProfileOutput {
  const [first = [], ...others] = likeConditions(runs, unit);
  const main =
    first.length === 0 ? undefined : describeGroup(withNormalised(first, others.flat(), unit), unit);
  const rest = others.map((group) => describeGroup(new Group(group), unit));
  const groups = main ? [main, ...rest] : [];
  const resistance = sourceResistance(
    groups.map((one) => one.group),
    groups.map((one) => one.cleanStep ?? Number.NEGATIVE_INFINITY),
  );
  const characteristics = inNameOrder([
    ...(main?.characteristics ?? []),
    ...(main && resistance ? [characteristic(main.group, resistance)] : []),
  ]);
  return {
    profile,
    characteristics,
    others: [...(main?.others ?? []), ...rest.flatMap((one) => [...one.characteristics, ...one.others])],
    levelByStep: main?.levelByStep ?? [],
    stepLaw: main?.stepLaw ?? [],
    responses: main?.responses ?? [],
    boostBehaviour: main?.boostBehaviour ?? 'unknown',
    mutedChannels: main?.mutedChannels ?? [],
    conditions: main?.group.conditions,
    sessions: runs.map((run) => run.session),
    normalised: (main?.group.normalised ?? []).map(({ run }) => ({
      session: run.session,
      fromDbfs: run.conditions.signal.levelDbfs,
    })),
    agreement: main?.cleanStep === undefined ? undefined : sessionAgreement(main.group, main.cleanStep),
    missing: missingFrom(characteristics),
  };
}

/**
 * What two outputs are compared by, without all else that {@link characterise} gives: many profiles are held
 * against each other.
 */
export function comparableOutput(profile: string, runs: readonly Run[], unit: UnitLimits): ComparableOutput {
  const [first = [], ...others] = likeConditions(runs, unit);
  const group = withNormalised(first, others.flat(), unit);
  const step = cleanStep(group, unit)?.quantity.value;
  const [rear] =
    step === undefined
      ? []
      : combineByStep(group.allSessions.flatMap((session) => rearToFront(session, step)));
  return {
    profile,
    conditions: first.length === 0 ? undefined : group.conditions,
    levelByStep: levelsOf(group, step).map(({ level }) => level),
    responses: curvesByStep(group),
    rearToFront: rear?.quantity.bound === 'exact' ? rear.quantity : undefined,
    mutedChannels: mutedChannels(group),
    sessions: runs.map((run) => run.session),
  };
}

/** The group of the main conditions, with the clean points of sessions that differ in the signal's level only. */
function withNormalised(runs: readonly Run[], others: readonly Run[], unit: UnitLimits): Group {
  const group = new Group(runs);
  const [first] = runs;
  const step = cleanStep(group, unit)?.quantity.value;
  const volts = step === undefined ? undefined : voltsAt(group, step)?.quantity.value;
  if (!first || step === undefined || volts === undefined) return group;
  const normalised = others
    .filter((run) => areAlikeButForLevel(first.conditions, run.conditions))
    .map((run) => normalisedTo(group.conditions.signalDbfs, run, { step, volts }))
    .filter(({ points }) => points.length > 0);
  return normalised.length === 0 ? group : new Group(runs, normalised);
}

interface GroupOutput {
  readonly group: Group;
  readonly cleanStep: number | undefined;
  readonly characteristics: Characteristic[];
  readonly others: Characteristic[];
  readonly levelByStep: LevelAtStep[];
  readonly stepLaw: StepLawPart[];
  readonly responses: ResponseAtStep[];
  readonly boostBehaviour: BoostBehaviour;
  readonly mutedChannels: string[];
}

function describeGroup(group: Group, unit: UnitLimits): GroupOutput {
  const clean = cleanStep(group, unit);
  const step = clean?.quantity.value;
  const scale = scaleOf(group);
  const byName = new Map<CharacteristicName, Described[]>();
  const add = (...values: readonly (Described | undefined)[]): void => {
    for (const value of values) {
      if (!value) continue;
      const known = byName.get(value.name);
      if (known) known.push(value);
      else byName.set(value.name, [value]);
    }
  };
  if (clean && step !== undefined) {
    add(voltsAt(group, step), clean, boostedCleanStep(group, clean));
    add(...limiterOnset(scale, step, unit), ...stepSize(scale, step));
    for (const one of responseSteps(group, step)) {
      add(...bassAt(group, one), ...cornerAt(group, one, 'lower'), ...cornerAt(group, one, 'upper'));
      add(...trebleTiltAt(group, one), ...rippleAt(group, one));
    }
    add(...combineByStep(group.allSessions.flatMap((session) => rearToFront(session, step))));
    add(...combineByStep(group.allSessions.flatMap((session) => leftToRight(session, step))));
  }
  add(...combineByStep(noiseFloor(group)));
  const values = [...byName.values()];
  const boosts = (byName.get('bass-boost') ?? []).map((one) => one.quantity);
  return {
    group,
    cleanStep: step,
    characteristics: inNameOrder(values.flatMap(([first]) => (first ? [characteristic(group, first)] : []))),
    others: inNameOrder(values.flatMap(([, ...rest]) => rest.map((one) => characteristic(group, one)))),
    levelByStep: levelByStep(group, step),
    stepLaw: step === undefined ? [] : stepLaw(scale, step),
    responses: responsesByStep(group),
    boostBehaviour: boostBehaviour(boosts),
    mutedChannels: mutedChannels(group),
  };
}

function characteristic(group: Group, { name, quantity, at, readings, sources }: Described): Characteristic {
  const conditions = { ...group.conditions, ...at };
  return new CharacteristicOf(name, quantity, conditions, readings, sources);
}

/** A characteristic that leaves uncertainty and budget to its quantity: they are made when asked for. */
class CharacteristicOf implements Characteristic {
  readonly name: CharacteristicName;
  readonly value: number;
  readonly unit: Quantity['unit'];
  readonly bound: Quantity['bound'];
  readonly conditions: Conditions;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
  readonly #quantity: Quantity;

  constructor(
    name: CharacteristicName,
    quantity: Quantity,
    conditions: Conditions,
    readings: readonly string[],
    sources: readonly string[],
  ) {
    this.name = name;
    this.value = quantity.value;
    this.unit = quantity.unit;
    this.bound = quantity.bound;
    this.conditions = conditions;
    this.readings = readings;
    this.sources = sources;
    this.#quantity = quantity;
  }

  get standardUncertainty(): number {
    return this.#quantity.standardUncertainty;
  }

  get coverageFactor(): number {
    return this.#quantity.coverageFactor;
  }

  get expandedUncertainty(): number {
    return this.#quantity.expandedUncertainty;
  }

  get budget(): Quantity['budget'] {
    return this.#quantity.budget;
  }
}

function inNameOrder(values: readonly Characteristic[]): Characteristic[] {
  const rank = (one: Characteristic): number => characteristicNames.indexOf(one.name);
  return [...values].sort((a, b) => rank(a) - rank(b) || (a.conditions.step ?? 0) - (b.conditions.step ?? 0));
}

/**
 * The clean steps a response was taken at, highest first. A step whose loudest bass has reached the clean
 * ceiling is left out: it is held down by it, and that is no response.
 */
function responseSteps(group: Group, cleanStepValue: number): number[] {
  const volts = group.scale
    .filter((point) => point.step === cleanStepValue)
    .map((point) => pointVolts(point))
    .map((one) => one.value + one.expandedUncertainty);
  const ceiling = volts.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...volts);
  return group.steps
    .filter((step) => step <= cleanStepValue && group.responseOf(step).length > 0)
    .filter((step) => (bassPeak(group.responseOf(step))?.voltsRms ?? 0) <= ceiling)
    .reverse();
}

function levelByStep(group: Group, cleanStepValue: number | undefined): LevelAtStep[] {
  return levelsOf(group, cleanStepValue).map(({ level: { step, volts, clean }, points }) => {
    const thd = points.map((point) => point.thdPercent).filter((one) => one !== null);
    return {
      step,
      volts,
      thdPercent: thd.length === 0 ? null : thd.reduce((sum, one) => sum + one, 0) / thd.length,
      clean,
      readings: points.flatMap((point) => point.readings),
    };
  });
}

/** The level at each step, with the points it was read at. */
function levelsOf(
  group: Group,
  cleanStepValue: number | undefined,
): { level: Pick<LevelAtStep, 'step' | 'volts' | 'clean'>; points: readonly Point[] }[] {
  const steps = byStep(group.scale);
  return steps.map((points) => {
    const step = points[0]?.step ?? 0;
    const volts = combine(points.map(pointVolts), steps.length);
    return { level: { step, volts, clean: cleanStepValue !== undefined && step <= cleanStepValue }, points };
  });
}

/** A handful of spot frequencies is not a curve. */
const leastCurvePoints = 8;

function responsesByStep(group: Group): ResponseAtStep[] {
  return curvesByStep(group).map(({ step, points }) => ({
    step,
    points: points.map(({ hz, level, readings }) => ({ hz, level, readings })),
  }));
}

function curvesByStep(group: Group): { step: number; points: readonly ResponsePoint[] }[] {
  return group.steps.flatMap((step) => {
    const points = group.responseOf(step);
    return points.length < leastCurvePoints ? [] : [{ step, points }];
  });
}
