import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Characteristic,
  type CharacteristicName,
  characterise,
  exactCentre,
  type ProfileOutput,
} from '../../src/measure/index.ts';
import { type Row, run, session } from './bench.ts';

const unit = { ratedLoadOhms: 4, highestStep: 30 };

function value(output: ProfileOutput, name: CharacteristicName): Characteristic {
  const found = output.characteristics.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

/** 1 kHz at steps 1 to 30, 2 dB a step, 1 % THD first passed above step 25. */
const levels: Row[] = Array.from({ length: 30 }, (_, index) => {
  const step = index + 1;
  return ['FL', step, 1000, 0.01 * 10 ** (step / 10), step <= 25 ? 0.1 : 5 * (step - 25)];
});

/** Magnitude of a Butterworth high-pass of order n, dB: −10·lg(1 + (fc/f)^2n). */
function highPassDb(hz: number, cornerHz: number, order: number): number {
  return -10 * Math.log10(1 + (cornerHz / hz) ** (2 * order));
}

function responseRows(step: number, levelDb: (hz: number) => number): Row[] {
  const reference = 0.01 * 10 ** (step / 10);
  return Array.from({ length: 31 }, (_, index) => exactCentre(index - 17))
    .filter((hz) => hz !== 1000)
    .map((hz) => ['FL', step, hz, reference * 10 ** (levelDb(hz) / 20)]);
}

describe('highest clean step and clean volts', () => {
  test('by THD: the last step at 1 % or less (CTA-2006)', () => {
    const output = characterise('p', [run(levels)], unit);
    expect(value(output, 'highest-clean-step')).toMatchObject({ value: 25, bound: 'exact' });
    expect(value(output, 'clean-volts').value).toBeCloseTo(0.01 * 10 ** 2.5, 10);
    expect(value(output, 'clean-volts').readings).toEqual(['s:26']);
  });

  test('without THD: the last step less than 0.3 dB short of the law below (AES17)', () => {
    const limit = 0.01 * 10 ** 2.5;
    const rows = levels.map(
      ([channel, step, hz, volts]): Row => [channel, step, hz, Math.min(volts, limit * 1.05)],
    );
    expect(value(characterise('p', [run(rows)], unit), 'highest-clean-step').value).toBe(25);
  });

  test('noise at low steps is not taken for distortion', () => {
    const noisy = levels.map(
      ([channel, step, hz, volts, thd]): Row => [
        channel,
        step,
        hz,
        volts,
        Math.hypot(thd ?? 0, (0.0005 / volts) * 100),
      ],
    );
    expect(noisy[0]?.[4]).toBeGreaterThan(1);
    expect(value(characterise('p', [run(noisy)], unit), 'highest-clean-step')).toMatchObject({
      value: 25,
      expandedUncertainty: 0,
    });
  });

  test('a step whose THD lies at the limit within its error is in the range of possible ones', () => {
    const near = levels.map(
      ([channel, step, hz, volts, thd]): Row => [
        channel,
        step,
        hz,
        volts,
        step === 25 ? 0.99 : (thd ?? null),
      ],
    );
    expect(value(characterise('p', [run(near)], unit), 'highest-clean-step')).toMatchObject({
      value: 25,
      expandedUncertainty: 1,
    });
  });

  test('clean as far as was measured, short of the last step: at least', () => {
    const output = characterise('p', [run(levels.slice(0, 20))], unit);
    expect(value(output, 'highest-clean-step')).toMatchObject({ value: 20, bound: 'at-least' });
  });

  test('a session that stops before the limit, or reads few steps, says nothing against those that go further', () => {
    const at = (...steps: readonly number[]): Row[] => levels.filter(([, step]) => steps.includes(step));
    const alone = characterise('p', [run(levels, {}, 'a')], unit);
    for (const few of [at(10, 12, 14, 16), at(12, 30), at(24, 25), at(26, 30)]) {
      const output = characterise('p', [run(levels, {}, 'a'), run(few, {}, 'b')], unit);
      expect(value(output, 'highest-clean-step')).toMatchObject({
        value: 25,
        expandedUncertainty: 0,
        bound: 'exact',
      });
      expect(value(output, 'clean-volts').value).toBeCloseTo(value(alone, 'clean-volts').value, 10);
    }
    // Neither reached the limit: both say “at least”, and the one that went further says more.
    const both = characterise('p', [run(at(1, 10), {}, 'a'), run(at(1, 20), {}, 'b')], unit);
    expect(value(both, 'highest-clean-step')).toMatchObject({ value: 20, bound: 'at-least' });
    // One found a step unclean that the other calls clean: the lower counts, and the range covers the other.
    const early = levels.map(
      ([channel, step, hz, volts, thd]): Row => [channel, step, hz, volts, step === 25 ? 3 : (thd ?? null)],
    );
    const apart = characterise('p', [run(levels, {}, 'a'), run(early, {}, 'b')], unit);
    expect(value(apart, 'highest-clean-step')).toMatchObject({ value: 24, expandedUncertainty: 1 });
  });

  test('one step only: nothing is made up, and what is missing is said', () => {
    const output = characterise('p', [run(levels.slice(0, 1))], unit);
    expect(output.characteristics).toEqual([]);
    expect(output.missing[0]).toEqual({
      name: 'clean-volts',
      reason: 'needs readings of front left at 1 kHz from two or more volume steps, with THD',
    });
  });
});

describe('response', () => {
  // Butterworth magnitudes, standard filter theory (derived).
  test.each([
    [2, 80],
    [2, 125],
    [4, 63],
  ])(
    'a Butterworth high-pass of order %s at %s Hz is read back within its uncertainty',
    (order, cornerHz) => {
      const rows = [
        ...levels,
        ...responseRows(20, (hz) => highPassDb(hz, cornerHz, order) - highPassDb(1000, cornerHz, order)),
      ];
      const corner = value(characterise('p', [run(rows)], unit), 'lower-corner');
      expect(Math.abs(corner.value - cornerHz)).toBeLessThanOrEqual(corner.expandedUncertainty);
      expect(corner.value).toBeCloseTo(cornerHz, -0.7);
    },
  );

  test('flat to the end: the corner is a bound', () => {
    const output = characterise('p', [run([...levels, ...responseRows(20, () => 0)])], unit);
    expect(value(output, 'lower-corner')).toMatchObject({ bound: 'at-most' });
    expect(value(output, 'lower-corner').value).toBeCloseTo(19.95, 2);
    expect(value(output, 'upper-corner')).toMatchObject({ bound: 'at-least' });
  });

  test('a boost at 63 Hz is found where it is, with the step it was read at', () => {
    const boost = (hz: number): number => 6 / (1 + (Math.log2(hz / 63.0957) * 2) ** 2);
    const output = characterise('p', [run([...levels, ...responseRows(12, boost)])], unit);
    expect(value(output, 'bass-boost').value).toBeCloseTo(6 - boost(1000) + boost(1000), 10);
    expect(value(output, 'bass-boost').conditions.step).toBe(12);
    expect(value(output, 'bass-boost').conditions.hz).toBeCloseTo(exactCentre(-12), 1);
  });

  test('without a 1 kHz reading at that step there is no response', () => {
    const output = characterise(
      'p',
      [run([...levels.filter(([, step]) => step !== 12), ...responseRows(12, () => 3)])],
      unit,
    );
    expect(output.characteristics.some((one) => one.name === 'bass-boost')).toBe(false);
    expect(output.missing.map((one) => one.name)).toContain('bass-boost');
  });
});

describe('rear', () => {
  test('relative to the front at the same step', () => {
    const rear = levels.map(([, step, hz, volts]): Row => ['RL', step, hz, volts / 2]);
    const output = characterise('p', [run([...levels, ...rear])], unit);
    expect(value(output, 'rear-to-front').value).toBeCloseTo(20 * Math.log10(0.5), 10);
    expect(output.mutedChannels).toEqual([]);
  });
  test.each([[0.0008], [0]])('noise of %s V while the front plays is silence: at most −40 dB', (volts) => {
    const output = characterise(
      'p',
      [run([...levels, ['RL', 25, 1000, volts], ['RL', 20, 1000, volts]])],
      unit,
    );
    expect(value(output, 'rear-to-front')).toMatchObject({ value: -40, bound: 'at-most' });
    expect(output.mutedChannels).toEqual(['RL']);
  });
});

describe('uncertainty', () => {
  test('ratios of readings by one voltmeter do not carry its gain error (GUM 5.2, correlated inputs)', () => {
    const rows = [...levels, ...responseRows(20, () => 3)];
    const exact = characterise('p', [run(rows)], unit);
    const instrument = {
      ...session.instrument,
      accuracy: [{ fromHz: 10, toHz: 100_000, ofReadingPercent: 5, counts: 2 }],
    };
    const coarse = characterise('p', [run(rows, { instrument })], unit);
    const [fine, wide] = [value(exact, 'clean-volts'), value(coarse, 'clean-volts')];
    expect(wide.expandedUncertainty).toBeGreaterThan(5 * fine.expandedUncertainty);
    expect(value(coarse, 'bass-boost').expandedUncertainty).toBeCloseTo(
      value(exact, 'bass-boost').expandedUncertainty,
      12,
    );
  });

  test('two benches that agree give their weighted mean, tighter than either', () => {
    const instrument = {
      ...session.instrument,
      accuracy: [{ fromHz: 10, toHz: 100_000, ofReadingPercent: 1, counts: 2 }],
    };
    const a = run(levels, {}, 'a');
    const b = run(
      levels.map(([channel, step, hz, volts, thd]): Row => [channel, step, hz, volts * 1.005, thd ?? null]),
      { instrument, bench: 'other' },
      'b',
    );
    const one = value(characterise('p', [a], unit), 'clean-volts');
    const both = value(characterise('p', [a, b], unit), 'clean-volts');
    expect(both.value).toBeGreaterThan(one.value);
    expect(both.value).toBeLessThan(one.value * 1.0025);
    expect(both.expandedUncertainty).toBeLessThan(one.expandedUncertainty);
    expect(both.readings).toEqual(['a:26', 'b:26']);
  });

  test('one voltmeter twice does not average its gain error away (GUM 5.2, r = 1)', () => {
    const instrument = {
      ...session.instrument,
      accuracy: [{ fromHz: 10, toHz: 100_000, ofReadingPercent: 0.5, counts: 2 }],
    };
    const a = run(levels, {}, 'a');
    const b = run(
      levels.map(([channel, step, hz, volts, thd]): Row => [channel, step, hz, volts * 1.005, thd ?? null]),
      { instrument },
      'b',
    );
    const one = value(characterise('p', [a], unit), 'clean-volts');
    const both = value(characterise('p', [a, b], unit), 'clean-volts');
    const gain = (of: Characteristic): number =>
      of.budget.find((component) => component.name === 'voltmeter gain')?.standardUncertainty ?? 0;
    expect(gain(both) / both.value).toBeCloseTo(gain(one) / one.value, 12);
    expect(gain(one)).toBeGreaterThan(0);
  });

  test('sessions under other conditions are not mixed in, but stand beside', () => {
    const a = run(levels, {}, 'a');
    const b = run(
      levels.map(([channel, step, hz, volts, thd]): Row => [channel, step, hz, volts * 0.9, thd ?? null]),
      { load: { ohms: 2, tolerancePercent: 1 } },
      'b',
    );
    const output = characterise('p', [a, b], unit);
    expect(value(output, 'clean-volts').readings).toEqual(['a:26']);
    expect(output.others.find((one) => one.name === 'clean-volts')).toMatchObject({
      readings: ['b:26'],
      conditions: { loadOhms: 2 },
    });
  });

  test('a session at another signal level is brought over in the clean region only, and that is said', () => {
    const a = run(levels, {}, 'a');
    const quiet = levels.map(
      ([channel, step, hz, volts, thd]): Row => [
        channel,
        step,
        hz,
        Math.min(volts, 3.2) * 10 ** (-6 / 20),
        thd ?? null,
      ],
    );
    const b = run(quiet, { bench: 'other', signal: { ...session.signal, levelDbfs: -6 } }, 'b');
    const output = characterise('p', [a, b], unit);
    expect(output.normalised).toEqual([{ session: 'b', fromDbfs: -6 }]);
    const clean = value(output, 'clean-volts');
    expect(clean.readings).toEqual(['a:26', 'b:26']);
    expect(clean.value).toBeCloseTo(0.01 * 10 ** 2.5, 6);
    // Above the clean step the two differ, and only the session's own level counts.
    expect(output.levelByStep.find(({ step }) => step === 28)?.readings).toEqual(['a:29']);
    expect(value(output, 'highest-clean-step').readings).toEqual(['a:26', 'a:27']);
  });

  test('a frequency the voltmeter is not specified for gives no value', () => {
    const instrument = {
      ...session.instrument,
      accuracy: [{ fromHz: 500, toHz: 2000, ofReadingPercent: 0.5, counts: 2 }],
    };
    const output = characterise('p', [run([...levels, ...responseRows(20, () => 3)], { instrument })], unit);
    expect(output.missing.map((one) => one.name)).toContain('bass-boost');
  });
});

describe('properties (fast-check)', () => {
  const rows = [
    ...levels,
    ...responseRows(20, (hz) => highPassDb(hz, 80, 2)),
    ...levels.map(([, step, hz, volts]): Row => ['RL', step, hz, volts / 2]),
  ];

  test('the order of readings changes nothing but which is named first', () => {
    const sorted = (output: ProfileOutput) =>
      output.characteristics.map((one) => ({ ...one, readings: [...one.readings].sort() }));
    const inOrder = run(rows);
    const expected = sorted(characterise('p', [inOrder], unit));
    fc.assert(
      fc.property(
        fc.shuffledSubarray([...inOrder.readings], { minLength: inOrder.readings.length }),
        (readings) => {
          expect(sorted(characterise('p', [{ ...inOrder, readings }], unit))).toEqual(expected);
        },
      ),
      { numRuns: 20, seed: 20260314 },
    );
  });

  test('scaling all volts scales clean volts and leaves every ratio and frequency as it is', () => {
    const counts = (resolutionVolts: number) => ({ ...session.instrument, resolutionVolts });
    const plain = characterise('p', [run(rows)], unit);
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 2, noNaN: true }), (factor) => {
        const scaled = run(
          rows.map(
            ([channel, step, hz, volts, thd]): Row => [channel, step, hz, volts * factor, thd ?? null],
          ),
          { instrument: counts(session.instrument.resolutionVolts * factor) },
        );
        const output = characterise('p', [scaled], unit);
        for (const one of plain.characteristics) {
          const same = value(output, one.name);
          const expected = one.name === 'clean-volts' ? factor : 1;
          expect(same.value).toBeCloseTo(one.value * expected, 9);
          expect(same.expandedUncertainty).toBeCloseTo(one.expandedUncertainty * expected, 9);
        }
      }),
      { numRuns: 20, seed: 20260314 },
    );
  });
});
