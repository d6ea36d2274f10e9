/** The exponential sine sweep and the times its harmonics arrive at (Farina, AES 108th convention, 2000). */

/** A sine whose frequency rises exponentially from one end to the other. */
export interface Sweep {
  readonly kind: 'sweep';
  readonly fromHz: number;
  readonly toHz: number;
  readonly seconds: number;
}

/** The time in which the frequency grows by e, seconds: L = T/ln(f2/f1). */
export function growthSeconds({ fromHz, toHz, seconds }: Sweep): number {
  return seconds / Math.log(toHz / fromHz);
}

/** How much earlier than the linear response that of a harmonic arrives, seconds: T·ln n/ln(f2/f1). */
export function harmonicLeadSeconds(sweep: Sweep, order: number): number {
  return growthSeconds(sweep) * Math.log(order);
}

/** The instant at which the sweep passes a frequency, seconds from its start: L·ln(f/f1). */
export function secondsAtHz(sweep: Sweep, hz: number): number {
  return growthSeconds(sweep) * Math.log(hz / sweep.fromHz);
}

/** The frequency at an instant, hertz: f1·e^(t/L). */
export function hzAtSeconds(sweep: Sweep, seconds: number): number {
  return sweep.fromHz * Math.exp(seconds / growthSeconds(sweep));
}

/** The phase at an instant, radians: φ(t) = 2π·f1·L·(e^(t/L) − 1). */
function phaseAt(sweep: Sweep, seconds: number): number {
  const growth = growthSeconds(sweep);
  return 2 * Math.PI * sweep.fromHz * growth * Math.expm1(seconds / growth);
}

/** Samples of the sweep at full scale, sin φ(t), from its start to its end. */
export function sweepSamples(sweep: Sweep, sampleRateHz: number): Float64Array {
  const samples = new Float64Array(Math.round(sweep.seconds * sampleRateHz));
  for (let n = 0; n < samples.length; n += 1) samples[n] = Math.sin(phaseAt(sweep, n / sampleRateHz));
  return samples;
}

/**
 * What a recording would hold if harmonic `order` of the sweep alone came through, at amplitude 1:
 * sin nφ(t), order 1 being the sweep itself. It starts at sample `start` of the recording, which may lie
 * before its first; harmonics fade out between the sweep's end and half the sample rate, as in any recorder.
 */
export function harmonicSamples(
  sweep: Sweep,
  { sampleRateHz, order, start, length }: HarmonicWanted,
): Float64Array {
  const samples = new Float64Array(length);
  const nyquistHz = sampleRateHz / 2;
  const fadeFromHz = Math.min(1.1 * sweep.toHz, (sweep.toHz + nyquistHz) / 2);
  const end = start + Math.round(sweep.seconds * sampleRateHz);
  for (let n = Math.max(0, start); n < Math.min(length, end); n += 1) {
    const seconds = (n - start) / sampleRateHz;
    const hz = order * hzAtSeconds(sweep, seconds);
    if (hz >= nyquistHz) break;
    const fade = Math.max(0, (hz - fadeFromHz) / (nyquistHz - fadeFromHz));
    samples[n] = (0.5 + 0.5 * Math.cos(Math.PI * fade)) * Math.sin(order * phaseAt(sweep, seconds));
  }
  return samples;
}

interface HarmonicWanted {
  readonly sampleRateHz: number;
  readonly order: number;
  readonly start: number;
  readonly length: number;
}
