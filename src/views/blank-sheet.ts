/** A sheet to fill in at the bench for one profile of a unit: for paper, and as CSV that is imported as it is. */
import type { Channel } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { blankSheetCsv, type SheetLine, sheetPlan } from '../import/index.ts';
import { nominalOf } from '../measure/index.ts';
import { phrase } from '../words/index.ts';
import { type CautionText, cautionTexts } from './cautions.ts';
import { benchCautions } from './coverage/bench-sheet.ts';
import { blankSheetFile, blankSheetPath, unitPath } from './paths.ts';

/** A table of readings that differ in one thing. */
export interface BlankPart {
  readonly title: string;
  /** What its rows differ in: “Step”. */
  readonly differs: string;
  readonly rows: readonly { readonly label: string; readonly repeat: number | undefined }[];
}

export interface BlankSheetView {
  readonly id: string;
  readonly unit: string;
  readonly unitPath: string;
  readonly path: string;
  readonly file: string;
  readonly load: string;
  readonly parts: readonly BlankPart[];
  readonly count: number;
  readonly cautions: readonly CautionText[];
  readonly csv: string;
}

/** One sheet for each unit. */
export function blankSheets({ base }: Answers): BlankSheetView[] {
  return [...base.families.values()].map(({ id, data }) => {
    const { channels, ratedLoadOhms } = data.output;
    const unit = { name: data.name, channels, ...data.volume };
    const { level, response, outputs } = sheetPlan(unit);
    const front = channels[0] ?? 'FL';
    const middle = response[0]?.step ?? data.volume.lowestStep;
    const { text, rows } = blankSheetCsv([{ code: '', unit }]);
    return {
      id,
      unit: data.name,
      unitPath: unitPath(id),
      path: blankSheetPath(id),
      file: blankSheetFile(id),
      load: `${ratedLoadOhms}\u00a0Ω`,
      parts: [
        part(`${front}, 1 kHz`, phrase('Step'), level, ({ step }) => String(step)),
        part(`${front}, ${phrase('step {step}', { step: middle })}`, 'Hz', response, ({ hz }) =>
          String(nominalOf(hz) ?? hz),
        ),
        part(
          `1 kHz, ${phrase('step {step}', { step: middle })}`,
          phrase('Output'),
          outputs,
          ({ channel }: { channel: Channel }) => channel,
        ),
      ].filter(({ rows: own }) => own.length > 0),
      count: rows,
      cautions: cautionTexts([
        ...new Set([...benchCautions, ...data.cautions.filter((one) => one === 'fuse')]),
      ]),
      csv: text,
    };
  });
}

function part(
  title: string,
  differs: string,
  lines: readonly SheetLine[],
  labelOf: (line: SheetLine) => string,
): BlankPart {
  const labels = lines.map(labelOf);
  return {
    title,
    differs,
    rows: lines.map((line, at) => {
      const label = labels[at] ?? '';
      return { label, repeat: labels.filter((one) => one === label).length > 1 ? line.repeat : undefined };
    }),
  };
}
