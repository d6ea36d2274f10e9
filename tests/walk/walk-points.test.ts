import { describe, expect, test } from 'vitest';
import type { Sequence } from '../../schemas/index.ts';
import { type WalkPoint, walkPoints } from '../../src/walk/index.ts';
import { demoAnswers } from '../views/sample.ts';
import { press, sequenceOf, state } from './sequences.ts';

const sequence = sequenceOf(
  [
    state('dark'),
    state('list', {
      shows: 'profile-list',
      recovery: [{ seen: 'The radio.', advice: 'Too slow.', goTo: 'dark' }],
    }),
    state('help'),
    state('active', { shows: 'active-code', activeCodeAt: 'Second line.' }),
  ],
  [
    press('dark', 'list'),
    press('list', 'help'),
    press('list', 'active', 'info'),
    press('help', 'active', 'info'),
  ],
);

function walkOf(walked: Sequence): (at: string) => WalkPoint {
  const points = new Map(walkPoints(walked).map((point) => [point.at, point]));
  return (at) => {
    const point = points.get(at);
    if (!point) throw new Error(`no point ${at}`);
    return point;
  };
}

/** The points one answer leads to. */
function exits(point: WalkPoint): string[] {
  return [
    ...('onward' in point ? [point.onward] : []),
    ...('onSeen' in point ? [point.onSeen, point.onOther] : []),
    ...('choices' in point ? point.choices.map(({ at }) => at) : []),
    ...('onNone' in point ? [point.onNone] : []),
  ];
}

test('cautions come first, then the look at the start, then the step', () => {
  const at = walkOf(sequence);
  expect(walkPoints(sequence)[0]).toEqual({
    kind: 'begin',
    at: 'begin',
    back: undefined,
    onward: 'look-dark',
  });
  expect(at('look-dark')).toMatchObject({ state: 'dark', onSeen: 'do-dark-to-list', onOther: 'else-dark' });
});

test('a state with several steps is a choice, one with the code the end', () => {
  const at = walkOf(sequence);
  expect(at('do-dark-to-list')).toMatchObject({ state: 'list', onSeen: 'choose-list' });
  const choice = at('choose-list');
  expect(choice.kind === 'choose' && choice.choices.map((one) => one.at)).toEqual([
    'do-list-to-help',
    'do-list-to-active',
  ]);
  expect(at('do-list-to-active')).toMatchObject({ onSeen: 'code-active' });
  expect(at('code-active')).toMatchObject({ kind: 'code', state: 'active' });
});

test('what else was seen leads over its advice to the state named', () => {
  const at = walkOf(sequence);
  expect(at('do-dark-to-list')).toMatchObject({ onOther: 'else-list' });
  const other = at('else-list');
  expect(other.kind === 'other' && other.choices.map((one) => one.at)).toEqual(['help-list-1']);
  expect(other).toMatchObject({ onNone: 'look-dark' });
  expect(at('help-list-1')).toMatchObject({ state: 'dark', onSeen: 'do-dark-to-list', back: 'else-list' });
});

test('back leads to what lies before, also where the page was opened in the middle', () => {
  const at = walkOf(sequence);
  expect(at('look-dark').back).toBe('begin');
  expect(at('do-dark-to-list').back).toBe('look-dark');
  expect(at('choose-list').back).toBe('do-dark-to-list');
  expect(at('do-list-to-help').back).toBe('choose-list');
  expect(at('do-help-to-active').back).toBe('do-list-to-help');
});

test('two steps between the same states have names of their own', () => {
  const twice = sequenceOf(
    [state('dark'), state('active', { shows: 'active-code' })],
    [press('dark', 'active'), press('dark', 'active', 'info')],
  );
  const names = walkPoints(twice).flatMap((point) => (point.kind === 'step' ? [point.at] : []));
  expect(names).toEqual(['do-dark-to-active', 'do-dark-to-active-2']);
});

test('a state from which nothing leads on says so', () => {
  const broken = sequenceOf([state('dark'), state('maze')], [press('dark', 'maze')]);
  const at = walkOf(broken);
  expect(at('do-dark-to-maze')).toMatchObject({ onSeen: 'lost-maze' });
  expect(at('lost-maze')).toMatchObject({ kind: 'lost', onNone: 'look-dark' });
});

describe('the demo’s sequences', async () => {
  const { base } = await demoAnswers();
  for (const { id, data } of base.sequences.values()) {
    describe(id, () => {
      const points = walkPoints(data);
      const at = walkOf(data);
      /** The answers that bring one from a point to the code in the fewest steps. */
      const wayToCode = (from: string): string[] => {
        const cameBy = new Map<string, string | undefined>([[from, undefined]]);
        for (const [here] of cameBy) {
          if (at(here).kind === 'code') {
            const way: string[] = [];
            for (let one: string | undefined = here; one !== undefined; one = cameBy.get(one))
              way.unshift(one);
            return way;
          }
          for (const next of exits(at(here))) if (!cameBy.has(next)) cameBy.set(next, here);
        }
        return [];
      };

      test('every point has a name of its own, and every answer leads to one', () => {
        expect(new Set(points.map((point) => point.at)).size).toBe(points.length);
        for (const point of points) {
          for (const next of exits(point)) expect(() => at(next)).not.toThrow();
          if (point.back !== undefined) expect(() => at(point.back ?? '')).not.toThrow();
        }
      });

      test('the walk can come to every point', () => {
        const reached = new Set(['begin']);
        for (const here of reached) for (const next of exits(at(here))) reached.add(next);
        expect([...reached].sort()).toEqual(points.map((point) => point.at).sort());
      });

      test.each(data.transitions.map((transition) => [transition.say, transition] as const))(
        'by the step “%s” to the code',
        (_, transition) => {
          const step = points.find((point) => point.kind === 'step' && point.transition === transition);
          const way = wayToCode(step?.at ?? '');
          expect(way[0]).toBe(step?.at);
          expect(at(way.at(-1) ?? '').kind).toBe('code');
          // Seeing what is told after each step is enough: no recovery on the way.
          expect(way.map((one) => at(one).kind).filter((kind) => kind === 'recover')).toEqual([]);
        },
      );

      test.each(
        data.states.flatMap(({ id: from, recovery }) =>
          recovery.map((one) => [one.seen, from, one] as const),
        ),
      )('after “%s” in %s to the state named, and on to the code', (_, from, recovery) => {
        const help = points.find((point) => point.kind === 'recover' && point.recovery === recovery);
        expect(exits(at(`else-${from}`))).toContain(help?.at);
        expect(help).toMatchObject({ state: recovery.goTo });
        const next = help?.kind === 'recover' ? at(help.onSeen) : undefined;
        const follows =
          (next?.kind === 'step' && next.transition.from === recovery.goTo) ||
          ((next?.kind === 'choose' || next?.kind === 'code') && next.state === recovery.goTo);
        expect(follows).toBe(true);
        expect(at(wayToCode(help?.at ?? '').at(-1) ?? '').kind).toBe('code');
      });

      test('back from every point comes to the beginning', () => {
        for (const point of points) {
          const seen = new Set<string>();
          let here: WalkPoint = point;
          while (here.back !== undefined && !seen.has(here.at)) {
            seen.add(here.at);
            here = at(here.back);
          }
          expect(here.at, `back from ${point.at}`).toBe('begin');
        }
      });
    });
  }
});
