/** Frequency response relative to 1 kHz. */

import { levelBetween } from './from-points.ts';
import type { Point } from './point.ts';
import type { Quantity } from './quantity.ts';

/** The reference frequency of every response, hertz. */
export const referenceHz = 1000;

/** True for 1 kHz, whatever its last digits. */
export function isReference(hz: number): boolean {
  return Math.abs(hz / referenceHz - 1) < 1e-6;
}

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
  const reference = points.find((point) => isReference(point.hz));
  if (!reference || reference.voltsRms === 0 || points.length < 2) return undefined;
  return points
    .filter((point) => point.voltsRms > 0)
    .sort((a, b) => a.hz - b.hz)
    .map((point) => new PointOfSession(point, reference));
}

/** A point of one session's response. Most are only drawn or compared: what it came from follows when asked for. */
class PointOfSession implements ResponsePoint {
  readonly hz: number;
  readonly level: Quantity;
  readonly voltsRms: number;
  readonly #point: Point;
  readonly #reference: Point;

  constructor(point: Point, reference: Point) {
    this.hz = point.hz;
    this.level = levelBetween(point, reference);
    this.voltsRms = point.voltsRms;
    this.#point = point;
    this.#reference = reference;
  }

  get readings(): readonly string[] {
    const { readings } = this.#point;
    return this.#point === this.#reference ? readings : [...readings, ...this.#reference.readings];
  }

  get sources(): readonly string[] {
    return [this.#point.source];
  }
}

/** The point of the highest level; the first of several as high, undefined where there is none. */
export function loudest(response: readonly ResponsePoint[]): ResponsePoint | undefined {
  let best: ResponsePoint | undefined;
  for (const one of response) if (!best || one.level.value > best.level.value) best = one;
  return best;
}
