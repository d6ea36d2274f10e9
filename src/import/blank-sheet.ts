/** A bench sheet to fill in: what is worth reading of a profile, and its CSV, which is imported as it is. */
import type { Channel } from '../../schemas/index.ts';
import { audibleBands, sheetCentres } from '../measure/index.ts';
import { csvCell } from '../tables/csv-cells.ts';

/** What of a unit decides what can be read. */
export interface SheetUnit {
  readonly name: string;
  readonly channels: readonly Channel[];
  readonly lowestStep: number;
  readonly highestStep: number;
}

export interface SheetLine {
  readonly channel: Channel;
  readonly step: number;
  readonly hz: number;
  readonly repeat: number;
}

/** The readings a profile is characterised by, in parts as they are taken. */
export interface SheetPlan {
  /** The front output at 1 kHz at every step; three times over at three of them, by which the scatter is known. */
  readonly level: readonly SheetLine[];
  /** The front output over frequency at the middle step. */
  readonly response: readonly SheetLine[];
  /** The other outputs at 1 kHz at the middle step. */
  readonly outputs: readonly SheetLine[];
}

/** Common practice of the demo’s benches, no standard. */
const repeats = 3;

export function sheetPlan({ channels, lowestStep, highestStep }: SheetUnit): SheetPlan {
  const [front = 'FL', ...others] = channels;
  const at = (share: number): number => Math.round(lowestStep + share * (highestStep - lowestStep));
  const middle = at(0.5);
  const often = new Set([at(0.25), middle, at(0.75)]);
  const steps = Array.from({ length: highestStep - lowestStep + 1 }, (_, index) => lowestStep + index);
  const level = steps.flatMap((step) =>
    Array.from({ length: often.has(step) ? repeats : 1 }, (_, index) => ({
      channel: front,
      step,
      hz: 1000,
      repeat: index + 1,
    })),
  );
  const response = sheetCentres(...audibleBands)
    .filter((hz) => hz !== 1000)
    .map((hz) => ({ channel: front, step: middle, hz, repeat: 1 }));
  const outputs = others.map((channel) => ({ channel, step: middle, hz: 1000, repeat: 1 }));
  return { level, response, outputs };
}

/** What the sheet asks of the session, by the names an import knows. */
const conditionLabels = [
  'Date',
  'Bench',
  'Taken by (role)',
  'Instrument',
  'Signal level (dBFS)',
  'Load (ohm)',
  'Supply (V)',
] as const;

const heads = [
  'Unit',
  'Code',
  'Channel',
  'Step',
  'Frequency (Hz)',
  'Volts rms (V)',
  'THD (%)',
  'Repeat',
  'Note',
];
const blankRows = 60;

/** The sheet of some profiles as CSV; empty rows where there are none. */
export function blankSheetCsv(profiles: readonly { readonly code: string; readonly unit: SheetUnit }[]): {
  readonly text: string;
  readonly rows: number;
} {
  const conditions = conditionLabels.map((label) => [label, ...heads.slice(1).map(() => '')]);
  const rows = profiles.flatMap(({ code, unit }) => {
    const { level, response, outputs } = sheetPlan(unit);
    return [...level, ...response, ...outputs].map(({ channel, step, hz, repeat }) => [
      unit.name,
      code,
      channel,
      String(step),
      String(hz),
      '',
      '',
      String(repeat),
      '',
    ]);
  });
  const filled = rows.length > 0 ? rows : Array.from({ length: blankRows }, () => heads.map(() => ''));
  const lines = [...conditions, heads.map(() => ''), heads, ...filled];
  return { text: lines.map((line) => `${line.map(csvCell).join(',')}\r\n`).join(''), rows: filled.length };
}
