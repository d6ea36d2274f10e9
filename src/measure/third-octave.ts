/** Third-octave frequencies of IEC 61260-1:2014 (base ten). */

/** The exact centre of band k, hertz: 1000·10^(k/10), 0 for 1 kHz (IEC 61260-1:2014, 5.2). */
export function exactCentre(k: number): number {
  return 1000 * 10 ** (k / 10);
}

/** The lower and upper edge of band k, hertz: centre·10^(∓1/20) (IEC 61260-1:2014, 5.4). */
export function bandEdges(k: number): readonly [lowerHz: number, upperHz: number] {
  return [exactCentre(k) * 10 ** (-1 / 20), exactCentre(k) * 10 ** (1 / 20)];
}

/** The band whose exact centre is nearest to a frequency. */
export function nearestBand(hz: number): number {
  return Math.round(10 * Math.log10(hz / 1000));
}

/** Nominal mid-band frequencies of one decade (ISO 266:1997), 1 kHz to 8 kHz. */
const nominalDecade = [1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000, 6300, 8000] as const;

/** The nominal centre of band k, hertz, as printed on instruments: 31.5, 63, 80 … (ISO 266:1997). */
export function nominalCentre(k: number): number {
  const inDecade = ((k % 10) + 10) % 10;
  const decade = (k - inDecade) / 10;
  // Divide rather than multiply by a fraction, so that 31.5 is exactly 31.5.
  const nominal = nominalDecade[inDecade] ?? 1000;
  return decade < 0 ? nominal / 10 ** -decade : nominal * 10 ** decade;
}

/** The nominal centre where a frequency is an exact third-octave centre within 0.1 %, else undefined. */
export function nominalOf(hz: number): number | undefined {
  const band = nearestBand(hz);
  const nominal = nominalCentre(band);
  const isCentre = Math.abs(hz / exactCentre(band) - 1) <= 0.001 || Math.abs(hz / nominal - 1) <= 1e-6;
  return isCentre ? nominal : undefined;
}

/** Exact centres of the bands from `from` to `to`, hertz, as sheets have them: to six digits. */
export function sheetCentres(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, at) => Number(exactCentre(from + at).toPrecision(6)));
}

/** The bands of 20 Hz and 20 kHz: what is heard. */
export const audibleBands = [-17, 13] as const;
