/** Slips of unit told by the sheet alone: by the steps, the frequencies and the outputs beside a reading. */
import { dbv } from '../../measure/index.ts';
import { type Cell, cellKey, legibleOf, median, type ProfileSheet, toleranceOf } from './cells.ts';
import { leastPlayed, type Slip, slipOf, unevennessDb } from './slip.ts';
import { inverseOf, type SlipKind, slipBetween, slipKinds } from './slip-kinds.ts';

/** What lies further off than this after a slip is undone does not fit the line, dB. */
const fitDb = 0.6;

/** Rows in a series of rising steps that leave its law by a slip and come back to it. */
export function slipsBySteps(sheet: ProfileSheet, confirmed: ReadonlySet<Cell>): Slip[] {
  return sheet.series.flatMap((series) => slipsInSeries(sheet, series, confirmed));
}

function slipsInSeries(sheet: ProfileSheet, all: readonly Cell[], confirmed: ReadonlySet<Cell>): Slip[] {
  const series = legibleOf(all, sheet, widestInSteps);
  if (series.length < leastSeries) return [];
  if (risesEvenly(series, leastJumpDb)) return [];
  const jumps = jumpsOf(series);
  const slips: Slip[] = [];
  for (let at = 0; at < jumps.length; at += 1) {
    if (Math.abs(jumps[at] ?? 0) <= leastJumpDb) continue;
    const found = runAfter(series, jumps, at);
    if (!found) continue;
    const cells = series.slice(at + 1, found.last + 1);
    at = found.last;
    if (!cells.some((cell) => confirmed.has(cell))) slips.push(slipOf(sheet, found.kind, cells, besideSteps));
  }
  return slips;
}

const leastSeries = 6;
const leastJumpDb = 2;
/** Two cells as coarse as this make 1.7 dB between them: less than {@link leastJumpDb}, so no jump by themselves. */
const widestInSteps = 0.1;
const besideSteps = 'what the steps beside it say';

/** Whether no jump of a series is above a bound, dB, by the widest that any of them could be: most series are even. */
export function risesEvenly(series: readonly Cell[], boundDb: number): boolean {
  let [least, most, widestStep] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0];
  for (let at = 0; at + 1 < series.length; at += 1) {
    const [here, next] = [series[at], series[at + 1]];
    if (!here || !next) continue;
    const increment = incrementDb(here, next);
    least = Math.min(least, increment);
    most = Math.max(most, increment);
    widestStep = Math.max(widestStep, next.step - here.step);
  }
  return (most - least) * widestStep <= boundDb;
}

/** How much a step rises on the way from one cell to the next, dB. */
function incrementDb(here: Cell, next: Cell): number {
  return dbv(next.volts / here.volts) / (next.step - here.step);
}

/** How far each step from one cell to the next rises beyond what those around it do, dB. */
export function jumpsOf(series: readonly Cell[]): number[] {
  const increments: number[] = [];
  for (let at = 0; at + 1 < series.length; at += 1) {
    const [here, next] = [series[at], series[at + 1]];
    if (here && next) increments.push(incrementDb(here, next));
  }
  return increments.map((increment, at) => {
    const around = [...increments.slice(Math.max(0, at - 3), at), ...increments.slice(at + 1, at + 4)];
    const [here, next] = [series[at], series[at + 1]];
    return (increment - (median(around) ?? increment)) * ((next?.step ?? 0) - (here?.step ?? 0));
  });
}

/** The run of cells after jump `at` that is one slip, and the index of its last cell. */
function runAfter(
  series: readonly Cell[],
  jumps: readonly number[],
  at: number,
): { kind: SlipKind; last: number } | undefined {
  const jump = jumps[at] ?? 0;
  const runs = slipKinds.flatMap((kind) => {
    const last = kind.factor === undefined ? decibelRun(series, at, kind) : factorRun(jumps, at, jump, kind);
    return last === undefined ? [] : [{ kind, last }];
  });
  // Of several that explain a row, the one that leaves the series evenest.
  const left = ({ kind, last }: { kind: SlipKind; last: number }): number =>
    unevennessDb([series], new Set(series.slice(at + 1, last + 1)), kind) +
    (kind.factor === undefined ? decibelFitDb : 0);
  return runs.length < 2 ? runs[0] : runs.reduce((best, one) => (left(one) < left(best) ? one : best));
}

/** A run that enters by a factor and leaves by it; a factor of a thousand may go on to the end. */
function factorRun(jumps: readonly number[], at: number, jump: number, kind: SlipKind): number | undefined {
  const sizeDb = dbv(kind.factor ?? 1);
  // The greater the slip, the less can it be mistaken: knees and last digits may blur its edges more.
  const edgeDb = Math.max(fitDb, Math.min(3, Math.abs(sizeDb) / 6));
  if (Math.abs(jump - sizeDb) > edgeDb) return undefined;
  for (let next = at + 1; next < jumps.length; next += 1) {
    const here = jumps[next] ?? 0;
    if (Math.abs(here + sizeDb) <= edgeDb) return next;
    if (Math.abs(here) > leastJumpDb) return undefined;
  }
  return Math.abs(sizeDb) > 50 ? jumps.length : undefined;
}

/** A run whose numbers carry the law on as decibels, and not as volts. */
function decibelRun(series: readonly Cell[], at: number, kind: SlipKind): number | undefined {
  const [before, here] = [series[at - 1], series[at]];
  if (!before || !here) return undefined;
  let increment = dbv(here.volts / before.volts) / (here.step - before.step);
  let [level, step] = [dbv(here.volts), here.step];
  let last: number | undefined;
  for (let next = at + 1; next < series.length; next += 1) {
    const cell = series[next];
    if (!cell) break;
    const meantDb = dbv(kind.meant(cell.volts));
    const expectedDb = level + increment * (cell.step - step);
    // Past the clean region a step rises less than those before, never by less than nothing.
    const fits = meantDb <= expectedDb + decibelFitDb && meantDb >= level - decibelFitDb;
    const isClose = Math.abs(meantDb - expectedDb) <= decibelFitDb;
    if (!fits || (last === undefined && !isClose)) break;
    if (Math.abs(dbv(cell.volts) - expectedDb) < 1) break;
    increment = (meantDb - level) / (cell.step - step);
    [level, step, last] = [meantDb, cell.step, next];
  }
  if (last === undefined) return undefined;
  // One row alone has to be followed by one that carries the law on in volts.
  const after = series[last + 1];
  const isCarriedOn =
    after !== undefined &&
    Math.abs(dbv(after.volts) - level - increment * (after.step - step)) <= 2 * decibelFitDb;
  return last > at + 1 || isCarriedOn ? last : undefined;
}

const decibelFitDb = 0.3;

/** Single readings off the smooth curve their frequencies make, by a slip that makes it smooth when undone. */
export function slipsByFrequency(sheet: ProfileSheet, confirmed: ReadonlySet<Cell>): Slip[] {
  return sheet.curves.flatMap((curve) => {
    const cells = legibleOf(curve, sheet);
    if (cells.length < leastCurve) return [];
    return cells.flatMap((cell, at): Slip[] => {
      const expected = onCurve(cells, at);
      if (expected === undefined || confirmed.has(cell)) return [];
      const kind = slipBetween(cell.volts, expected, () => 0.06);
      if (!kind || !isSmoothWith(cells, at, kind)) return [];
      const inverse = inverseOf(kind);
      const rest = cells.filter((one) => one.hz !== cell.hz);
      // The 1 kHz of a curve is read with the steps: if it fits there, the rest of the curve is off.
      return cell.hz === 1000 && inverse && fitsItsSteps(sheet, cell)
        ? [slipOf(sheet, inverse, rest, 'what the volume steps read at 1\u00a0kHz')]
        : [slipOf(sheet, kind, [cell], 'what the frequencies beside it say')];
    });
  });
}

const leastCurve = 8;

/** The volts at a place of a curve by the cubic through the two cells on each side of it; they must be evenly apart. */
function onCurve(
  curve: readonly Cell[],
  at: number,
  level = (cell: Cell): number => dbv(cell.volts),
): number | undefined {
  const [a, b, here, c, d] = [curve[at - 2], curve[at - 1], curve[at], curve[at + 1], curve[at + 2]];
  if (!a || !b || !here || !c || !d) return undefined;
  const [ab, bHere, hereC, cd] = [b.hz / a.hz, here.hz / b.hz, c.hz / here.hz, d.hz / c.hz];
  const widest = Math.max(ab, bHere, hereC, cd);
  if (widest > 1.5 || widest / Math.min(ab, bHere, hereC, cd) > 1.2) return undefined;
  return 10 ** ((4 * (level(b) + level(c)) - level(a) - level(d)) / 120);
}

/** Whether the cells around one fit the curve once its slip is undone. */
function isSmoothWith(curve: readonly Cell[], at: number, kind: SlipKind): boolean {
  const changed = curve[at];
  const level = (cell: Cell): number => dbv(cell === changed ? kind.meant(cell.volts) : cell.volts);
  return [at - 2, at - 1, at, at + 1, at + 2].every((place) => {
    const cell = curve[place];
    const expected = cell && onCurve(curve, place, level);
    return !cell || expected === undefined || Math.abs(level(cell) - dbv(expected)) <= fitDb;
  });
}

function fitsItsSteps(sheet: ProfileSheet, cell: Cell): boolean {
  const series = sheet.series.find((one) => one.includes(cell)) ?? [];
  const at = series.indexOf(cell);
  const jumps = jumpsOf(series);
  return [jumps[at - 1], jumps[at]].every((jump) => jump !== undefined && Math.abs(jump) < 1);
}

/** Outputs that are a slip off their partner at every step, or at one step only. */
export function slipsByOutput(sheet: ProfileSheet, confirmed: ReadonlySet<Cell>): Slip[] {
  return [
    ...(['FR', 'RR', 'RL'] as const).flatMap((channel) => slipsAtOneStep(sheet, channel, confirmed)),
    ...slipsOfWholeOutput(sheet, 'FR', 'FL', confirmed),
    ...slipsOfWholeOutput(sheet, 'RR', 'RL', confirmed),
  ];
}

interface Ratio {
  readonly cell: Cell;
  readonly other: Cell;
  readonly ratio: number;
  /** By the volts the first cell is taken for. */
  readonly toleranceAt: (volts: number) => number;
}

/** An output's clean volts over those of another, wherever both were read. */
function ratiosTo(sheet: ProfileSheet, channel: Cell['channel'], other: Cell['channel']): Ratio[] {
  const ratios: Ratio[] = [];
  for (const cell of sheet.ofChannel(channel)) {
    const beside = sheet.byKey.get(cellKey(other, cell.step, cell.hz));
    if (!beside || beside.hz !== cell.hz) continue;
    if (beside.volts === 0 || cell.volts === 0 || (beside.thdPercent ?? 0) > 1) continue;
    const toleranceAt = (volts: number): number =>
      toleranceOf(cell, sheet, 'own', volts) + toleranceOf(beside, sheet, 'own');
    ratios.push({ cell, other: beside, ratio: cell.volts / beside.volts, toleranceAt });
  }
  return ratios;
}

function slipsAtOneStep(sheet: ProfileSheet, channel: Cell['channel'], confirmed: ReadonlySet<Cell>): Slip[] {
  const ratios = ratiosTo(sheet, channel, 'FL').filter(
    ({ other }) => toleranceOf(other, sheet, 'own') < 0.06,
  );
  if (ratios.length < 3) return [];
  return ratios.flatMap((one): Slip[] => {
    const rest = ratios
      .filter((other) => other !== one && other.cell.hz === one.cell.hz)
      .map(({ ratio }) => ratio);
    const usual = median(rest);
    if (usual === undefined || rest.length < 2 || confirmed.has(one.cell)) return [];
    if (Math.max(...rest) / Math.min(...rest) > 1.1) return [];
    // A silent output reads the same noise at every step.
    if (ratios.some((other) => other !== one && other.cell.volts < leastPlayed)) return [];
    const kind = slipBetween(one.cell.volts, one.other.volts * usual, (volts) =>
      Math.max(0.05, one.toleranceAt(volts)),
    );
    return kind
      ? [slipOf(sheet, kind, [one.cell], 'what this output gives beside front left at other steps')]
      : [];
  });
}

/** Left and right are set alike (common practice, no source): all of one a slip off the other is a slip. */
function slipsOfWholeOutput(
  sheet: ProfileSheet,
  channel: Cell['channel'],
  partner: Cell['channel'],
  confirmed: ReadonlySet<Cell>,
): Slip[] {
  const ratios = ratiosTo(sheet, channel, partner).filter(
    ({ other, toleranceAt }) => toleranceAt(other.volts) < 0.05,
  );
  if (ratios.length < 2) return [];
  const kinds = ratios.map(({ cell, other, toleranceAt }) =>
    slipBetween(cell.volts, other.volts, (volts) => toleranceAt(volts) + likeOutputs),
  );
  const [kind] = kinds;
  if (!kind?.factor || kinds.some((one) => one !== kind)) return [];
  const inverse = inverseOf(kind);
  const isOther =
    kind.id === 'thousandth' ? ratios.every(({ cell }) => cell.volts >= leastPlayed) : kind.factor < 1;
  const blamed = isOther && inverse ? inverse : kind;
  const cells = ratios.map((one) => (isOther ? one.other : one.cell));
  if (cells.some((cell) => confirmed.has(cell))) return [];
  const all = sheet.cells.filter((cell) => cell.channel === (isOther ? partner : channel) && cell.volts > 0);
  return [slipOf(sheet, blamed, all, `what ${isOther ? channel : partner} reads`)];
}

/** How far left and right may be apart beyond what the voltmeter adds, relative. */
const likeOutputs = 0.03;
