/** Profiles whose outputs are the same as far as any meter can tell. */
import { dbv } from '../../measure/index.ts';
import { audibleVolts, twinsWithinDb } from './constants.ts';
import type { Prediction, Predictor } from './predict.ts';
import type { ReadingPoint } from './reading.ts';

export interface Predicted {
  readonly profile: string;
  readonly predict: Predictor;
}

/**
 * Profiles put together where their predictions agree at every point both have one for: levels within
 * `twinsWithinDb` beyond their expanded uncertainty (k = 2), silent where the other is. Groups and their
 * members keep the order given; a profile joins the first group whose first member it agrees with.
 */
export function groupTwins(profiles: readonly Predicted[], points: readonly ReadingPoint[]): Predicted[][] {
  const groups: Predicted[][] = [];
  for (const profile of profiles) {
    const home = groups.find(([first]) => first && areTwins(first.predict, profile.predict, points));
    if (home) home.push(profile);
    else groups.push([profile]);
  }
  return groups;
}

function areTwins(a: Predictor, b: Predictor, points: readonly ReadingPoint[]): boolean {
  let compared = 0;
  for (const point of points) {
    const [one, other] = [a(point), b(point)];
    if (!one || !other) continue;
    compared += 1;
    if (!agree(one, other)) return false;
  }
  return compared > 0;
}

function agree(a: Prediction, b: Prediction): boolean {
  // What one bench took for silence the other may just have heard.
  if (a.perOffset === 0 || b.perOffset === 0) {
    return Math.max(a.levelDbv, b.levelDbv) <= dbv(2 * audibleVolts);
  }
  return Math.abs(a.levelDbv - b.levelDbv) <= twinsWithinDb + 2 * Math.hypot(a.ownDb, b.ownDb);
}
