/** The points of one session, and the orders they are asked for in. */
import type { Point, Run } from './point.ts';
import { isReference } from './response.ts';

/** The channel that stands for the front in level and response. */
export const frontChannel = 'FL';

export class SessionPoints {
  readonly run: Run;
  readonly points: readonly Point[];
  /** All channels at 1 kHz, by rising step. */
  readonly references: readonly Point[];
  /** The front channel at 1 kHz, by rising step. */
  readonly scale: readonly Point[];

  constructor(run: Run, points: readonly Point[]) {
    this.run = run;
    this.points = points;
    this.references = points.filter((point) => isReference(point.hz)).sort((a, b) => a.step - b.step);
    this.scale = this.references.filter((point) => point.channel === frontChannel);
  }
}
