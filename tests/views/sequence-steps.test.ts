import { describe, expect, test } from 'vitest';
import type { Family, Sequence } from '../../schemas/index.ts';
import { sequenceView } from '../../src/views/sequence-steps.ts';
import { demoAnswers } from './sample.ts';

const family = {
  face: {
    controls: [
      { id: 'menu', label: 'MENU' },
      { id: 'info', label: 'INFO' },
    ],
  },
} as unknown as Family;

const press = (from: string, to: string, control: string): Sequence['transitions'][number] => ({
  from,
  to,
  action: { kind: 'press', control, times: 1 },
  say: `Press ${control}.`,
});
const state = (id: string, more: Partial<Sequence['states'][number]> = {}): Sequence['states'][number] => ({
  id,
  see: `See ${id}.`,
  shows: 'nothing',
  notActiveCode: [],
  recovery: [],
  ...more,
});

const sequence: Sequence = {
  family: 'f',
  name: 'n',
  summary: 's',
  cautions: ['parked'],
  start: 'dark',
  states: [
    state('dark'),
    state('list', {
      shows: 'profile-list',
      notActiveCode: ['The first line.'],
      recovery: [
        { seen: 'The radio.', advice: 'Too slow.', goTo: 'dark' },
        { seen: 'The help page.', advice: 'Wrong key.', goTo: 'help' },
        { seen: 'The code.', advice: 'Good.', goTo: 'active' },
      ],
    }),
    state('help'),
    state('active', { shows: 'active-code', activeCodeAt: 'Second line.' }),
  ],
  transitions: [
    press('list', 'help', 'menu'),
    press('dark', 'list', 'menu'),
    press('help', 'active', 'info'),
    press('list', 'active', 'info'),
  ],
  sources: ['x'],
};

test('the way is the shortest to the active code, numbered from 1', () => {
  const view = sequenceView('f-keys', sequence, family);
  expect(view.steps.map(({ number, say }) => [number, say])).toEqual([
    [1, 'Press menu.'],
    [2, 'Press info.'],
  ]);
  expect(view.steps.at(-1)?.screen).toMatchObject({ shows: 'active-code', activeCodeAt: 'Second line.' });
});

test('what is not on the way is kept as a byway', () => {
  const view = sequenceView('f-keys', sequence, family);
  expect(view.byways.map(({ say }) => say)).toEqual(['Press menu.', 'Press info.']);
});

test('a recovery says where to go on and links there', () => {
  const [first] = sequenceView('f-keys', sequence, family).steps;
  expect(first?.screen.recoveries).toEqual([
    { seen: 'The radio.', advice: 'Too slow.', onward: 'Start again with step 1.', anchor: 'f-keys-start' },
    { seen: 'The help page.', advice: 'Wrong key.', onward: 'Go on from there.', anchor: 'f-keys-byway-1' },
    {
      seen: 'The code.',
      advice: 'Good.',
      onward: 'You are there: read the code as in step 2.',
      anchor: 'f-keys-step-2',
    },
  ]);
});

test('actions are told in short facts, by the labels on the unit', () => {
  const action: Sequence['transitions'][number]['action'] = {
    kind: 'hold',
    controls: ['menu', 'info'],
    begin: 'with-ignition',
    end: 'screen-changes',
    leastSeconds: 4,
    mostSeconds: 12,
  };
  const held = { ...sequence, transitions: [{ ...press('dark', 'active', 'menu'), action }] };
  const [step] = sequenceView('f-keys', held, family).steps;
  expect(step?.controls).toEqual(['menu', 'info']);
  expect(step?.facts.map(({ label, text }) => `${label}: ${text}`)).toEqual([
    'Hold: MENU + INFO',
    'From: as the ignition goes on',
    'Until: when the screen changes',
    'Takes: 4 to 12\u00a0s',
  ]);
});

describe('the demo’s sequences', async () => {
  const { base } = await demoAnswers();
  for (const entry of base.sequences.values()) {
    test(`${entry.id} leads to the active code, and every link of it is on the page`, () => {
      const owner = base.families.get(entry.data.family);
      if (!owner) throw new Error('no such family');
      const view = sequenceView(entry.id, entry.data, owner.data);
      expect(view.steps.length).toBeGreaterThan(0);
      expect(view.steps.at(-1)?.screen.shows).toBe('active-code');
      const screens = [
        view.start,
        ...view.steps.map(({ screen }) => screen),
        ...view.byways.map(({ screen }) => screen),
      ];
      const anchors = new Set([
        view.start.anchor,
        ...view.steps.map((one) => one.anchor),
        ...view.byways.map((one) => one.anchor),
      ]);
      for (const recovery of screens.flatMap((screen) => screen.recoveries)) {
        expect(anchors).toContain(recovery.anchor);
        expect(recovery.onward).not.toBe('');
      }
    });
  }
});
