import { expect, test } from 'vitest';
import { frame } from '../../src/plot/frame.ts';
import { type LevelPlotData, levelPlot } from '../../src/plot/level-plot.ts';

/** 3 dB a step from 0.1 V, clean up to step 8. */
const data: LevelPlotData = {
  lowestStep: 0,
  highestStep: 12,
  points: Array.from({ length: 13 }, (_, step) => ({
    step,
    volts: 0.1 * 10 ** ((3 * step) / 20),
    uncertaintyVolts: 0.01 * 0.1 * 10 ** ((3 * step) / 20),
    clean: step <= 8,
  })),
  clean: { step: 8, volts: 1.585, label: '1.585 V ± 0.016 V', reached: true },
};

test('equal decibels are equal distances, upwards', () => {
  const { dots } = levelPlot(data);
  expect(dots).toHaveLength(13);
  const rises = dots.slice(1).map((dot, index) => (dots[index]?.y ?? 0) - dot.y);
  for (const rise of rises) expect(rise).toBeCloseTo(rises[0] ?? 0, 0);
  expect(rises[0]).toBeGreaterThan(0);
});

test('everything lies in the frame, steps from its left edge to its right', () => {
  const { dots, voltTicks, stepTicks } = levelPlot(data);
  for (const { x, y } of dots) {
    expect(x).toBeGreaterThanOrEqual(frame.left);
    expect(x).toBeLessThanOrEqual(frame.right);
    expect(y).toBeGreaterThanOrEqual(frame.top);
    expect(y).toBeLessThanOrEqual(frame.bottom);
  }
  expect(dots[0]?.x).toBe(frame.left);
  expect(dots.at(-1)?.x).toBe(frame.right);
  expect(voltTicks[0]?.at).toBe(frame.bottom);
  expect(stepTicks.at(-1)?.label).toBe('12');
});

test('the clip point is marked at its step and level, with its words', () => {
  const { clean, dots, description } = levelPlot(data);
  expect(clean?.x).toBe(dots[8]?.x);
  expect(clean?.y).toBeCloseTo(dots[8]?.y ?? 0, 0);
  expect(clean?.label).toBe('clean to 8');
  expect(description).toBe(
    'From 0.10 volts at step 0 to 6.31 volts at step 12. Clean up to step 8, at 1.585 V ± 0.016 V.',
  );
});

test('where it never clipped there is no clip point', () => {
  const clean = { step: 12, volts: 6.31, label: '6.31 V ± 0.06 V', reached: false };
  const plot = levelPlot({ ...data, clean });
  expect(plot.clean?.reached).toBe(false);
  expect(plot.description).toContain('Clean at every step measured.');
});

test('a muted lowest step is said to be silent and does not stretch the axis', () => {
  const [first, ...rest] = data.points;
  const muted = {
    ...data,
    points: [{ step: 0, volts: 0.001, uncertaintyVolts: 0.001, clean: true }, ...rest],
  };
  expect(first).toBeDefined();
  const plot = levelPlot(muted);
  expect(plot.silent).toEqual([0]);
  expect(plot.voltTicks[0]?.label).toBe('0.1');
  expect(levelPlot(data).silent).toEqual([]);
});
