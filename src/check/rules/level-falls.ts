import type { Base } from '../../base/index.ts';
import { cleanThdPercent, dbv, formatHz, formatNumber } from '../../measure/index.ts';
import { type Cell, median, type ProfileSheet, toleranceOf } from '../readings/cells.ts';
import { findingsInSheets } from '../readings/sheets.ts';
import { leastPlayed, unevennessDb } from '../readings/slip.ts';
import { jumpsOf, risesEvenly } from '../readings/slips-within-sheet.ts';
import { outputRule, type RuleFinding } from '../rule.ts';

export const levelFalls = outputRule<RuleFinding[]>({
  id: 'level-falls',
  title: 'The level rises with the volume step.',
  explanation:
    'Turned up, a unit plays louder, or just as loud once it clips. A reading that falls from one step to the next by more than the voltmeter can be off, or that stands out from the steps beside it by more than 1 dB while they rise evenly, was most likely read at another step, set on another profile, or written with a slipped decimal point. Steps so low that the meter shows its last digits, and what a supply sags by under clipping, are left alone.',
  severity: 'error',
  judgesReadings: true,
  examples: [
    {
      title: 'a decimal point slipped to the left',
      file: 'outputs/2026-02-loft/readings.csv',
      good: 'rt-5561,FL,17,1000,1.8782',
      bad: 'rt-5561,FL,17,1000,0.1878',
      foundAt: '0.1878',
    },
    {
      title: 'a reading far above the steps beside it',
      file: 'outputs/2025-05-shed/readings.csv',
      good: 'kn-2093,FL,22,1000,0.7452',
      bad: 'kn-2093,FL,22,1000,0.9452',
      foundAt: '0.9452',
    },
  ],
  follows: () => [],
  ofFamily: ({ base }, family) =>
    findingsInSheets(base, family, (sheet) =>
      sheet.series.flatMap((series) => seriesFindings(base, sheet, series)),
    ),
  conclude: (found) => found.flat(),
});

function seriesFindings(base: Base, sheet: ProfileSheet, all: readonly Cell[]): RuleFinding[] {
  const findings: RuleFinding[] = [];
  let series = [...all];
  // One row at a time: its neighbours are judged without it.
  for (let round = 0; round < mostFindings; round += 1) {
    const cell = fallen(sheet, series) ?? standingOut(sheet, series);
    if (!cell) break;
    findings.push(findingAt(base, sheet, series, cell));
    series = series.filter((one) => one !== cell);
  }
  return findings;
}

/** Of a series that is wrong throughout a few rows say enough. */
const mostFindings = 3;

/** The cell to blame for the first fall beyond the uncertainty. */
function fallen(sheet: ProfileSheet, series: readonly Cell[]): Cell | undefined {
  // Of so few it does not show which one is at fault.
  if (series.length < leastToBlame) return undefined;
  for (let at = 0; at + 1 < series.length; at += 1) {
    const [here, next] = [series[at], series[at + 1]];
    if (!here || !next || Math.max(here.volts, next.volts) < leastPlayed) continue;
    const isClean = (here.thdPercent ?? 0) <= cleanThdPercent;
    const most = 2 * toleranceOf(here, sheet, 'own') + (isClean ? 0 : mostSag);
    // Held against volts and not a ratio: where a few counts are most of a reading, its logarithm is no measure.
    if (here.volts - next.volts <= most * here.volts) continue;
    return blamed(series, at);
  }
  return undefined;
}

const leastToBlame = 4;

/** How far a supply may sag under clipping, relative: common practice, no source. */
const mostSag = 0.06;

/** Of the cells before and after a fall, the one without which the series is evener. */
function blamed(series: readonly Cell[], at: number): Cell | undefined {
  const around = series.slice(Math.max(0, at - 3), at + 5);
  const [here, next] = [series[at], series[at + 1]];
  if (!here || !next) return undefined;
  const without = (cell: Cell): number => {
    const rest = around.filter((one) => one !== cell);
    return unevennessDb([rest], new Set(rest));
  };
  return without(here) < without(next) ? here : next;
}

/** A cell that rises far more, or far less, than the steps beside it, and is made up for by the next. */
function standingOut(sheet: ProfileSheet, all: readonly Cell[]): Cell | undefined {
  const series = all.filter((cell) => (cell.thdPercent ?? 0) <= cleanThdPercent);
  if (series.length < leastSeries) return undefined;
  if (risesEvenly(series, leastJumpDb)) return undefined;
  const jumps = jumpsOf(series);
  for (let at = 1; at + 1 < series.length; at += 1) {
    const cell = series[at];
    const [into = 0, out = 0] = [jumps[at - 1], jumps[at]];
    if (!cell || Math.min(Math.abs(into), Math.abs(out)) < leastJumpDb || into * out > 0) continue;
    if (toleranceOf(cell, sheet, 'own') > 0.03) continue;
    const around = [...jumps.slice(Math.max(0, at - 4), at - 1), ...jumps.slice(at + 1, at + 4)];
    if (around.length < 3 || Math.max(...around.map(Math.abs)) > leastJumpDb / 2) continue;
    return cell;
  }
  return undefined;
}

const leastSeries = 7;
const leastJumpDb = 1;

function findingAt(base: Base, sheet: ProfileSheet, series: readonly Cell[], cell: Cell): RuleFinding {
  const table = base.readings.get(sheet.session.id);
  const at = series.indexOf(cell);
  const [before, after] = [series[at - 1], series[at + 1]];
  const expected = expectedVolts(series, at);
  const repeat = [...cell.readings].sort(
    (a, b) => Math.abs(Math.log(b.voltsRms / expected)) - Math.abs(Math.log(a.voltsRms / expected)),
  )[0];
  const other = before ?? after;
  if (!table || !repeat || !other?.readings[0]) throw new Error(`no readings of ${sheet.session.id}`);
  const beside = [before, after]
    .flatMap((one) => (one ? [`${one.volts} V at step ${one.step}`] : []))
    .join(' and ');
  const offDb = dbv(cell.volts / expected);
  const slipped = [10, 100].find((factor) => Math.abs(Math.abs(offDb) - dbv(factor)) < 1.5);
  const cause = slipped ? ' A slipped decimal point?' : '';
  return {
    rule: 'level-falls',
    severity: 'error',
    place: table.place(repeat.id, 'voltsRms'),
    message: `“${sheet.profile}”, ${cell.channel}, step ${cell.step}, ${formatHz(cell.hz)}: ${cell.volts} V does not fit in with ${beside}: about ${formatNumber(Math.abs(offDb), 1)}\u00a0dB too ${offDb > 0 ? 'much' : 'little'}.${cause}`,
    help: 'Compare the row with the original sheet: look for a slipped digit, a row of another step or profile.',
    related: [{ place: table.place(other.readings[0].id, 'voltsRms'), message: 'A step beside it.' }],
    claims: cell.readings.map(({ id }) => id),
  };
}

/** What the cells beside one let expect of it, volts. */
function expectedVolts(series: readonly Cell[], at: number): number {
  const [before, cell, after] = [series[at - 1], series[at], series[at + 1]];
  if (before && after && cell) {
    const along = (cell.step - before.step) / (after.step - before.step);
    return before.volts ** (1 - along) * after.volts ** along;
  }
  const near = median([before, after].flatMap((one) => (one ? [one.volts] : [])));
  return near ?? cell?.volts ?? Number.NaN;
}
