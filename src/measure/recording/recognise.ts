/** What a recording holds, told from itself: a steady tone, a sweep from here to there, or neither. */
import { playingStretch, type Stretch } from './activity.ts';
import { RealTransform } from './fft.ts';
import { hann } from './windows.ts';

/** What was found. Frequencies and lengths are good to a few per cent, to be told to a person. */
export type Recognised =
  | { readonly kind: 'tone'; readonly hz: number }
  | { readonly kind: 'sweep'; readonly fromHz: number; readonly toHz: number; readonly seconds: number }
  | { readonly kind: 'linear-sweep' }
  | { readonly kind: 'other' };

/** The strongest frequency of one frame. */
interface Ridge {
  readonly seconds: number;
  readonly hz: number;
}

/** At most this many frames are looked at, so that long recordings take no longer. */
const mostFrames = 160;
/** Frames this far below the loudest, 40 dB in power, tell nothing. */
const quietestPower = 1e-4;
/** A frame lies on a line when its frequency is this near, as a fraction, besides its resolution. */
const lineTolerance = 0.02;
/** So many of the frames have to lie on a line for it to be what was played. */
const shareOnLine = 0.6;
/** What moves less than this over the whole recording, as a natural logarithm, is a tone: sweeps move by octaves. */
const toneDrift = 0.2;

/** Follows the strongest frequency over time and fits a tone or an exponential sweep to it. */
export function recognise(samples: Float64Array, sampleRateHz: number): Recognised {
  const playing = playingStretch(samples, Math.round(0.01 * sampleRateHz));
  if (!playing) return { kind: 'other' };
  const seconds = (playing.to - playing.from) / sampleRateHz;
  const frameLength = frameLengthFor(seconds, sampleRateHz);
  const ridges = ridgesOf(samples, playing, frameLength, sampleRateHz);
  const resolutionHz = sampleRateHz / frameLength;

  const logLine = bestLine(
    ridges.map(({ seconds: x, hz }) => ({ x, y: Math.log(hz), tolerance: toleranceAt(hz) })),
  );
  if (logLine && logLine.share >= shareOnLine) {
    const at = (time: number): number => Math.exp(logLine.offset + logLine.slope * time);
    if (Math.abs(logLine.slope) * seconds < toneDrift)
      return { kind: 'tone', hz: at(playing.from / sampleRateHz + seconds / 2) };
    return {
      kind: 'sweep',
      fromHz: at(playing.from / sampleRateHz),
      toHz: at(playing.to / sampleRateHz),
      seconds,
    };
  }
  const line = bestLine(
    ridges.map(({ seconds: x, hz }) => ({ x, y: hz, tolerance: lineTolerance * hz + resolutionHz })),
  );
  return { kind: line && line.share >= 0.8 ? 'linear-sweep' : 'other' };

  function toleranceAt(hz: number): number {
    return lineTolerance + (0.3 * resolutionHz) / hz;
  }
}

/** Frames short against a sweep, long enough to tell low notes: a fiftieth of what plays. */
function frameLengthFor(seconds: number, sampleRateHz: number): number {
  let length = 512;
  while (length < 16_384 && length * 1.5 < (seconds * sampleRateHz) / 50) length *= 2;
  return length;
}

function ridgesOf(
  samples: Float64Array,
  playing: Stretch,
  frameLength: number,
  sampleRateHz: number,
): Ridge[] {
  const transform = new RealTransform(frameLength);
  const window = hann(frameLength);
  const span = playing.to - playing.from - frameLength;
  const count = Math.max(1, Math.min(mostFrames, Math.floor((2 * span) / frameLength)));
  const frames: (Ridge & { readonly power: number })[] = [];
  for (let frame = 0; frame < count; frame += 1) {
    const from = playing.from + Math.round((span * frame) / Math.max(1, count - 1));
    if (from < 0 || from + frameLength > samples.length) continue;
    const windowed = new Float64Array(frameLength);
    for (let n = 0; n < frameLength; n += 1) windowed[n] = (samples[from + n] ?? 0) * (window[n] ?? 0);
    const powers = powersOf(transform.forward(windowed));
    const { bin, power } = peakOf(powers);
    frames.push({
      seconds: (from + frameLength / 2) / sampleRateHz,
      hz: (bin * sampleRateHz) / frameLength,
      power,
    });
  }
  const loudest = Math.max(...frames.map(({ power }) => power));
  return frames.filter(({ power, hz }) => power >= quietestPower * loudest && hz > 0);
}

/** |X|² of the bins below half the sample rate. */
export function powersOf(spectrum: Float64Array): Float64Array {
  const powers = new Float64Array(spectrum.length / 2 - 1);
  for (let k = 0; k < powers.length; k += 1) {
    powers[k] = (spectrum[2 * k] ?? 0) ** 2 + (spectrum[2 * k + 1] ?? 0) ** 2;
  }
  return powers;
}

/** The strongest bin, between bins by a parabola through the logarithms of its neighbourhood. */
export function peakOf(powers: Float64Array): { readonly bin: number; readonly power: number } {
  let best = 1;
  for (let k = 1; k < powers.length - 1; k += 1) if ((powers[k] ?? 0) > (powers[best] ?? 0)) best = k;
  const [left, middle, right] = [best - 1, best, best + 1].map((k) => Math.log((powers[k] ?? 0) + 1e-300));
  const bend = (left ?? 0) - 2 * (middle ?? 0) + (right ?? 0);
  const shift = bend < 0 ? ((left ?? 0) - (right ?? 0)) / (2 * bend) : 0;
  return { bin: best + Math.max(-0.5, Math.min(0.5, shift)), power: powers[best] ?? 0 };
}

interface LinePoint {
  readonly x: number;
  readonly y: number;
  readonly tolerance: number;
}

/**
 * The line that most points lie on: every pair of points far enough apart proposes one, the fullest wins and
 * is fitted to its points by least squares. Undefined for fewer than five points.
 */
function bestLine(
  points: readonly LinePoint[],
): { slope: number; offset: number; share: number } | undefined {
  if (points.length < 5) return undefined;
  const onLine = (slope: number, offset: number): LinePoint[] =>
    points.filter(({ x, y, tolerance }) => Math.abs(y - offset - slope * x) <= tolerance);
  const least = Math.max(2, Math.floor(points.length / 5));
  let best: LinePoint[] = [];
  for (let i = 0; i < points.length; i += 1) {
    for (let j = i + least; j < points.length; j += 3) {
      const a = points[i];
      const b = points[j];
      if (!a || !b || a.x === b.x) continue;
      const slope = (b.y - a.y) / (b.x - a.x);
      const on = onLine(slope, a.y - slope * a.x);
      if (on.length > best.length) best = on;
    }
  }
  if (best.length < 2) return undefined;
  // Low notes are told less exactly; the fit leans on the others.
  const weighted = (value: (point: LinePoint) => number): number =>
    best.reduce((total, point) => total + value(point) / point.tolerance ** 2, 0);
  const weight = weighted(() => 1);
  const meanX = weighted(({ x }) => x) / weight;
  const meanY = weighted(({ y }) => y) / weight;
  const spread = weighted(({ x }) => (x - meanX) ** 2);
  const slope = weighted(({ x, y }) => (x - meanX) * (y - meanY)) / spread;
  const offset = meanY - slope * meanX;
  return { slope, offset, share: onLine(slope, offset).length / points.length };
}
