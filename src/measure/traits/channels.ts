/** One output against another: rear to front, left to right, silence. */
import { mean, unique } from '../combine.ts';
import { levelBetween } from '../from-points.ts';
import { byStep, type Described, type Group } from '../group.ts';
import type { Point } from '../point.ts';
import { quantity } from '../propagate.ts';
import { referenceHz } from '../response.ts';
import { frontChannel, type SessionPoints } from '../session-points.ts';

/** A rear output this far below front is silent, dB: common practice, no source. */
export const mutedBelowDb = -40;

/** Rear relative to front at 1 kHz in one session, left and right averaged in dB where both were read. */
export function rearToFront({ references }: SessionPoints, cleanStep: number): Described[] {
  return pairsByStep(references, cleanStep, [
    ['RL', 'FL'],
    ['RR', 'FR'],
  ]).map(({ step, pairs }) => {
    // Nothing at all read: the last digit is the most it can have been.
    const level = mean(pairs.map(([rear, front]) => levelBetween(atLeastLastDigit(rear), front)));
    return {
      name: 'rear-to-front' as const,
      quantity: level.value < mutedBelowDb ? quantity(mutedBelowDb, 'dB', [], 'at-most') : level,
      at: { step, hz: referenceHz },
      ...origin(pairs),
    };
  });
}

/** Front right relative to front left at 1 kHz in one session, dB. */
export function leftToRight({ references }: SessionPoints, cleanStep: number): Described[] {
  return pairsByStep(references, cleanStep, [['FR', 'FL']]).flatMap(({ step, pairs }) =>
    pairs.map(([right, left]) => ({
      name: 'left-to-right' as const,
      quantity: levelBetween(atLeastLastDigit(right), left),
      at: { step, hz: referenceHz },
      ...origin(pairs),
    })),
  );
}

type Pair = readonly [point: Point, reference: Point];

/** For each clean step, the pairs of channels that were both read at 1 kHz and whose reference plays. */
function pairsByStep(
  references: readonly Point[],
  cleanStep: number,
  channels: readonly (readonly [string, string])[],
): { step: number; pairs: Pair[] }[] {
  return byStep(references).flatMap((here) => {
    const step = here[0]?.step ?? 0;
    if (step > cleanStep || here.length < 2) return [];
    const at = (channel: string) => here.find((one) => one.channel === channel);
    const pairs = channels.flatMap(([channel, reference]): Pair[] => {
      const [one, other] = [at(channel), at(reference)];
      return one && other && other.voltsRms > 0 ? [[one, other]] : [];
    });
    return pairs.length === 0 ? [] : [{ step, pairs }];
  });
}

function origin(pairs: readonly Pair[]): Pick<Described, 'readings' | 'sources'> {
  return {
    readings: pairs.flatMap(([one, other]) => [...one.readings, ...other.readings]),
    sources: unique(pairs.map(([one]) => one.source)),
  };
}

function atLeastLastDigit(point: Point): Point {
  return point.voltsRms > 0 ? point : { ...point, voltsRms: point.influences.resolutionVolts };
}

/** Outputs whose highest 1 kHz reading beside a playing front output stays below {@link mutedBelowDb}. */
export function mutedChannels(group: Group): string[] {
  const points = group.allSessions.flatMap(({ references }) => references);
  const channels = unique(points.map((point) => point.channel)).filter((one) => one !== frontChannel);
  return channels.filter((channel) => {
    const played = points.filter((point) => point.channel === channel);
    const steps = new Set(played.map((point) => point.step));
    const fronts = points.filter((point) => point.channel === frontChannel && steps.has(point.step));
    const front = Math.max(0, ...fronts.map((point) => point.voltsRms));
    const loudest = Math.max(0, ...played.map((point) => point.voltsRms));
    return front > 0 && loudest < front * 10 ** (mutedBelowDb / 20);
  });
}
