import fc from 'fast-check';
import { expect, test } from 'vitest';
import { spread } from '../../src/plot/label-places.ts';

test('labels with room stay where they are', () => {
  expect(spread([30, 100, 60], 14, 0, 200)).toEqual([30, 100, 60]);
});

test('labels at one place are moved apart, in order, inside the frame', () => {
  expect(spread([100, 100, 100], 14, 0, 120)).toEqual([92, 106, 120]);
});

test('whatever is wanted, neighbours are a gap apart and inside, or evenly spread where there is no room', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -50, max: 350, noNaN: true }), { minLength: 1, maxLength: 30 }),
      (wanted) => {
        const placed = spread(wanted, 14, 20, 260);
        expect(placed).toHaveLength(wanted.length);
        const sorted = [...placed].sort((a, b) => a - b);
        const gap = Math.min(14, 240 / Math.max(1, wanted.length - 1));
        for (const [index, y] of sorted.entries()) {
          expect(y).toBeGreaterThanOrEqual(20 - 1e-6);
          expect(y).toBeLessThanOrEqual(260 + 1e-6);
          const next = sorted[index + 1];
          if (next !== undefined) expect(next - y).toBeGreaterThanOrEqual(gap - 1e-6);
        }
        // The order of the labels is that of the curves.
        for (const [a, wantedA] of wanted.entries()) {
          for (const [b, wantedB] of wanted.entries()) {
            if (wantedA < wantedB) expect(placed[a]).toBeLessThan(placed[b] ?? 0);
          }
        }
      },
    ),
  );
});
