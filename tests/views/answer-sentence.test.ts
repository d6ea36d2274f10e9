import { describe, expect, test } from 'vitest';
import type { ProfileOutput } from '../../src/measure/index.ts';
import { answerSentence, sentenceText, type UnitScale } from '../../src/views/answer-sentence.ts';
import { characteristic, mainConditions, output } from './sample.ts';

const unit: UnitScale = { highestStep: 30, channels: ['FL', 'FR', 'RL', 'RR'] };
const say = (given: ProfileOutput, scale = unit): string =>
  sentenceText(answerSentence(given, scale)).replaceAll('\u00a0', ' ');

const clean = [characteristic('clean-volts', 3.62, 0.05), characteristic('highest-clean-step', 27, 0)];
const boost = characteristic('bass-boost', 6.1, 0.3, { at: { hz: 63.0957, step: 20 } });
const rear = characteristic('rear-to-front', -3, 0.1);

test('clean volts, bass boost and rear in one sentence', () => {
  expect(say(output([...clean, boost, rear]))).toBe(
    'Clean up to step 27 of 30: 3.62 V ± 0.05 V; bass boost 6.1 dB ± 0.3 dB at 63 Hz; rear channels play, 3.0 dB below front.',
  );
});

test('each number says which value it is', () => {
  const named = answerSentence(output([...clean, boost, rear]), unit).flatMap(({ value }) => value ?? []);
  expect(named).toEqual(['highest-clean-step', 'clean-volts', 'bass-boost', 'rear-to-front']);
});

test('a profile nobody measured is said not to be', () => {
  expect(say(output([], { conditions: undefined, sessions: [] }))).toBe(
    'Not measured yet: nobody has had this profile on a bench.',
  );
});

test('what is not known is said to be unknown', () => {
  expect(say(output([]))).toBe(
    'How far it plays clean is not known; bass boost not known; rear channels not measured.',
  );
});

describe('clean', () => {
  test('to the last step', () => {
    const atTop = [characteristic('highest-clean-step', 30), characteristic('clean-volts', 2.9, 0.02)];
    expect(say(output(atTop))).toMatch(/^Clean up to the last step, 30 of 30: 2\.900? V/);
  });

  test('at every step measured, where the limit was not reached', () => {
    const step = characteristic('highest-clean-step', 20, 0, { bound: 'at-least' });
    expect(say(output([step]))).toMatch(/^Clean at every step measured, up to step 20 of 30;/);
  });
});

describe('bass', () => {
  test('none, where the peak is within its uncertainty', () => {
    expect(say(output([characteristic('bass-boost', 0.05, 0.1)]))).toContain('; no bass boost;');
    expect(say(output([characteristic('bass-boost', -2, 0.1)]))).toContain('; no bass boost;');
  });

  test('a boost that fades with the volume is told at both steps', () => {
    const fading = output([characteristic('bass-boost', 0.01, 0.02, { at: { hz: 200, step: 24 } })], {
      others: [characteristic('bass-boost', 8.7, 0.3, { at: { hz: 63.0957, step: 12 } })],
    });
    expect(say(fading)).toContain('bass boost 8.7 dB ± 0.3 dB at 63 Hz at step 12, but none at step 24');
  });

  test('a boost under another load is not taken for a fading one', () => {
    const other = characteristic('bass-boost', 9, 0.2, {
      at: { hz: 63.0957, step: 12, loadOhms: mainConditions.loadOhms / 2 },
    });
    expect(say(output([boost], { others: [other] }))).toContain('bass boost 6.1 dB ± 0.3 dB at 63 Hz;');
  });

  test('a bass that ends high is worth a word, one that reaches down is not', () => {
    const ends = (hz: number) => say(output([characteristic('lower-corner', hz, 4)]));
    expect(ends(125)).toContain('bass ends at 125 Hz ± 4 Hz');
    expect(ends(30)).not.toContain('bass ends');
  });
});

describe('rear', () => {
  test('as loud as the front, within the uncertainty', () => {
    expect(say(output([characteristic('rear-to-front', 0.02, 0.05)]))).toContain(
      'rear channels play, as loud as the front.',
    );
  });

  test('silent, both or one', () => {
    const bound = characteristic('rear-to-front', -40, 0, { bound: 'at-most' });
    expect(say(output([bound], { mutedChannels: ['RL', 'RR'] }))).toContain('rear channels silent.');
    expect(say(output([bound], { mutedChannels: ['RR'] }))).toContain(
      'rear right silent, the other rear channel plays.',
    );
  });

  test('a unit without rear outputs has none', () => {
    expect(say(output([]), { highestStep: 30, channels: ['FL', 'FR'] })).toContain(
      'the unit has no rear outputs.',
    );
  });
});
