import { describe, expect, test } from 'vitest';
import { describeStimulus, parseStimulus } from '../../src/measure/recording/index.ts';

describe('a stimulus as typed', () => {
  test.each([
    ['sweep:20:20000:10', { kind: 'sweep', fromHz: 20, toHz: 20_000, seconds: 10 }],
    ['sweep:18.5:22000:2.5', { kind: 'sweep', fromHz: 18.5, toHz: 22_000, seconds: 2.5 }],
    ['tone:1000', { kind: 'tone', hz: 1000 }],
    [' tone:31.5 ', { kind: 'tone', hz: 31.5 }],
  ])('%s', (text, expected) => {
    expect(parseStimulus(text)).toEqual(expected);
  });

  test.each([
    ['sweep', '“sweep” is not a stimulus.'],
    ['sweep:20:20000', '“sweep:20:20000” is not a stimulus.'],
    ['noise:1', '“noise:1” is not a stimulus.'],
    ['tone:', '“tone:” is no tone from 5 Hz to 96 kHz.'],
    ['tone:1e3', '“tone:1e3” is no tone from 5 Hz to 96 kHz.'],
    ['tone:1,000', '“tone:1,000” is no tone from 5 Hz to 96 kHz.'],
    ['tone:-5', '“tone:-5” is no tone from 5 Hz to 96 kHz.'],
    ['sweep:20:20000:0.2', '“sweep:20:20000:0.2” is no sweep of 1 to 30 seconds.'],
    ['sweep:20:20000:ten', '“sweep:20:20000:ten” is no sweep of 1 to 30 seconds.'],
    ['sweep:0:20000:10', '“sweep:0:20000:10” is no sweep within 5 Hz to 96 kHz.'],
    ['sweep:20000:20:10', '“sweep:20000:20:10” does not rise from 500 Hz or below to 2 kHz or above.'],
    ['sweep:2000:20000:10', '“sweep:2000:20000:10” does not rise from 500 Hz or below to 2 kHz or above.'],
  ])('%s is refused', (text, message) => {
    const problem = parseStimulus(text);
    expect(problem).toMatchObject({ kind: 'problem', message });
    expect(problem.kind === 'problem' && problem.help.length).toBeGreaterThan(10);
  });

  test('in words', () => {
    expect(describeStimulus({ kind: 'tone', hz: 1250 })).toBe('tone of 1.25\u00a0kHz');
    expect(describeStimulus({ kind: 'sweep', fromHz: 20, toHz: 20_000, seconds: 10 })).toBe(
      'sweep from 20\u00a0Hz to 20\u00a0kHz in 10 s',
    );
  });
});
