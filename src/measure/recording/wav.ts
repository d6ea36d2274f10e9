/** A WAV file's bytes as samples, full scale = 1. */
import wavefile from 'wavefile';
import { formatNumber } from '../format.ts';
import { type WavLayout, wavLayout } from './riff.ts';
import { UnusableRecording } from './unusable.ts';
import { sumOfSquares } from './windows.ts';

/** The two channels a stereo file has. */
export const stereoChannels = ['left', 'right'] as const;
export type StereoChannel = (typeof stereoChannels)[number];

/** One channel of a recording. */
export interface Recording {
  readonly sampleRateHz: number;
  /** Samples, full scale = 1. Float files may go beyond. */
  readonly samples: Float64Array;
}

/**
 * Decodes one channel of a WAV file: PCM of 16, 24 or 32 bits, float of 32 or 64, any sample rate from 8 kHz.
 * `take` says which channel of a stereo file.
 * @throws UnusableRecording where it is no such file, or the channel is not named or not there.
 */
export function decodeWav(bytes: Uint8Array, take?: StereoChannel): Recording {
  const layout = wavLayout(bytes);
  const { channels, sampleRateHz } = layout;
  if (channels > 2) {
    throw new UnusableRecording(
      'two-channels',
      `The file has ${channels} channels.`,
      'Export the one that was wired to the output as a mono WAV file.',
    );
  }
  if (channels === 1 && take !== undefined) {
    throw new UnusableRecording(
      'no-such-channel',
      `The file has one channel only, so there is no ${take} one to take.`,
      'Leave --take out.',
    );
  }
  const decoded = decode(layout);
  if (channels === 2 && take === undefined) {
    const [left, right] = decoded.map((samples) => levelWords(samples));
    throw new UnusableRecording(
      'two-channels',
      `The file has two channels: left ${left}, right ${right}.`,
      'Say which was wired to the output: --take left or --take right.',
    );
  }
  const samples = decoded[take === 'right' ? 1 : 0] ?? new Float64Array(0);
  if (!samples.every(Number.isFinite)) {
    throw new UnusableRecording(
      'not-numbers',
      'The file holds samples that are no numbers.',
      'The recording program wrote it wrongly. Record again as 24-bit PCM.',
    );
  }
  return { sampleRateHz, samples };
}

/**
 * The channels' samples. The library gets a file of two chunks made afresh: its own reader walks lists of
 * chunks so that a damaged file can keep it busy for ever.
 */
function decode(layout: WavLayout): Float64Array[] {
  const { channels, sampleRateHz, bits, coding, bigEndian, samples } = layout;
  const file = new Uint8Array(44 + samples.length);
  const view = new DataView(file.buffer);
  const put = (at: number, letters: string): void => {
    for (let i = 0; i < letters.length; i += 1) file[at + i] = letters.charCodeAt(i);
  };
  const little = !bigEndian;
  put(0, bigEndian ? 'RIFX' : 'RIFF');
  view.setUint32(4, 36 + samples.length, little);
  put(8, 'WAVEfmt ');
  view.setUint32(16, 16, little);
  view.setUint16(20, coding === 'float' ? 3 : 1, little);
  view.setUint16(22, channels, little);
  view.setUint32(24, sampleRateHz, little);
  view.setUint32(28, (sampleRateHz * channels * bits) / 8, little);
  view.setUint16(32, (channels * bits) / 8, little);
  view.setUint16(34, bits, little);
  put(36, 'data');
  view.setUint32(40, samples.length, little);
  file.set(samples, 44);

  const wav = new wavefile.WaveFile(file);
  const interleaved = wav.getSamples(true, Float64Array);
  const scale = coding === 'float' ? 1 : 2 ** (1 - bits);
  return Array.from({ length: channels }, (_, channel) => {
    const one = new Float64Array(Math.floor(interleaved.length / channels));
    for (let n = 0; n < one.length; n += 1) one[n] = (interleaved[n * channels + channel] ?? 0) * scale;
    return one;
  });
}

function levelWords(samples: Float64Array): string {
  const meanSquare = sumOfSquares(samples) / Math.max(1, samples.length);
  // 0 dBFS is a full-scale sine, whose mean square is 1/2 (AES17).
  return meanSquare > 0 ? `${formatNumber(10 * Math.log10(2 * meanSquare), 0)} dBFS` : 'silent';
}
