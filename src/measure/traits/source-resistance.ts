/** The output's own resistance, from the same step read into two loads. */

import { pointVolts } from '../from-points.ts';
import type { Described, Group } from '../group.ts';
import type { Point } from '../point.ts';
import { quantity } from '../propagate.ts';
import { referenceHz } from '../response.ts';
import { frontChannel } from '../session-points.ts';
import { type Component, limits, scaled } from '../uncertainty.ts';

/** Loads nearer to each other than this ratio do not tell a source resistance. */
const leastLoadRatio = 1.5;

/**
 * R = (V₁ − V₂)/(V₂/R₂ − V₁/R₁) from volts into two loads R₁ > R₂ at one clean step (voltage divider,
 * Ohm's law), by the pair of sessions and the highest common step with the least uncertainty. A value
 * within its uncertainty of none is a bound.
 */
export function sourceResistance(
  groups: readonly Group[],
  cleanSteps: readonly number[],
): Described | undefined {
  const found = groups.flatMap((a, i) =>
    groups.slice(i + 1).flatMap((b, offset) => {
      const step = Math.min(cleanSteps[i] ?? 0, cleanSteps[i + 1 + offset] ?? 0);
      return pairsOf(a, b, step).map(([high, low]) => resistanceOf(high, low));
    }),
  );
  return found.reduce<Described | undefined>(
    (best, one) =>
      best && best.quantity.standardUncertainty <= one.quantity.standardUncertainty ? best : one,
    undefined,
  );
}

interface LoadedPoint {
  readonly point: Point;
  readonly ohms: number;
  readonly tolerance: number;
}

/** Points of both groups at one step up to `mostStep`, ordered as higher and lower load; the highest step only. */
function pairsOf(a: Group, b: Group, mostStep: number): (readonly [LoadedPoint, LoadedPoint])[] {
  const sameSupply = Math.abs(a.conditions.supplyVolts - b.conditions.supplyVolts) <= 0.5;
  const sameSignal = Math.abs(a.conditions.signalDbfs - b.conditions.signalDbfs) <= 0.1;
  const ratio = a.conditions.loadOhms / b.conditions.loadOhms;
  if (!sameSupply || !sameSignal || Math.max(ratio, 1 / ratio) < leastLoadRatio) return [];
  const loaded = (group: Group): LoadedPoint[] =>
    group.sessions.flatMap(({ run, scale }) =>
      scale
        .filter((point) => point.step <= mostStep)
        .map((point) => ({
          point,
          ohms: run.conditions.load.ohms,
          tolerance: run.conditions.load.tolerancePercent / 100,
        })),
    );
  const [ofA, ofB] = [loaded(a), loaded(b)];
  const common = ofA.filter((one) => ofB.some((other) => other.point.step === one.point.step));
  const step = Math.max(...common.map((one) => one.point.step));
  return ofA
    .filter((one) => one.point.step === step)
    .flatMap((one) =>
      ofB
        .filter((other) => other.point.step === step)
        .map((other) => (one.ohms > other.ohms ? ([one, other] as const) : ([other, one] as const))),
    );
}

function resistanceOf(high: LoadedPoint, low: LoadedPoint): Described {
  const [v1, v2] = [pointVolts(high.point), pointVolts(low.point)];
  const resistance = (volts1: number, volts2: number, ohms1: number, ohms2: number): number =>
    (volts1 - volts2) / (volts2 / ohms2 - volts1 / ohms1);
  const value = resistance(v1.value, v2.value, high.ohms, low.ohms);
  const sensitivity = (moved: number, by: number): number => (moved - value) / by;
  const small = 1e-6;
  const step1 = v1.value * small;
  const step2 = v2.value * small;
  // The load's tolerance enters here in full, so its part in the volts' budgets is left out.
  const without = (budget: readonly Component[]): Component[] => budget.filter((one) => one.name !== 'load');
  const components: Component[] = [
    ...scaled(
      without(v1.budget),
      sensitivity(resistance(v1.value + step1, v2.value, high.ohms, low.ohms), step1),
    ),
    ...scaled(
      without(v2.budget),
      sensitivity(resistance(v1.value, v2.value + step2, high.ohms, low.ohms), step2),
    ),
    ...scaled(
      [limits('load', high.ohms * high.tolerance, `ohms ${high.point.session}`)],
      sensitivity(resistance(v1.value, v2.value, high.ohms * (1 + small), low.ohms), high.ohms * small),
    ),
    ...scaled(
      [limits('load', low.ohms * low.tolerance, `ohms ${low.point.session}`)],
      sensitivity(resistance(v1.value, v2.value, high.ohms, low.ohms * (1 + small)), low.ohms * small),
    ),
  ];
  const measured = quantity(value, 'Ω', components);
  return {
    name: 'source-resistance',
    quantity:
      value > measured.expandedUncertainty
        ? measured
        : quantity(Math.max(0, value) + measured.expandedUncertainty, 'Ω', [], 'at-most'),
    at: { channel: frontChannel, step: high.point.step, hz: referenceHz },
    readings: [...high.point.readings, ...low.point.readings],
    sources: [...new Set([high.point.source, low.point.source])],
  };
}
