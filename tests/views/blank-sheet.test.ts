/** The sheet to fill in for a profile of a unit: the rows of its file are those printed, and import as they are. */
import { describe, expect, test } from 'vitest';
import { blankSheets } from '../../src/views/blank-sheet.ts';
import { faultsOf, imported, linesOf } from '../import/sheet-of.ts';
import { demoAnswers } from './sample.ts';

const answers = await demoAnswers();
const sheets = blankSheets(answers);

describe.each(sheets)('$unit', ({ id, parts, count, csv }) => {
  const rows = csv.trimEnd().split('\r\n').slice(9);

  test('the printed rows are those of the file', () => {
    expect(rows.length).toBe(count);
    expect(parts.reduce((sum, part) => sum + part.rows.length, 0)).toBe(count);
    const { lowestStep = 0, highestStep = 0 } = answers.base.families.get(id)?.data.volume ?? {};
    const steps = new Set(parts[0]?.rows.map(({ label }) => Number(label)));
    expect(steps.size).toBe(highestStep - lowestStep + 1);
  });

  test('with a code in the first row and volts in each, it is imported whole', () => {
    const profile = answers.base.profilesOfFamily.get(id)?.[0];
    const filled = csv
      .replace(/^([^,\r\n]+,),(F|R)/m, `$1${profile?.data.code},$2`)
      .replace(/^(.+,(?:FL|FR|RL|RR),\d+,[\d.]+),,,/gm, '$1,1.25,0.1,');
    const found = imported(filled);
    expect(faultsOf(found)).toEqual([]);
    expect(found.questions).toEqual([]);
    expect(linesOf(found)).toEqual(
      rows.map((row) => {
        const [, , channel, step, hz, , , repeat] = row.split(',');
        return `${profile?.id} ${channel} ${step} ${hz} 1.25 0.1 ${repeat}`;
      }),
    );
  });
});
