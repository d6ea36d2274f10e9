import { describe, expect, test } from 'vitest';
import { channelOf } from '../../src/import/channels.ts';
import { headingOf } from '../../src/import/heading.ts';
import { roleNamed, roleText } from '../../src/import/role.ts';

const words = (head: string): string | undefined => {
  const { role, isSaid } = headingOf(head);
  return role && `${roleText(role)}${isSaid ? '' : ' ?'}`;
};

describe('heads of columns in the trade’s words', () => {
  test.each([
    // readings.csv itself
    ['profile', 'profile'],
    ['channel', 'channel'],
    ['step', 'step'],
    ['hz', 'hz'],
    ['voltsRms', 'volts V'],
    ['thdPercent', 'thd %'],
    ['repeat', 'repeat'],
    // English
    ['Tuning code', 'profile'],
    ['Volume Step', 'step'],
    ['Vol.', 'step'],
    ['Frequency [Hz]', 'hz'],
    ['Freq (kHz)', 'hz kHz'],
    ['Output level (dBu)', 'volts dBu'],
    ['Level in mV', 'volts mV'],
    ['Voltage, V rms', 'volts V'],
    ['Vrms', 'volts V'],
    ['V', 'volts V'],
    ['mV', 'volts mV'],
    ['Reading (Vpp)', 'volts Vpp'],
    ['THD %', 'thd %'],
    ['THD (dB)', 'thd dB'],
    ['Distortion / %', 'thd %'],
    ['Run', 'repeat'],
    ['Remarks', 'note'],
    // German
    ['Lautstärke', 'step'],
    ['Kanal', 'channel'],
    ['Frequenz (Hz)', 'hz'],
    ['Spannung [mV]', 'volts mV'],
    ['Klirrfaktor (%)', 'thd %'],
    ['Gerät', 'unit'],
    // Spanish
    ['Código', 'profile'],
    ['Canal', 'channel'],
    ['Volumen', 'step'],
    ['Frecuencia (Hz)', 'hz'],
    ['Tensión (V)', 'volts V'],
    ['Distorsión (%)', 'thd %'],
    // one column for one output, frequency, step, repeat
    ['FL (V)', 'volts V FL'],
    ['Front left mV', 'volts mV FL'],
    ['Hinten rechts [V]', 'volts V RR'],
    ['THD FL (%)', 'thd % FL'],
    ['63 Hz (mV)', 'volts mV 63Hz'],
    ['1.25 kHz (V)', 'volts V 1250Hz'],
    ['31,5 Hz V', 'volts V 31.5Hz'],
    ['Step 12 (V)', 'volts V step12'],
    ['Reading 2 (V)', 'volts V repeat2'],
    ['FL 1 kHz step 12 (mV)', 'volts mV FL 1000Hz step12'],
  ])('%s: %s', (head, role) => {
    expect(words(head)).toBe(role);
  });

  test('what the words do not say is a guess', () => {
    expect(words('Level')).toBe('volts ?');
    expect(words('Frequncy')).toBe('hz ?');
    expect(words('THD')).toBe('thd ?');
    expect(words('FL')).toBe('volts FL ?');
  });

  test('what is none of it is left out, with why', () => {
    expect(headingOf('THD+N (%)')).toMatchObject({
      role: { is: 'note' },
      why: expect.stringMatching(/noise/),
    });
    expect(headingOf('Level (dBm)')).toMatchObject({
      role: { is: 'note' },
      why: expect.stringMatching(/resistance/),
    });
    expect(headingOf('Ambient')).toMatchObject({ role: undefined });
    // 20 Hz or 20 kHz: both can be heard.
    expect(headingOf('20.000 Hz (V)').role).toBeUndefined();
  });
});

test('the four outputs, however they are called', () => {
  const names = {
    FL: [
      'FL',
      'fl',
      'LF',
      'front left',
      'Left Front',
      'front-left',
      'FrontLeft',
      'VL',
      'vorne links',
      'delantero izquierdo',
      'Ch FL',
      'F/L',
    ],
    FR: ['FR', 'RF', 'Front R', 'vorne rechts', 'VR'],
    RL: ['RL', 'LR', 'rear left', 'hinten links', 'HL', 'trasero izq.'],
    RR: ['RR', 'rear right', 'HR', 'right rear', 'Ausgang hinten rechts'],
  };
  for (const [channel, written] of Object.entries(names)) {
    for (const name of written) expect(channelOf(name), name).toBe(channel);
  }
  for (const other of ['', 'front', 'left', 'L', '1', 'sub', 'constructor', 'FLX']) {
    expect(channelOf(other), other).toBeUndefined();
  }
});

test('a role said is the role shown', () => {
  for (const text of [
    'profile',
    'unit',
    'channel',
    'step',
    'repeat',
    'note',
    'hz',
    'hz kHz',
    'volts mV',
    'volts dBu FL 63Hz step12 repeat2',
    'thd ratio',
    'thd % RL',
  ]) {
    const role = roleNamed(text);
    expect(typeof role === 'string' ? role : roleText(role)).toBe(text);
  }
  expect(roleNamed('volts furlongs')).toBe('“furlongs” is not understood there.');
  expect(roleNamed('loudness')).toMatch(/says nothing/);
});
