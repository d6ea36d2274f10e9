/** Sessions of one profile under like conditions, and what is read off them more than once. */
import type { Session } from '../../schemas/index.ts';
import { combine, unique } from './combine.ts';
import { dbRatio } from './level.ts';
import type { Point, Run } from './point.ts';
import { pointsOf } from './points.ts';
import type { CharacteristicName, Conditions, Quantity } from './quantity.ts';
import { type ResponsePoint, responseAt } from './response.ts';
import { frontChannel, SessionPoints } from './session-points.ts';

/** What the family says of the unit that was measured. */
export interface UnitLimits {
  readonly ratedLoadOhms: number;
  readonly highestStep: number;
}

/** A value on its way to becoming a characteristic. */
export interface Described {
  readonly name: CharacteristicName;
  readonly quantity: Quantity;
  readonly at: Pick<Conditions, 'channel' | 'step' | 'hz'>;
  readonly readings: readonly string[];
  readonly sources: readonly string[];
}

/** Conditions are alike when the load is, within a tenth, the supply within 0.5 V, the signal within 0.1 dB. */
export function areAlike(a: Session, b: Session): boolean {
  return areAlikeButForLevel(a, b) && Math.abs(a.signal.levelDbfs - b.signal.levelDbfs) <= 0.1;
}

/** Conditions alike in everything but the level of the test signal. */
export function areAlikeButForLevel(a: Session, b: Session): boolean {
  return (
    a.signal.kind === b.signal.kind &&
    Math.abs(a.load.ohms / b.load.ohms - 1) <= 0.1 &&
    Math.abs(a.supply.volts - b.supply.volts) <= 0.5
  );
}

export class Group {
  /** The sessions taken under the group's conditions. */
  readonly sessions: readonly SessionPoints[];
  /** Sessions taken at another signal level, their clean points brought to the group's. */
  readonly normalised: readonly SessionPoints[];
  readonly conditions: Conditions;
  /** The group's own sessions, then the normalised ones. */
  readonly allSessions: readonly SessionPoints[];
  /** All points of all sessions. */
  readonly points: readonly Point[];
  /** The steps anything was read at, rising. */
  readonly steps: readonly number[];
  /** Points of the front channel at 1 kHz from all sessions, by rising step. */
  readonly scale: readonly Point[];
  /** The front channel's points by step, one list a session. */
  readonly #frontByStep: ReadonlyMap<number, Point[][]>;
  readonly #responses = new Map<number, readonly ResponsePoint[]>();

  constructor(runs: readonly Run[], normalised: readonly SessionPoints[] = []) {
    this.sessions = runs.map((run) => new SessionPoints(run, pointsOf(run)));
    this.normalised = normalised;
    const first = runs[0]?.conditions;
    this.conditions = {
      loadOhms: first?.load.ohms ?? Number.NaN,
      supplyVolts: first?.supply.volts ?? Number.NaN,
      signalDbfs: first?.signal.levelDbfs ?? Number.NaN,
    };
    this.allSessions = [...this.sessions, ...normalised];
    const [only] = this.allSessions;
    this.points =
      only && this.allSessions.length === 1 ? only.points : this.allSessions.flatMap(({ points }) => points);
    this.steps = [...new Set(this.points.map((point) => point.step))].sort((a, b) => a - b);
    const scales = this.allSessions.map(({ scale }) => scale);
    this.scale = scales.length === 1 ? (scales[0] ?? []) : scales.flat().sort((a, b) => a.step - b.step);
    this.#frontByStep = frontByStep(this.allSessions);
  }

  /** The response at one step from all sessions that took it, each frequency combined; empty where none did. */
  responseOf(step: number): readonly ResponsePoint[] {
    const known = this.#responses.get(step);
    if (known) return known;
    const curves = (this.#frontByStep.get(step) ?? []).flatMap((points) => {
      const curve = responseAt(points);
      return curve ? [curve] : [];
    });
    const response = curves.length > 1 ? combinedCurve(curves.flat()) : (curves[0] ?? []);
    this.#responses.set(step, response);
    return response;
  }
}

function frontByStep(sessions: readonly SessionPoints[]): Map<number, Point[][]> {
  const byStep = new Map<number, Point[][]>();
  for (const { points } of sessions) {
    const ofSession = new Map<number, Point[]>();
    for (const point of points) {
      if (point.channel !== frontChannel) continue;
      const here = ofSession.get(point.step);
      if (here) here.push(point);
      else ofSession.set(point.step, [point]);
    }
    for (const [step, here] of ofSession) byStep.set(step, [...(byStep.get(step) ?? []), here]);
  }
  return byStep;
}

/** Curves of several sessions as one, each frequency combined, by rising frequency. */
function combinedCurve(curves: readonly ResponsePoint[]): ResponsePoint[] {
  const byHz = new Map<number, ResponsePoint[]>();
  for (const point of curves) {
    const here = byHz.get(point.hz);
    if (here) here.push(point);
    else byHz.set(point.hz, [point]);
  }
  return [...byHz.entries()]
    .sort(([a], [b]) => a - b)
    .map(([hz, here]) => ({
      hz,
      level: combine(
        here.map((one) => one.level),
        byHz.size,
      ),
      readings: unique(here.flatMap((one) => one.readings)),
      sources: unique(here.flatMap((one) => one.sources)),
      voltsRms: Math.max(...here.map((one) => one.voltsRms)),
    }));
}

/** Runs grouped by like conditions, the group nearest the unit's rating (load, then signal level) first. */
export function likeConditions(runs: readonly Run[], unit: UnitLimits): Run[][] {
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

/**
 * A session's points brought to another level of the test signal: volts times the ratio of the levels. That
 * holds only where the output follows the signal, so only points that are clean both as read and as brought
 * over are kept: up to `cleanStep` and `cleanVolts`. THD is not carried over.
 */
export function normalisedTo(
  signalDbfs: number,
  run: Run,
  clean: { readonly step: number; readonly volts: number },
): SessionPoints {
  const ratio = dbRatio(signalDbfs - run.conditions.signal.levelDbfs);
  const points = pointsOf(run).flatMap((point): Point[] => {
    const voltsRms = point.voltsRms * ratio;
    const isClean = point.step <= clean.step && Math.max(voltsRms, point.voltsRms) <= clean.volts;
    if (!isClean) return [];
    const { influences } = point;
    return [
      {
        ...point,
        voltsRms,
        thdPercent: null,
        influences: {
          ...influences,
          countsVolts: influences.countsVolts * ratio,
          resolutionVolts: influences.resolutionVolts * ratio,
        },
      },
    ];
  });
  return new SessionPoints(run, points);
}

/** Values combined where they were taken at the same step; the highest step first. */
export function combineByStep(values: readonly Described[]): Described[] {
  const steps = unique(values.map((one) => one.at.step ?? 0)).sort((a, b) => b - a);
  return steps.flatMap((step) => {
    const here = values.filter((one) => (one.at.step ?? 0) === step);
    const [first] = here;
    if (!first) return [];
    return [
      {
        ...first,
        quantity: combine(
          here.map((one) => one.quantity),
          steps.length,
        ),
        readings: unique(here.flatMap((one) => one.readings)),
        sources: unique(here.flatMap((one) => one.sources)),
      },
    ];
  });
}

/** Points in order of their steps, cut into one list a step. */
export function byStep(points: readonly Point[]): Point[][] {
  const lists: Point[][] = [];
  for (const point of points) {
    const last = lists.at(-1);
    if (last?.[0]?.step === point.step) last.push(point);
    else lists.push([point]);
  }
  return lists;
}
