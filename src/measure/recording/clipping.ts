/** Whether a recording is clipped: its peaks cut flat by the recorder, or by a limit just below it. */

/** What was found at the peaks of a recording. */
export interface Clipping {
  readonly clipped: boolean;
  /** Peaks that are flat. */
  readonly flatTops: number;
  /** The highest magnitude, full scale = 1. */
  readonly peak: number;
}

/** Equal samples in a row that make a flat top at least; two can be one rounded peak's two sides. */
const leastRun = 3;

/** A limiter or an overloaded input bends the peaks within this fraction of full scale. */
const nearFullScale = 0.98;
const bentWithin = 0.005;

/** The top code over this share of the recording is no peak of a sine, which is there for an instant. */
const atTheStop = { above: 1 - 2 ** -12, share: 0.1 } as const;

/**
 * Looks for flat tops among the peaks. A sine's top is a parabola: one run-length outside a run of like
 * samples it has fallen nine times as far as within the run, more where the run is a few samples only. A
 * clipped one falls off like the flank it was cut from, by far more; so low notes and coarse quantisation,
 * whose peaks are long runs of like samples too, are not mistaken for clipping.
 */
export function findClipping(samples: Float64Array): Clipping {
  let flatTops = 0;
  let clipped = false;
  let peak = 0;
  for (const sign of [1, -1]) {
    const extreme = extremeOf(samples, sign);
    peak = Math.max(peak, extreme);
    if (extreme <= 0) continue;
    const step = stepNearTop(samples, extreme);
    const equal = step === undefined ? 0 : countFlatTops(samples, sign, extreme, step / 2);
    const bent = extreme < nearFullScale ? 0 : countFlatTops(samples, sign, extreme, bentWithin * extreme);
    flatTops += Math.max(equal, bent);
    if (equal >= 2 || bent >= 3 || atStop(samples, sign, extreme)) clipped = true;
  }
  return { clipped, flatTops, peak };
}

function extremeOf(samples: Float64Array, sign: number): number {
  let extreme = 0;
  for (const sample of samples) extreme = Math.max(extreme, sign * sample);
  return extreme;
}

/** The smallest step between neighbours in the upper half: the recording's resolution there. */
function stepNearTop(samples: Float64Array, extreme: number): number | undefined {
  let smallest = Number.POSITIVE_INFINITY;
  for (let n = 1; n < samples.length; n += 1) {
    const here = samples[n] ?? 0;
    const before = samples[n - 1] ?? 0;
    if (Math.abs(here) < extreme / 2 || Math.abs(before) < extreme / 2) continue;
    const step = Math.abs(here - before);
    if (step > 0 && step < smallest) smallest = step;
  }
  return Number.isFinite(smallest) ? smallest : undefined;
}

/** Runs within `tolerance` of the extreme whose surroundings fall off more than a rounded peak's would. */
function countFlatTops(samples: Float64Array, sign: number, extreme: number, tolerance: number): number {
  const within = (n: number): boolean => sign * (samples[n] ?? 0) >= extreme - tolerance;
  let count = 0;
  for (let n = 0; n < samples.length; n += 1) {
    if (!within(n)) continue;
    let end = n;
    while (end < samples.length && within(end)) end += 1;
    const run = end - n;
    if (run >= leastRun) {
      const left = n - run >= 0 ? extreme - sign * (samples[n - run] ?? 0) : Number.POSITIVE_INFINITY;
      const at = end - 1 + run;
      const right = at < samples.length ? extreme - sign * (samples[at] ?? 0) : Number.POSITIVE_INFINITY;
      const drop = Math.min(left, right);
      if (Number.isFinite(drop) && drop > 2 * tolerance * (1.3 * roundedDrop(run) + 2)) count += 1;
    }
    n = end;
  }
  return count;
}

/** How many times further a parabola may have fallen one run-length outside a run than at the run's end. */
function roundedDrop(run: number): number {
  const least = (run - 1) / 2;
  return ((3 * least + 2) / least) ** 2;
}

function atStop(samples: Float64Array, sign: number, extreme: number): boolean {
  if (extreme < atTheStop.above) return false;
  let count = 0;
  for (const sample of samples) if (sign * sample >= extreme) count += 1;
  return count > atTheStop.share * samples.length;
}
