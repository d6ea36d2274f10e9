import { describe, expect, test } from 'vitest';
import type { FaceControl, FaceData } from '../../src/plot/face.ts';
import { type TouchMarks, touchMarks } from '../../src/plot/touch-marks.ts';
import { faceData } from '../../src/views/unit-page.ts';
import { demoAnswers } from '../views/sample.ts';

const control = (id: string, xMm: number, yMm: number, kind: FaceControl['kind'] = 'key'): FaceControl => ({
  id,
  label: id,
  kind,
  xMm,
  yMm,
  widthMm: 20,
  heightMm: 12,
  numbers: [],
});
const face: FaceData = {
  widthMm: 180,
  heightMm: 100,
  screen: { xMm: 40, yMm: 10, widthMm: 100, heightMm: 40, display: 'dot-matrix', touch: false },
  controls: [
    control('menu', 160, 20),
    control('a', 40, 80),
    control('b', 140, 80),
    control('knob', 168, 60, 'knob'),
  ],
};

test('nothing is marked where nothing is touched', () => {
  expect(touchMarks(face, { kind: 'wait', leastSeconds: 1, mostSeconds: 2 })).toBeUndefined();
  expect(touchMarks(face, { kind: 'ignition', position: 'on' })).toBeUndefined();
  expect(touchMarks(face, { kind: 'press', control: 'gone', times: 1 })).toBeUndefined();
});

test('a press is ringed once and says how often, a hold twice and says that it is held', () => {
  const pressed = touchMarks(face, { kind: 'press', control: 'menu', times: 3 });
  expect(pressed?.badge.text).toBe('Press 3\u00a0×');
  expect(pressed?.rings).toHaveLength(1);
  expect(pressed?.outerRings).toEqual([]);
  const held = touchMarks(face, {
    kind: 'hold',
    controls: ['a', 'b'],
    begin: 'any-time',
    end: 'any-time',
    leastSeconds: 1,
    mostSeconds: 2,
  });
  expect(held?.badge.text).toBe('Hold together');
  expect(held?.rings.map(({ id }) => id)).toEqual(['a', 'b']);
  expect(held?.outerRings).toHaveLength(2);
  expect(held?.badge.leaders).toHaveLength(2);
});

test('a turn has an arrow whose head is at the right for clockwise and at the left for anticlockwise', () => {
  const headX = (direction: 'clockwise' | 'anticlockwise'): number => {
    const marks = touchMarks(face, { kind: 'turn', control: 'knob', direction, clicks: 9 });
    expect(marks?.badge.text).toBe(`Turn ${direction}, 9\u00a0×`);
    return Number(/^M([\d.]+)/.exec(marks?.turn?.head ?? '')?.[1]);
  };
  expect(headX('clockwise')).toBeGreaterThan(168);
  expect(headX('anticlockwise')).toBeLessThan(168);
});

/** What of the marks lies outside the drawing. */
function outside({ viewBox, rings, outerRings, badge }: TouchMarks): unknown[] {
  const [left = 0, top = 0, width = 0, height = 0] = viewBox.split(' ').map(Number);
  return [...rings, ...outerRings, badge].filter(
    (one) =>
      one.x < left || one.y < top || one.x + one.width > left + width || one.y + one.height > top + height,
  );
}

describe('on the demo’s faces', async () => {
  const { base } = await demoAnswers();
  for (const { id, data } of base.sequences.values()) {
    test(`${id}: all marks lie within the drawing, the badge off the face`, () => {
      const family = base.families.get(data.family);
      if (!family) throw new Error('no such family');
      const drawn = data.transitions.flatMap(({ action }) => touchMarks(faceData(family), action) ?? []);
      expect(drawn.length).toBeGreaterThan(0);
      for (const marks of drawn) {
        expect(outside(marks)).toEqual([]);
        const { y, height } = marks.badge;
        expect(y + height <= 0 || y >= family.data.face.heightMm).toBe(true);
      }
    });
  }
});
