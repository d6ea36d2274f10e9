import { expect, test } from 'vitest';
import { given, workedOut } from '../../src/decide/plan/line.ts';
import { usualQuery } from '../../src/decide/plan/query.ts';
import { changesWords, filterSetting, lineWords, stageWords } from '../../src/views/plan-words.ts';

const names = { code: (id: string) => id.toUpperCase() };

test('changes together read as one phrase', () => {
  expect(changesWords([{ change: 'leave-out-rear' }], names)).toBe('Leave the rear speakers out');
  expect(changesWords([{ change: 'leave-out-rear' }, { change: 'profile', to: 'a/b-1' }], names)).toBe(
    'Leave the rear speakers out, and have the profile changed to A/B-1',
  );
  expect(changesWords([], names)).toBe('');
});

test('a line and a filter in plain text', () => {
  const line = workedOut({
    id: 'full-power-volts',
    symbol: 'V_full',
    formula: '√(P·Z)',
    given: [given('P', 'power', 75, 'W'), given('Z', 'load', 4, 'Ω')],
    unit: 'V',
  });
  expect(lineWords(line)).toBe('Volts at the amplifier’s rated power: V_full = √(P·Z) = 17.32\u00a0V');
  expect(filterSetting({ kind: 'peaking', hz: 61.2, gainDb: -5.24, q: 1.1 })).toBe(
    'Peak or dip, 61.2\u00a0Hz, −5.2\u00a0dB, Q\u00a01.10',
  );
  expect(filterSetting({ kind: 'high-pass', hz: 80, gainDb: 0, q: 0.706 })).toBe(
    'High-pass, 80\u00a0Hz, Q\u00a00.71',
  );
});

test('a stage without its class still has words', () => {
  expect(stageWords({ buy: 'rear', verdict: 'keep' }, usualQuery)).toBe('The rear speakers');
});
