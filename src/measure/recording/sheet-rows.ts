/** Figures in volts → rows of a session's sheet, as a bench with a meter would have written them. */
import type { Channel, Reading } from '../../../schemas/index.ts';
import { readingColumns } from '../../../schemas/index.ts';
import type { SweepFigures, ToneFigures } from '../../../schemas/results/sweep.ts';

/** Where the readings belong. */
export interface Slot {
  readonly profile: string;
  readonly channel: Channel;
  readonly step: number;
  readonly repeat: number;
}

/**
 * One reading for each frequency. A sweep's volts are those of the fundamental, a tone's those of all a
 * true-rms meter sees; THD where it was told, at its bound where noise hid it, as an analyser shows it.
 * None where the volts are not known.
 */
export function readingsOf(figures: SweepFigures | ToneFigures, slot: Slot): Reading[] {
  return figures.response.flatMap(({ hz, voltsRms }) => {
    const volts = figures.kind === 'tone' ? figures.level.voltsRms : voltsRms;
    if (volts === undefined) return [];
    const thd = figures.thd.find((one) => one.hz === hz);
    return [
      {
        profile: slot.profile,
        channel: slot.channel,
        step: slot.step,
        hz,
        voltsRms: Number(volts.toPrecision(5)),
        thdPercent: thd ? Number((100 * thd.ratio).toPrecision(3)) : null,
        repeat: slot.repeat,
      },
    ];
  });
}

/** The first line of a sheet. */
export const sheetHeader = readingColumns.join(',');

/** A reading as a line of a sheet. */
export function sheetLine(reading: Reading): string {
  return readingColumns.map((column) => plain(reading[column])).join(',');
}

/** Numbers without an exponent: sheets are read by people and by spreadsheets. */
function plain(value: string | number | null): string {
  if (typeof value !== 'number') return value ?? '';
  const text = String(value);
  return text.includes('e') ? value.toFixed(9).replace(/0+$/, '') : text;
}
