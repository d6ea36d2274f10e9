import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeWav, UnusableRecording } from '../../src/measure/recording/index.ts';
import { type BitDepth, toneOf, wavBytes } from './signals.ts';

/** The refusal of bytes as a WAV file. */
function refusal(bytes: Uint8Array, take?: 'left' | 'right'): string {
  try {
    decodeWav(bytes, take);
  } catch (error) {
    if (error instanceof UnusableRecording) return `${error.reason}: ${error.message} ${error.help}`;
    throw error;
  }
  return 'decoded';
}

const tone = toneOf(1000, { seconds: 0.1 });

describe('samples come back as they went in', () => {
  test.each([
    ['16', 44_100, 2 ** -16],
    ['24', 48_000, 2 ** -24],
    ['32', 96_000, 2 ** -32],
    ['32f', 48_000, 2 ** -25],
  ] as [BitDepth, number, number][])('%s bits at %s Hz', (depth, rate, within) => {
    const decoded = decodeWav(wavBytes([tone], depth, rate));
    expect(decoded.sampleRateHz).toBe(rate);
    expect(decoded.samples).toHaveLength(tone.length);
    const off = decoded.samples.map((sample, n) => Math.abs(sample - (tone[n] ?? 0)));
    expect(Math.max(...off)).toBeLessThanOrEqual(within);
  });
  test('each channel of a stereo file', () => {
    const bytes = wavBytes([tone, tone.map((sample) => sample / 4)], '24');
    const peak = (take: 'left' | 'right'): number => Math.max(...decodeWav(bytes, take).samples);
    expect(peak('left')).toBeCloseTo(0.5, 2);
    expect(peak('right')).toBeCloseTo(0.125, 2);
  });
  test('an extensible header names the real code further on (WAVE_FORMAT_EXTENSIBLE)', () => {
    const plain = wavBytes([tone], '24');
    const bytes = new Uint8Array(plain.length + 24);
    bytes.set(plain.subarray(0, 36));
    bytes.set(plain.subarray(36), 60);
    const view = new DataView(bytes.buffer);
    view.setUint32(4, bytes.length - 8, true);
    view.setUint32(16, 40, true);
    view.setUint16(20, 0xfffe, true);
    view.setUint16(36, 22, true);
    view.setUint16(38, 24, true);
    view.setUint16(44, 1, true);
    expect(decodeWav(bytes).samples).toEqual(decodeWav(plain).samples);
  });
});

describe('what cannot be used says so', () => {
  const whole = wavBytes([tone], '24');
  const changed = (at: number, ...values: number[]): Uint8Array => {
    const bytes = Uint8Array.from(whole);
    bytes.set(values, at);
    return bytes;
  };
  const letters = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

  test.each([
    ['a text file', new TextEncoder().encode('hz,volts\n1000,1.0\n'), 'not-a-wav: This is not a WAV file.'],
    ['nothing', new Uint8Array(0), 'not-a-wav: This is an empty file, not a WAV file.'],
    ['FLAC', changed(0, ...letters('fLaC')), 'not-a-wav: This is a FLAC file, not a WAV file.'],
    ['MP3', changed(0, ...letters('ID3')), 'not-a-wav: This is an MP3 file, not a WAV file.'],
    [
      'half of it',
      whole.subarray(0, whole.length / 2),
      'truncated: The file is truncated: its header announces 0.10 s, and 0.05 s of sound are there.',
    ],
    [
      'the first 40 bytes',
      whole.subarray(0, 40),
      'truncated: The file begins like a WAV file, but holds no sound that can be read.',
    ],
    [
      'a recorder that was switched off',
      changed(40, 0, 0, 0, 0),
      'truncated: The file is truncated: the header was never completed, and 0.10 s of sound are there.',
    ],
    [
      'a compressed one',
      changed(20, 0x55, 0),
      'coding: The samples of this WAV file cannot be used: format 85, perhaps compressed.',
    ],
    ['8 bits', changed(34, 8), 'coding: The samples of this WAV file cannot be used: 8-bit PCM.'],
    [
      'a header that contradicts itself',
      changed(32, 7),
      'not-a-wav: The header contradicts itself: 1 channels, 24 bits, 7 bytes a frame, 48000 Hz.',
    ],
  ])('%s', (_, bytes, expected) => {
    expect(refusal(bytes)).toContain(expected);
  });
  test('two channels, none named: both levels, and how to choose', () => {
    expect(refusal(wavBytes([tone, tone.map(() => 0)]))).toBe(
      'two-channels: The file has two channels: left −6 dBFS, right silent. Say which was wired to the output: --take left or --take right.',
    );
  });
  test('more channels', () => {
    expect(refusal(wavBytes([tone, tone, tone]), 'left')).toContain('two-channels: The file has 3 channels.');
  });
  test('the right channel of a mono file', () => {
    expect(refusal(whole, 'right')).toContain('no-such-channel: The file has one channel only');
  });
  test('samples that are no numbers', () => {
    const samples = Float64Array.from(tone);
    samples[100] = Number.NaN;
    expect(refusal(wavBytes([samples], '32f'))).toContain(
      'not-numbers: The file holds samples that are no numbers.',
    );
  });
});

describe('damaged files neither crash nor hang', () => {
  const decodesOrRefuses = (bytes: Uint8Array): void => {
    expect(refusal(bytes)).toMatch(/^(decoded|[a-z-]+: .)/);
  };
  test('random bytes', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 500 }), decodesOrRefuses), { numRuns: 300 });
  });
  test('random bytes behind the letters of a WAV file', () => {
    const behind = fc.uint8Array({ maxLength: 300 }).map((rest) => {
      const bytes = new Uint8Array(12 + rest.length);
      bytes.set(new TextEncoder().encode('RIFF\u0001\u0001\u0001\u0001WAVE'));
      bytes.set(rest, 12);
      return bytes;
    });
    fc.assert(fc.property(behind, decodesOrRefuses), { numRuns: 300 });
  });
  test('a real file with some bytes changed', () => {
    const whole = wavBytes([toneOf(1000, { seconds: 0.01 })], '16');
    const changes = fc.array(fc.tuple(fc.nat(whole.length - 1), fc.nat(255)), { minLength: 1, maxLength: 8 });
    const damaged = changes.map((list) => {
      const bytes = Uint8Array.from(whole);
      for (const [at, value] of list) bytes[at % 60] = value;
      return bytes;
    });
    fc.assert(fc.property(damaged, decodesOrRefuses), { numRuns: 300 });
  });
  test('ten thousand lists of chunks before the sound take no time', () => {
    const sound = wavBytes([tone], '16');
    const lists = new Uint8Array(12 * 10_000);
    for (let at = 0; at < lists.length; at += 12) {
      lists.set(new TextEncoder().encode('LIST\u0004\0\0\0INFO'), at);
    }
    const bytes = new Uint8Array(sound.length + lists.length);
    bytes.set(sound.subarray(0, 36));
    bytes.set(lists, 36);
    bytes.set(sound.subarray(36), 36 + lists.length);
    const began = process.cpuUsage();
    expect(decodeWav(bytes).samples).toHaveLength(tone.length);
    // Of the processor: what else runs on the machine does not count.
    const { user, system } = process.cpuUsage(began);
    expect((user + system) / 1000).toBeLessThan(2000);
  });
});
