/**
 * The clip finder held against the ideal symmetric hard clip of a sine: THD_F is 0.1 % at 0.03668 dB of
 * overdrive, 1 % at 0.2512607 dB, 3 % at 0.66568 dB, 10 % at 2.1731413 dB (derived; recomputed with scipy).
 * The unit here is clipped sample by sample, apart from the formulas of the program.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { highestCleanStep } from '../../src/measure/clean-step.ts';
import { characterise, pointsOf, type Run } from '../../src/measure/index.ts';
import { type Row, run, session } from '../measure/bench.ts';
import { value } from '../measure/ideal-unit.ts';

const samples = 4096;
/** The overdrive at which THD is 1 % (CTA-2006: clean up to there), dB: from the oracle, not from the program. */
const limitOverdriveDb = 0.2512607;

/** A sine driven `overdriveDb` over a rail of 10 V: what a true-rms meter and a distortion analyser read. */
function clipped(overdriveDb: number): { voltsRms: number; thdPercent: number } {
  const amplitude = 10 * 10 ** (overdriveDb / 20);
  let [square, inPhase] = [0, 0];
  for (let n = 0; n < samples; n += 1) {
    const sine = Math.sin((2 * Math.PI * (n + 0.5)) / samples);
    const volts = Math.max(-10, Math.min(10, amplitude * sine));
    square += volts ** 2 / samples;
    inPhase += (2 * volts * sine) / samples;
  }
  const harmonics = Math.max(0, square - inPhase ** 2 / 2);
  return { voltsRms: Math.sqrt(square), thdPercent: 100 * Math.sqrt(harmonics / (inPhase ** 2 / 2)) };
}

/** How much less rms than an unclipped sine, dB. */
function compressionDb(overdriveDb: number): number {
  return overdriveDb + 20 * Math.log10(10 / Math.SQRT2) - 20 * Math.log10(clipped(overdriveDb).voltsRms);
}

const steps = 40;
const unit = { ratedLoadOhms: 4, highestStep: steps };

/** Steps 1 to 40 of `stepDb` each; step 20 is `atTwentyDb` over the onset. */
function rowsOf(stepDb: number, atTwentyDb: number, rated = true): Row[] {
  return Array.from({ length: steps }, (_, index) => {
    const step = index + 1;
    const { voltsRms, thdPercent } = clipped(atTwentyDb + (step - 20) * stepDb);
    return ['FL', step, 1000, voltsRms, rated ? thdPercent : null];
  });
}

/** Nothing but the drive itself uncertain, by `driveDb`; an analyser without error. */
function runOf(rows: readonly Row[], driveDb = 0): Run {
  const { thdOfReadingPercent: _, ...instrument } = session.instrument;
  return run(rows, {
    instrument,
    signal: { ...session.signal, levelToleranceDb: driveDb },
    supply: { volts: 14.4, toleranceVolts: 0 },
  });
}

/** The highest step whose overdrive is at most `mostDb`, by the step law alone. */
function lastStepWithin(mostDb: number, stepDb: number, atTwentyDb: number): number {
  return Math.min(steps, Math.floor((mostDb - atTwentyDb) / stepDb + 20));
}

test('the sampled unit is the ideal clip', () => {
  expect(clipped(limitOverdriveDb).thdPercent).toBeCloseTo(1, 3);
  expect(clipped(2.1731413).thdPercent).toBeCloseTo(10, 3);
});

describe('highest clean step by THD', () => {
  test.each([
    ['a thousandth of a decibel below 1 % THD', limitOverdriveDb - 0.001, 20],
    ['a thousandth of a decibel above it', limitOverdriveDb + 0.001, 19],
    ['at 0.1 % THD', 0.03668, 20],
    ['at 3 % THD', 0.66568, 19],
    ['just touching the rail', 0, 20],
  ])('step 20 %s', (_, overdriveDb, expected) => {
    const conditions = runOf(rowsOf(1.5, overdriveDb));
    expect(highestCleanStep(pointsOf(conditions))?.step).toBe(expected);
    const step = value(characterise('p', [conditions], unit), 'highest-clean-step');
    expect(step).toMatchObject({ value: expected, expandedUncertainty: 0, bound: 'exact' });
    // The readings that decide it: the last clean one and the first that is not, on lines 2 up.
    expect(step.readings).toEqual([`s:${expected + 1}`, `s:${expected + 2}`]);
  });

  test('for any step size and any place of the rail it is the step the oracle says', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        fc.double({ min: -8, max: 1.5, noNaN: true }),
        (stepDb, atTwentyDb) => {
          const expected = lastStepWithin(limitOverdriveDb, stepDb, atTwentyDb);
          // The oracle is printed to seven digits; no tie is decided by the eighth.
          fc.pre(
            [expected, expected + 1].every(
              (step) => Math.abs(atTwentyDb + (step - 20) * stepDb - limitOverdriveDb) > 1e-5,
            ),
          );
          const clean = highestCleanStep(pointsOf(runOf(rowsOf(stepDb, atTwentyDb))));
          expect(clean).toMatchObject({ step: expected, lowest: expected, highest: expected });
          expect(clean?.uncleanAt === Number.POSITIVE_INFINITY).toBe(expected === steps);
        },
      ),
      { numRuns: 100, seed: 20260314 },
    );
  });

  test('a drive uncertain by 0.1 dB moves the oracle’s limit by as much: the range of possible steps', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.6, max: 0.4, noNaN: true }), (atTwentyDb) => {
        const stepDb = 0.07;
        const last = (shiftDb: number): number =>
          lastStepWithin(limitOverdriveDb + shiftDb, stepDb, atTwentyDb);
        // No ties, neither at the limit nor at its ends.
        const place = (shiftDb: number): number => (limitOverdriveDb + shiftDb - atTwentyDb) / stepDb;
        fc.pre([-0.1, 0, 0.1].every((shift) => Math.abs(place(shift) - Math.round(place(shift))) > 1e-3));
        expect(highestCleanStep(pointsOf(runOf(rowsOf(stepDb, atTwentyDb), 0.1)))).toMatchObject({
          lowest: last(-0.1),
          step: last(0),
          highest: last(0.1),
        });
      }),
      { numRuns: 40, seed: 20260314 },
    );
  });

  test('an analyser off by 5 % moves the limit to the THD that reads 1 % then: the range of possible steps', () => {
    const rows = rowsOf(0.005, 0.2);
    const conditions = run(rows, {
      instrument: { ...session.instrument, thdOfReadingPercent: 5 },
      signal: { ...session.signal, levelToleranceDb: 0 },
      supply: { volts: 14.4, toleranceVolts: 0 },
    });
    const last = (mostPercent: number): number =>
      rows.findLast(([, , , , thdPercent]) => (thdPercent ?? 100) <= mostPercent)?.[1] ?? 0;
    expect(last(0.95)).toBeLessThan(last(1) - 1);
    expect(highestCleanStep(pointsOf(conditions))).toMatchObject({
      lowest: last(0.95),
      step: last(1),
      highest: last(1.05),
    });
  });

  test('noise at quiet steps and a steady 0.3 % below the rail make neither it nor its range another', () => {
    const noisy = rowsOf(2, 0.1).map(
      ([channel, step, hz, volts, thd]): Row => [
        channel,
        step,
        hz,
        volts,
        Math.hypot(thd ?? 0, 0.3, step < 18 ? (0.005 / volts) * 100 : 0),
      ],
    );
    expect(noisy[0]?.[4]).toBeGreaterThan(5);
    // Drive and rail known to 0.5 dB, more than lies between the onset and 1 % THD.
    expect(highestCleanStep(pointsOf(runOf(noisy, 0.5)))).toMatchObject({
      step: 20,
      lowest: 19,
      highest: 20,
    });
  });

  test('clean volts are those of the last clean step', () => {
    const volts = value(characterise('p', [runOf(rowsOf(2, 0.2))], unit), 'clean-volts');
    expect(volts.conditions.step).toBe(20);
    expect(volts.value).toBeCloseTo(clipped(0.2).voltsRms, 12);
  });
});

describe('without THD, by 0.3 dB of compression (AES17)', () => {
  // The overdrive at which the ideal clip compresses by 0.3 dB, by halving the sampled one.
  let [low, high] = [0, 6];
  for (let halving = 0; halving < 40; halving += 1) {
    const middle = (low + high) / 2;
    if (compressionDb(middle) < 0.3) low = middle;
    else high = middle;
  }
  const limitDb = low;

  test('0.3 dB of compression lies between 3 % and 10 % THD', () => {
    expect(compressionDb(limitDb)).toBeCloseTo(0.3, 6);
    expect(limitDb).toBeGreaterThan(0.66568);
    expect(limitDb).toBeLessThan(2.1731413);
  });

  test.each([
    [1, 0.02],
    [1.5, 0.02],
    [2, 0.02],
    [3, 0.02],
  ])('steps of %s dB: clean just below the limit, not clean just above it', (stepDb, besideDb) => {
    const at = (overdriveDb: number): number | undefined =>
      highestCleanStep(pointsOf(runOf(rowsOf(stepDb, overdriveDb, false))))?.step;
    expect(at(limitDb - besideDb)).toBe(20);
    expect(at(limitDb + besideDb)).toBe(19);
  });

  test.each([1, 1.5, 2, 3])(
    'limiter onset, steps of %s dB: the first step more than 0.3 dB short',
    (stepDb) => {
      // Step 18 is at most 0.1 dB over the onset, so the law it is judged by is that of a clean unit.
      const at = (overdriveDb: number) =>
        value(characterise('p', [runOf(rowsOf(stepDb, overdriveDb))], unit), 'limiter-onset');
      expect(at(limitDb + 0.05).value).toBe(20);
      expect(at(limitDb - 0.05).value).toBe(21);
      expect(at(limitDb + 0.05).bound).toBe('exact');
    },
  );
});

test('a unit that is never driven to its rail: at least as far as was read, by clean step and by onset', () => {
  const rows = rowsOf(1, -30).slice(0, 30);
  const output = characterise('p', [runOf(rows)], unit);
  expect(value(output, 'highest-clean-step')).toMatchObject({ value: 30, bound: 'at-least' });
  expect(value(output, 'limiter-onset')).toMatchObject({ value: 30, bound: 'at-least' });
});

test('a boost of 6 dB reaches the rail 6 dB sooner: the highest step clean throughout', () => {
  for (const atTwentyDb of [-0.5, 0, 0.2]) {
    const boost: Row[] = [10, 14].map((step) => {
      const { voltsRms } = clipped(atTwentyDb + (step - 20) * 2 + 6);
      return ['FL', step, 63.0957, voltsRms];
    });
    const output = characterise('p', [runOf([...rowsOf(2, atTwentyDb), ...boost])], unit);
    // Overdrive of the boosted band at a step, at most what makes 1 % THD.
    const expected = lastStepWithin(limitOverdriveDb - 6, 2, atTwentyDb);
    expect(value(output, 'boosted-clean-step').value).toBe(expected);
  }
});
