import { expect, test } from 'vitest';
import { calloutRadiusMm, type FaceControl, type FaceData, faceDrawing } from '../../src/plot/face.ts';

const key = (id: string, xMm: number, yMm: number, numbers: number[] = [], label = id): FaceControl => ({
  id,
  label,
  kind: 'key',
  xMm,
  yMm,
  widthMm: 20,
  heightMm: 10,
  numbers,
});
const face = (controls: FaceControl[]): FaceData => ({
  widthMm: 180,
  heightMm: 100,
  screen: { xMm: 40, yMm: 10, widthMm: 100, heightMm: 40, display: 'dot-matrix', touch: false },
  controls,
});

test('controls are drawn about their centres, in millimetres', () => {
  const [drawn] = faceDrawing(face([key('menu', 50, 80)])).controls;
  expect(drawn).toMatchObject({ x: 40, y: 75, width: 20, height: 10, cx: 50, cy: 80 });
});

test('without telling features there is no room kept for callouts', () => {
  expect(faceDrawing(face([key('menu', 50, 80)])).viewBox).toBe('-1 -1 182 102');
});

test('callouts stand outside the face, at the edge nearer to their control, and lead to it', () => {
  const { callouts, viewBox } = faceDrawing(face([key('a', 50, 80, [1]), key('b', 50, 20, [2])]));
  const [top, bottom] = [callouts.find((one) => one.number === 2), callouts.find((one) => one.number === 1)];
  expect(top).toMatchObject({ x: 50, toX: 50, toY: 15 });
  expect(top?.y).toBeLessThan(-calloutRadiusMm);
  expect(bottom).toMatchObject({ x: 50, toX: 50, toY: 85 });
  expect(bottom?.y).toBeGreaterThan(100 + calloutRadiusMm);
  const [, y = 0, , height = 0] = viewBox.split(' ').map(Number);
  expect(y).toBeLessThanOrEqual((top?.y ?? 0) - calloutRadiusMm);
  expect(y + height).toBeGreaterThanOrEqual((bottom?.y ?? 0) + calloutRadiusMm);
});

test('callouts of one control, or of close ones, do not lie on one another', () => {
  const { callouts } = faceDrawing(face([key('a', 90, 80, [1, 2]), key('b', 94, 80, [3])]));
  const xs = callouts.map(({ x }) => x).sort((a, b) => a - b);
  expect((xs[1] ?? 0) - (xs[0] ?? 0)).toBeGreaterThanOrEqual(2 * calloutRadiusMm);
  expect((xs[2] ?? 0) - (xs[1] ?? 0)).toBeGreaterThanOrEqual(2 * calloutRadiusMm);
});

test('a label that does not fit on its control is left out', () => {
  const { controls } = faceDrawing(
    face([key('a', 90, 80, [], 'MENU'), key('b', 20, 80, [], 'An unreasonably long label')]),
  );
  expect(controls[0]?.labelMm).toBeGreaterThan(2.5);
  expect(controls[1]?.labelMm).toBe(0);
});
