import { describe, expect, test } from 'vitest';
import type { Family } from '../../schemas/index.ts';
import { walkScreens } from '../../src/views/walk-screens.ts';
import { press, sequenceOf, state } from '../walk/sequences.ts';
import { demoAnswers } from './sample.ts';

const family = { face: { controls: [{ id: 'menu', label: 'MENU' }] } } as unknown as Family;
const sequence = sequenceOf(
  [
    state('dark'),
    state('list', { shows: 'profile-list', notActiveCode: ['The first line.'] }),
    state('active', { shows: 'active-code', activeCodeAt: 'Second line.', notActiveCode: ['The date.'] }),
  ],
  [
    {
      from: 'dark',
      to: 'list',
      action: {
        kind: 'hold',
        controls: ['menu'],
        begin: 'with-ignition',
        end: 'prompt-gone',
        leastSeconds: 3,
        mostSeconds: 9,
      },
      say: 'Hold MENU.',
    },
    press('list', 'active'),
    { ...press('list', 'list'), say: 'Or öffne nothing at all.' },
  ],
);
const screens = new Map(walkScreens(sequence, family).map((screen) => [screen.at, screen]));

test('a hold says when to begin and when to let go, and has its count', () => {
  const hold = screens.get('do-dark-to-list');
  expect(hold?.facts.map(({ label, text }) => `${label}: ${text}`)).toEqual([
    'Hold: MENU',
    'Begin: Hold first, then turn the ignition on.',
    'Let go: As soon as the prompt is gone, not before.',
    'Takes: 3 to 9\u00a0s',
  ]);
  expect(hold?.timer).toMatchObject({ leastSeconds: 3, mostSeconds: 9, end: 'prompt-gone', canLeadIn: true });
});

test('counting in is offered only where the rider chooses the moment', () => {
  const transitions = sequence.transitions.map((one) =>
    one.action.kind === 'hold' ? { ...one, action: { ...one.action, begin: 'prompt-shown' as const } } : one,
  );
  const [timer] = walkScreens({ ...sequence, transitions }, family).flatMap((screen) => screen.timer ?? []);
  expect(timer?.canLeadIn).toBe(false);
});

test('the trap is told where the list comes up, and again while one is looking at it', () => {
  expect(screens.get('do-dark-to-list')?.expected).toMatchObject({
    shows: 'profile-list',
    notActiveCode: ['The first line.'],
  });
  expect(screens.get('do-list-to-active')?.here?.shows).toBe('profile-list');
  expect(screens.get('choose-list')?.here?.shows).toBe('profile-list');
  expect(screens.get('do-dark-to-list')?.here).toBeUndefined();
});

test('at the end stands where the code is and what of the screen is not it', () => {
  expect(screens.get('code-active')?.expected).toMatchObject({
    activeCodeAt: 'Second line.',
    notActiveCode: ['The date.'],
  });
});

test('a choice told as “Or …” stands by itself on its own screen', () => {
  expect(screens.get('choose-list')?.choices.map(({ text }) => text)).toEqual([
    'Press menu.',
    'Öffne nothing at all.',
  ]);
});

describe('the demo', async () => {
  const { base } = await demoAnswers();
  for (const { id, data } of base.sequences.values()) {
    test(`${id}: every link of a screen leads to a screen`, () => {
      const owner = base.families.get(data.family);
      if (!owner) throw new Error('no such family');
      const all = walkScreens(data, owner.data);
      const known = all.map(({ at }) => at);
      for (const screen of all) {
        const links = [screen.onward, screen.other, screen.restart, ...screen.choices].flatMap(
          (one) => one ?? [],
        );
        for (const { at } of links) expect(known).toContain(at);
        expect(screen.title).not.toBe('');
        expect(screen.progress).not.toBe('');
      }
    });
  }
});
