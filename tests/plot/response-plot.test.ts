import { expect, test } from 'vitest';
import { exactCentre } from '../../src/measure/third-octave.ts';
import { frame } from '../../src/plot/frame.ts';
import { lineStyles, responsePlot } from '../../src/plot/response-plot.ts';

const frequencies = Array.from({ length: 31 }, (_, index) => exactCentre(index - 17));
const curve = (step: number, levelAt: (hz: number) => number) => ({
  step,
  points: frequencies.map((hz) => ({ hz, levelDb: levelAt(hz), uncertaintyDb: 0.1 })),
});
const flat = curve(20, () => 0);
const boosted = curve(8, (hz) => (hz < 100 ? 9 : 0));

test('0 dB is a straight line through the frame, decades are equal distances', () => {
  const plot = responsePlot({ curves: [flat] });
  const ys = [...(plot.curves[0]?.path ?? '').matchAll(/,([\d.]+)/g)].map((match) => Number(match[1]));
  expect(ys).toHaveLength(31);
  expect(new Set(ys)).toEqual(new Set([plot.zeroY]));
  const at = (label: string): number => plot.hzTicks.find((tick) => tick.label === label)?.at ?? 0;
  expect(at('125') - at('63')).toBeCloseTo(at('8k') - at('4k'), 0);
});

test('each curve has a dash of its own and a label at its end', () => {
  const curves = Array.from({ length: lineStyles }, (_, index) => curve(index + 1, () => -index));
  const plot = responsePlot({ curves });
  expect(new Set(plot.curves.map(({ style }) => style)).size).toBe(lineStyles);
  expect(plot.curves.map(({ label }) => label.text)).toEqual(curves.map(({ step }) => `step ${step}`));
  const ys = plot.curves.map(({ label }) => label.y).sort((a, b) => a - b);
  for (const [index, y] of ys.entries()) {
    const next = ys[index + 1];
    if (next !== undefined) expect(next - y).toBeGreaterThanOrEqual(13.9);
  }
});

test('the level axis holds the boost and never less than ±6 dB', () => {
  const labels = (curves: Parameters<typeof responsePlot>[0]['curves']) =>
    responsePlot({ curves }).levelTicks.map(({ label }) => label);
  expect(labels([flat])).toEqual(['−6', '−3', '0', '+3', '+6']);
  expect(labels([flat, boosted])).toContain('+9');
});

test('what falls below the floor is cut off at the frame', () => {
  const highPass = curve(10, (hz) => (hz < 200 ? -60 : 0));
  const [drawn] = responsePlot({ curves: [highPass] }).curves;
  const ys = [...(drawn?.path ?? '').matchAll(/,([\d.]+)/g)].map((match) => Number(match[1]));
  expect(Math.max(...ys)).toBe(frame.bottom);
});

test('the description tells the curves in words', () => {
  expect(responsePlot({ curves: [boosted] }).description).toMatch(
    /^Step 8: highest 9\.0 decibels at \d+ hertz, lowest 0\.0 decibels at \d+ hertz\.$/,
  );
});
