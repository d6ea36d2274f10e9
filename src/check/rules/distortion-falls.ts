import type { Base } from '../../base/index.ts';
import { formatHz } from '../../measure/index.ts';
import { type Cell, type ProfileSheet, toleranceOf } from '../readings/cells.ts';
import { findingsInSheets } from '../readings/sheets.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const distortionFalls = outputRule<RuleFinding[]>({
  id: 'distortion-falls',
  title: 'Past the clean region distortion does not fall as the volume rises.',
  explanation:
    'Once an output clips, every further step clips it harder, and its distortion rises. A THD reading of less than half of what the step below and the step above read, both of them clipping, was most likely written with a slipped decimal point. Below the clip point distortion may do as it likes: there it is noise.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a decimal point slipped in a THD reading',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,30,1000,2.3181,7.2,1',
      bad: 'kn-2093,FL,30,1000,2.3181,0.72,1',
      foundAt: '0.72',
    },
    {
      title: 'two digits of a THD reading exchanged',
      file: 'outputs/2026-02-loft/readings.csv',
      good: 'rt-5561,FL,28,1000,7.2023,15.2',
      bad: 'rt-5561,FL,28,1000,7.2023,5.12',
      foundAt: '5.12',
    },
  ],
  follows: () => [],
  ofFamily: ({ base }, family) =>
    findingsInSheets(base, family, (sheet) =>
      sheet.series.flatMap((series) => seriesFindings(base, sheet, series)),
    ),
  conclude: (found) => found.flat(),
});

/** THD above this is clipping beyond doubt, per cent. */
const clippingPercent = 2;

function seriesFindings(base: Base, sheet: ProfileSheet, series: readonly Cell[]): RuleFinding[] {
  const rated = series.filter((cell) => cell.thdPercent !== null);
  return rated.flatMap((cell, at): RuleFinding[] => {
    const [below, above] = [rated[at - 1], rated[at + 1]];
    const [before, own, after] = [below?.thdPercent ?? 0, cell.thdPercent ?? 0, above?.thdPercent];
    if (!below || before < clippingPercent || own > before / 2) return [];
    // At the top of the series nothing follows; within it the step above has to clip as hard again.
    if (typeof after === 'number' && after < before) return [];
    // A step that is quieter too has another fault.
    if (cell.volts < below.volts * (1 - 2 * toleranceOf(cell, sheet, 'own'))) return [];
    const table = base.readings.get(sheet.session.id);
    const reading = cell.readings.find((one) => one.thdPercent === own) ?? cell.readings[0];
    const [its] = below.readings;
    if (!table || !reading || !its) return [];
    return [
      {
        rule: 'distortion-falls',
        severity: 'error',
        place: table.place(reading.id, 'thdPercent'),
        message: `“${sheet.profile}”, ${cell.channel}, step ${cell.step}, ${formatHz(cell.hz)}: THD of ${own} %, although step ${below.step} clips already with ${before} %${typeof after === 'number' ? ` and step ${above?.step} with ${after} %` : ''}.`,
        help: 'Compare the row with the original sheet: look for a slipped decimal point.',
        related: [{ place: table.place(its.id, 'thdPercent'), message: 'The step below.' }],
        claims: cell.readings.map(({ id }) => id),
      },
    ];
  });
}
