import { expect, test } from 'vitest';
import { phaseAt, type Timing, timerWords, timingOf } from '../../src/walk/index.ts';

const hold: Timing = { kind: 'hold', leastSeconds: 4, mostSeconds: 20, end: 'prompt-shown' };

test('holds and waits are timed, nothing else is', () => {
  expect(
    timingOf({
      kind: 'hold',
      controls: ['a'],
      begin: 'any-time',
      end: 'prompt-gone',
      leastSeconds: 2,
      mostSeconds: 8,
    }),
  ).toEqual({ kind: 'hold', leastSeconds: 2, mostSeconds: 8, end: 'prompt-gone' });
  expect(timingOf({ kind: 'wait', leastSeconds: 1, mostSeconds: 2 })?.kind).toBe('wait');
  expect(timingOf({ kind: 'press', control: 'a', times: 2 })).toBeUndefined();
});

test('a count goes from counting in over not yet to enough, and then too long', () => {
  const phases = [-0.1, 0, 3.9, 4, 19.9, 20].map((seconds) => phaseAt(hold, seconds));
  expect(phases).toEqual(['lead', 'counting', 'counting', 'enough', 'enough', 'over']);
});

test('where least and most are the same there is a second to let go in', () => {
  const exact = { ...hold, leastSeconds: 5, mostSeconds: 5 };
  expect([4.9, 5, 5.9, 6].map((seconds) => phaseAt(exact, seconds))).toEqual([
    'counting',
    'enough',
    'enough',
    'over',
  ]);
});

test('what may take no time at all is enough from the start', () => {
  expect(phaseAt({ ...hold, leastSeconds: 0 }, 0)).toBe('enough');
});

test('a hold that ends with something seen is held on until then; one that ends by time is let go', () => {
  expect(timerWords(hold, 'counting')).toBe('Keep holding: at least 4 seconds.');
  expect(timerWords(hold, 'enough')).toBe('Hold on until the prompt shows, then let go.');
  expect(timerWords({ ...hold, end: 'screen-changes' }, 'enough')).toContain('until the screen changes');
  expect(timerWords({ ...hold, end: 'any-time' }, 'enough')).toBe('Let go now.');
  expect(timerWords(hold, 'over')).toBe('20 seconds are over: too long. Let go and start again.');
});

test('a wait says neither hold nor let go', () => {
  const wait: Timing = { kind: 'wait', leastSeconds: 1, mostSeconds: 90, end: 'screen-changes' };
  for (const phase of ['lead', 'counting', 'enough', 'over'] as const) {
    expect(timerWords(wait, phase)).not.toMatch(/hold|let go/i);
  }
  expect(timerWords(wait, 'counting')).toBe('Wait: at least 1 second.');
});
