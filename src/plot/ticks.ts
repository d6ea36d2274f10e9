/** Where axes are ruled and labelled. */
import { exactCentre, nominalCentre } from '../measure/third-octave.ts';

/** A ruled line of an axis; without a label it is a fine one. */
export interface Tick {
  readonly value: number;
  readonly label: string | undefined;
}

/**
 * Third-octave centres (IEC 61260-1:2014) from `lowestHz` to `highestHz`, labelled with their nominal
 * frequency at every octave: 31.5, 63, 125 … 8k, 16k (ISO 266:1997).
 */
export function thirdOctaveTicks(lowestHz: number, highestHz: number): Tick[] {
  const ticks: Tick[] = [];
  for (let band = Math.ceil(10 * Math.log10(lowestHz / 1000) - 1e-6); ; band += 1) {
    const value = exactCentre(band);
    if (value > highestHz * 1.0001) return ticks;
    ticks.push({ value, label: band % 3 === 0 ? shortHz(nominalCentre(band)) : undefined });
  }
}

function shortHz(hz: number): string {
  return hz >= 1000 ? `${hz / 1000}k` : `${hz}`;
}

/**
 * 1–2–5 ticks of a logarithmic volt axis. All are labelled where the axis spans two decades or less, else
 * the decades alone.
 */
export function voltTicks(lowestVolts: number, highestVolts: number): Tick[] {
  const labelAll = highestVolts / lowestVolts <= 101;
  const ticks: Tick[] = [];
  for (let decade = Math.floor(Math.log10(lowestVolts)); decade <= Math.log10(highestVolts); decade += 1) {
    for (const digit of [1, 2, 5]) {
      // A quotient for small decades, so that 0.05 is exactly 0.05.
      const value = decade < 0 ? digit / 10 ** -decade : digit * 10 ** decade;
      if (value < lowestVolts * 0.9999 || value > highestVolts * 1.0001) continue;
      ticks.push({ value, label: labelAll || digit === 1 ? String(value) : undefined });
    }
  }
  return ticks;
}

/** The 1–2–5 values that enclose a range of volts. */
export function voltRange(lowestVolts: number, highestVolts: number): [lowest: number, highest: number] {
  const enclosing = (volts: number, up: boolean): number => {
    const decade = 10 ** Math.floor(Math.log10(volts));
    const steps = [1, 2, 5, 10].map((digit) => Number((digit * decade).toPrecision(1)));
    const found = up
      ? steps.find((step) => step >= volts * 0.9999)
      : steps.findLast((step) => step <= volts * 1.0001);
    return found ?? volts;
  };
  const lowest = enclosing(lowestVolts, false);
  const highest = enclosing(highestVolts, true);
  return lowest === highest ? [lowest / 2, highest * 2] : [lowest, highest];
}

/** Whole multiples of 3 dB, or of 6 or 12 where the range is wide, from `lowestDb` to `highestDb`. */
export function decibelTicks(lowestDb: number, highestDb: number): Tick[] {
  const range = highestDb - lowestDb;
  const every = range > 48 ? 12 : range > 24 ? 6 : 3;
  const ticks: Tick[] = [];
  for (let value = Math.ceil(lowestDb / every) * every; value <= highestDb + 1e-9; value += every) {
    const sign = value > 0 ? '+' : value < 0 ? '−' : '';
    ticks.push({ value, label: `${sign}${Math.abs(value)}` });
  }
  return ticks;
}

/** Volume steps at every 5 (or 2 or 10, by range), always with both ends. */
export function stepTicks(lowestStep: number, highestStep: number): Tick[] {
  const range = highestStep - lowestStep;
  const every = range > 60 ? 10 : range > 12 ? 5 : 2;
  const values = new Set([lowestStep, highestStep]);
  for (let value = Math.ceil(lowestStep / every) * every; value <= highestStep; value += every) {
    // A round tick right beside an end would run into the end's label.
    const gap = Math.min(Math.abs(value - lowestStep), Math.abs(highestStep - value));
    if (gap === 0 || gap >= every / 2) values.add(value);
  }
  return [...values].sort((a, b) => a - b).map((value) => ({ value, label: String(value) }));
}
