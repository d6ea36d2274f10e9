/** Which texts hold a number with an electrical unit. Units and prefixes as in ISO 80000-1 and IEC 60027; ways of writing: common practice, no source. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { electricalNumbers, isElectricalUnit } from '../../src/prose/index.ts';

const found = (text: string): string[] => electricalNumbers(text).map((one) => one.text);

test.each([
  '4.2 V',
  '4.2V',
  '4,2 V',
  '4.2\u00a0V',
  '4.2\u202fV',
  '4.2-V',
  '300 mV',
  '300 µV',
  '300 μV',
  '4 dB',
  '-3 dB',
  '−3 dB',
  '±0.3 dB',
  '0 dBFS',
  '85 dB(A)',
  '2 dBu',
  '6 dB',
  '60 Hz',
  '1.25 kHz',
  '20\u00a0000 Hz',
  '4 ohm',
  '4 ohms',
  '4-ohm',
  '4 \u03a9',
  '4 \u2126',
  '4Ω',
  '20 W',
  '20 watts',
  '2 × 50 W',
  '4x50W',
  '3 A',
  '500 mA',
  '60 Ah',
  '1 %',
  '1%',
  '5 ‰',
  '1 per cent',
  '1 percent',
  '12 volts',
  '12-volt',
  '12v',
  '50w',
  '50 W RMS',
  '4.2 V rms',
  '100mv',
  '3 decibels',
  '80 hertz',
  '470 µF',
  '1 farad',
  '3–5 V',
  '3-5 V',
  '3 to 5 V',
  '3 or 5 V',
  '5 ± 0.2 V',
  '½ W',
  '1/2 W',
  '1e3 Hz',
  '2×10⁻³ V',
  '.5 V',
  '4.2 clean volts',
  'one per cent',
  'Four ohms',
  'four-ohm',
  'twenty-five volts',
  'hundred watts',
  'half a volt',
  'quarter of a watt',
  'two to four ohms',
  'ten decibels',
])('“%s” is one', (text) => {
  expect(found(`It reads ${text}, or so.`)).toEqual([text]);
});

test.each([
  '8B0S-I5Z and 0x5B0',
  '8B0S-15V',
  'PA-100V',
  'step 24',
  '2014-05-19',
  'from 2009 to 2014',
  'letters A to F',
  '9:30 h',
  '3. A rider',
  'one amp and two pairs of speakers',
  'third-octave filters',
  'half the load',
  'half power',
  'a volt meter',
  'volume 12',
  '12 visitors',
  '4 Watson Road',
  '30 Vans',
  '5 Hzz',
  'THD+N',
  'ISO 266',
  '1%20',
  'two channels',
  '7 m of cable, 5 mm thick, 3 kg, 20 s',
])('“%s” holds none', (text) => {
  expect(found(text)).toEqual([]);
});

test('each is found where it stands', () => {
  const text = 'At 63 Hz 4.2 V, at 1 kHz half a volt.';
  expect(electricalNumbers(text).map(({ start, text: number }) => [start, number])).toEqual([
    [3, '63 Hz'],
    [9, '4.2 V'],
    [19, '1 kHz'],
    [25, 'half a volt'],
  ]);
});

test('column headings with a unit', () => {
  for (const heading of [
    'V',
    'dB',
    'Volts',
    'Level (dB)',
    'Level [V]',
    'Level, dB',
    'level in volts',
    'Hz',
  ]) {
    expect(isElectricalUnit(heading), heading).toBe(true);
  }
  for (const heading of ['Step', 'Code', 'What to enter', 'Vans', '']) {
    expect(isElectricalUnit(heading), heading).toBe(false);
  }
});

test('long and odd texts take little time', () => {
  const pieces = ['1', '1 to ', '1-', 'one ', 'one and ', '.', ' ', '1,1', '½', '10^', 'half a ', "1'"];
  for (const piece of pieces) {
    const text = piece.repeat(50_000);
    const start = process.cpuUsage();
    electricalNumbers(text);
    // Of the processor: what else runs on the machine does not count.
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1000, piece).toBeLessThan(2000);
  }
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
      for (const one of electricalNumbers(text)) expect(text.slice(one.start, one.end)).toBe(one.text);
    }),
  );
});
