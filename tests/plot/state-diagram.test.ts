import { describe, expect, test } from 'vitest';
import { layersOf } from '../../src/plot/layers.ts';
import {
  type DiagramInput,
  diagramSizes,
  type StateDiagram,
  stateDiagram,
} from '../../src/plot/state-diagram.ts';
import { wrapWords } from '../../src/plot/wrap-words.ts';
import { wayPages } from '../../src/views/way-page.ts';
import { demoAnswers } from '../views/sample.ts';

const step = (from: string, to: string, label = 'Press') => ({ from, to, label });
const input = (
  ids: string[],
  steps: DiagramInput['steps'],
  recoveries: DiagramInput['recoveries'] = [],
): DiagramInput => ({
  start: 'a',
  states: ids.map((id) => ({ id, title: id, kind: 'nothing' })),
  steps,
  recoveries,
});

test('each state lies below all that lead to it', () => {
  expect(
    layersOf('a', ['a', 'b', 'c', 'd'], [step('a', 'b'), step('b', 'd'), step('b', 'c'), step('c', 'd')]),
  ).toEqual([['a'], ['b'], ['c'], ['d']]);
});

test('a circle does not hold the layers up, and what no step reaches comes last', () => {
  expect(
    layersOf('a', ['x', 'a', 'b', 'c'], [step('a', 'b'), step('b', 'a'), step('b', 'c'), step('x', 'c')]),
  ).toEqual([['a'], ['b'], ['c'], ['x']]);
});

test('states of one layer stand side by side, in the order of those that lead to them', () => {
  const steps = [step('a', 'c'), step('a', 'b'), step('b', 'd'), step('c', 'e')];
  expect(layersOf('a', ['a', 'b', 'c', 'e', 'd'], steps)).toEqual([['a'], ['b', 'c'], ['d', 'e']]);
});

test('steps between the same two states share an arrow, told one below the other', () => {
  const { arrows } = stateDiagram(input(['a', 'b'], [step('a', 'b', 'Press X'), step('a', 'b', 'Hold Y')]));
  expect(arrows.map(({ label }) => label.lines)).toEqual([['Press X', 'or: Hold Y']]);
});

test('recoveries are dashed and without words; those to one state share a lane', () => {
  const { arrows } = stateDiagram(
    input(
      ['a', 'b', 'c'],
      [step('a', 'b'), step('b', 'c')],
      [
        { from: 'b', to: 'a' },
        { from: 'c', to: 'a' },
        { from: 'c', to: 'a' },
        { from: 'a', to: 'a' },
      ],
    ),
  );
  const dashed = arrows.filter((one) => one.dashed);
  expect(dashed).toHaveLength(3);
  const lanes = dashed.map(({ path }) => /^M\d+ \d+H(\d+)V/.exec(path)?.[1]).filter(Boolean);
  expect(lanes).toHaveLength(2);
  expect(new Set(lanes).size).toBe(1);
});

test('words are broken between, never within', () => {
  expect(wrapWords('Hold 1 + 6, 4 to 20 s', 12)).toEqual(['Hold 1 + 6,', '4 to 20 s']);
  expect(wrapWords('unbreakable', 4)).toEqual(['unbreakable']);
});

/** Every pair of numbers in a path of absolute commands is inside, as far as it can be read off. */
function farthest({ arrows }: StateDiagram): { x: number; y: number } {
  const xs = arrows.flatMap(({ path }) => [...path.matchAll(/[MH](-?[\d.]+)/g)].map((one) => Number(one[1])));
  const ys = arrows.flatMap(({ path }) => [...path.matchAll(/V(-?[\d.]+)/g)].map((one) => Number(one[1])));
  return { x: Math.max(...xs), y: Math.max(...ys) };
}

describe('the demo’s ways', async () => {
  const ways = wayPages(await demoAnswers());
  test.each(ways.map((way) => [way.id, way] as const))('%s', (_, { diagram, states }) => {
    const { boxWidth, boxHeight } = diagramSizes;
    expect(diagram.boxes).toHaveLength(states.length);
    for (const one of diagram.boxes) {
      expect(one.x).toBeGreaterThanOrEqual(0);
      expect(one.x + boxWidth).toBeLessThanOrEqual(diagram.width);
      expect(one.y + boxHeight).toBeLessThanOrEqual(diagram.height);
      const others = diagram.boxes.filter((other) => other !== one);
      const onIt = others.filter(
        (other) => Math.abs(other.x - one.x) < boxWidth && Math.abs(other.y - one.y) < boxHeight,
      );
      expect(onIt).toEqual([]);
    }
    expect(diagram.boxes.find(({ kind }) => kind === 'active-code')?.y).toBe(
      Math.max(...diagram.boxes.map(({ y }) => y)),
    );
    const end = farthest(diagram);
    expect(end.x).toBeLessThanOrEqual(diagram.width);
    expect(end.y).toBeLessThanOrEqual(diagram.height);
    // On a phone of 390 px the frame is 358 px wide.
    expect(diagram.width).toBeLessThanOrEqual(358);
  });

  test('the same content is drawn the same', async () => {
    expect(wayPages(await demoAnswers()).map(({ diagram }) => diagram)).toEqual(
      ways.map(({ diagram }) => diagram),
    );
  });
});
