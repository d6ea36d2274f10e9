/** What is known of a profile for the columns of a decision table. */
import { describe, expect, test } from 'vitest';
import { answerTable, readAnswers } from '../../src/answers.ts';
import { knownOfProfile } from '../../src/decide/index.ts';
import type { Characteristic, ProfileOutput } from '../../src/measure/index.ts';

const value = (name: string, at: number, u: number, bound: Characteristic['bound'] = 'exact') =>
  ({
    name,
    value: at,
    expandedUncertainty: u,
    bound,
    unit: 'V',
    conditions: {},
  }) as unknown as Characteristic;
const output = (
  characteristics: readonly Characteristic[],
  more: Partial<ProfileOutput> = {},
): ProfileOutput =>
  ({
    characteristics,
    others: [],
    boostBehaviour: 'unknown',
    mutedChannels: [],
    ...more,
  }) as unknown as ProfileOutput;
const data = { system: 'unamplified', origin: 'factory' } as Parameters<typeof knownOfProfile>[1]['data'];
const column = { id: 'c', label: 'c', mayBeMissing: false };
const known = (
  input: Parameters<typeof knownOfProfile>[0][number],
  of: ProfileOutput,
  channels = ['FL', 'FR', 'RL', 'RR'],
) => knownOfProfile([input], { data, channels, output: of }).c;
const volts = { ...column, holds: 'characteristic', characteristic: 'clean-volts' } as const;
const rear = { ...column, holds: 'trait', trait: 'rear-outputs' } as const;

describe('a column of a characteristic', () => {
  test('lies within its expanded uncertainty', () => {
    expect(known(volts, output([value('clean-volts', 4, 0.2)]))).toEqual({ value: 4, low: 3.8, high: 4.2 });
  });

  test('is open on one side where the value is a bound', () => {
    expect(known(volts, output([value('clean-volts', 4, 0, 'at-least')]))).toEqual({
      value: 4,
      low: 4,
      high: Number.POSITIVE_INFINITY,
    });
  });

  test('may be anything where it was not measured, or is not known where the column allows that', () => {
    expect(known(volts, output([]))).toEqual({ anything: true });
    expect(known({ ...volts, mayBeMissing: true }, output([]))).toEqual({ value: null });
  });
});

describe('rear outputs', () => {
  test('play, are silent, or are not there', () => {
    expect(known(rear, output([value('rear-to-front', -1, 0.2)]))).toEqual({ value: 'playing' });
    expect(known(rear, output([value('rear-to-front', -40, 0, 'at-most')]))).toEqual({ value: 'silent' });
    expect(known(rear, output([]), ['FL', 'FR'])).toEqual({ value: 'none' });
    expect(known(rear, output([]))).toEqual({ anything: true });
  });
});

test('what the rider answers is not known of the profile', () => {
  const asked = { id: 'c', label: 'c', holds: 'yes-no', question: 'Rear?' } as const;
  expect(known(asked, output([]))).toBeUndefined();
});

test('a profile that fades its boost is to be reflashed, whatever else is planned', async () => {
  const { answers } = await readAnswers('content');
  const answer = answerTable(answers, 'amplifier-without-reflash', 'brasslight/8b0s-i5z');
  expect(answer?.within.possible.map((one) => one.answers[0]?.answer)).toEqual(['reflash']);
  expect(answer?.within.borderline).toBe(false);
});
