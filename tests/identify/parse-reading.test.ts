import { describe, expect, test } from 'vitest';
import { nearest } from '../../src/base/index.ts';
import { parseReading } from '../../src/decide/identify/index.ts';

describe('a reading as typed', () => {
  test.each([
    [
      'step=12,hz=60,volts=3.4',
      { step: 12, hz: 60, voltsRms: 3.4, channel: 'FL', accuracyPercent: 5, digitVolts: 0.1 },
    ],
    [
      ' HZ = 10000 , volts=0.120, step=7, channel=rl',
      { step: 7, hz: 10_000, voltsRms: 0.12, channel: 'RL', accuracyPercent: 10, digitVolts: 0.001 },
    ],
    [
      'step=12,hz=5000,volts=3,accuracy=1.5',
      { step: 12, hz: 5000, voltsRms: 3, channel: 'FL', accuracyPercent: 1.5, digitVolts: 1 },
    ],
  ])('%s', (text, reading) => {
    expect(parseReading(text, nearest)).toEqual({ reading });
  });

  test('an accuracy for all stands where the reading states none', () => {
    const parsed = parseReading('step=1,hz=60,volts=1.0', nearest, 2);
    expect(parsed).toMatchObject({ reading: { accuracyPercent: 2 } });
    const own = parseReading('step=1,hz=60,volts=1.0,accuracy=7', nearest, 2);
    expect(own).toMatchObject({ reading: { accuracyPercent: 7 } });
  });

  test.each([
    ['', 'This reading is empty.', /step=12,hz=60,volts=3\.4/],
    [
      'step=12,hz=60,volts=3,4',
      '“4” in the reading “step=12,hz=60,volts=3,4” is not of the form name=value.',
      /with a point, not a comma: volts=3\.4/,
    ],
    ['12 60 3.4', '“12 60 3.4” in the reading “12 60 3.4” is not of the form name=value.', /point/],
    ['step=12,herz=60,volts=3', '“herz” is not known in a reading.', /Did you mean hz=\?/],
    [
      'step=12,temperature=60,volts=3',
      '“temperature” is not known in a reading.',
      /Known are: step, hz, volts/,
    ],
    ['step=12,hz=60', 'The reading “step=12,hz=60” lacks volts.', /step=12,hz=60,volts=3\.4/],
    ['step=,volts=1', 'The reading “step=,volts=1” lacks step and hz.', /step=12/],
    ['step=1,step=2,hz=60,volts=3', /“step” is given twice/, /--reading of its own/],
    ['step=12,hz=60,volts=3.4V', '“volts=3.4V” is not a number.', /without a unit/],
    ['step=12,hz=6e1,volts=3', '“hz=6e1” is not a number.', /hertz, such as hz=60/],
    ['step=12.5,hz=60,volts=3', '“step=12.5” is not a whole step.', /step the screen shows/],
    ['step=12,hz=0,volts=3', '“hz=0” is no frequency.', /hz=60/],
    ['step=12,hz=60,volts=0', '“volts=0” is not above zero.', /smallest digit, such as volts=0\.001/],
    ['step=12,hz=60,volts=-3', '“volts=-3” is not above zero.', /without a sign/],
    ['step=12,hz=60,volts=3400', '“volts=3400” is more than any head unit puts out.', /not millivolts/],
    ['step=12,hz=60,volts=3,channel=XL', 'There is no output “XL”.', /FL, FR, RL and RR/],
    ['step=12,hz=60,volts=3,accuracy=0', /“accuracy=0” is no limit of error/, /per cent of the reading/],
    ['step=12,hz=60,volts=3,accuracy=80', /up to 50 per cent/, /accuracy=3/],
  ])('%j is refused', (text, message, help) => {
    const parsed = parseReading(text, nearest);
    if (!('problem' in parsed)) throw new Error('a problem was expected');
    expect(parsed.problem.message).toMatch(message);
    if (typeof message === 'string') expect(parsed.problem.message).toBe(message);
    expect(parsed.problem.help).toMatch(help);
  });
});
