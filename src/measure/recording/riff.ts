/** The chunks of a WAV file (RIFF, and RF64 of EBU Tech 3306), read without trusting their sizes. */
import { UnusableRecording } from './unusable.ts';

/** How the samples of a WAV file are coded, and where they are. */
export interface WavLayout {
  readonly bigEndian: boolean;
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bits: number;
  readonly coding: 'integer' | 'float';
  /** The bytes of the samples, whole frames only. */
  readonly samples: Uint8Array;
}

/** Format codes of the `fmt ` chunk: plain PCM, IEEE float, and the one that names the real code further on. */
const formatCodes = { integer: 1, float: 3, extensible: 0xfffe } as const;

const readable = 'Export it as a WAV file: PCM of 16, 24 or 32 bits, or 32-bit float.';

/**
 * Finds format and samples of a WAV file.
 * @throws UnusableRecording where the bytes are no WAV file, a truncated one, or one coded otherwise.
 */
export function wavLayout(bytes: Uint8Array): WavLayout {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const container = text(bytes, 0);
  if (!['RIFF', 'RIFX', 'RF64'].includes(container) || text(bytes, 8) !== 'WAVE') {
    const name = otherFormat(bytes);
    throw new UnusableRecording(
      'not-a-wav',
      name ? `This is ${name}, not a WAV file.` : 'This is not a WAV file.',
      readable,
    );
  }
  const bigEndian = container === 'RIFX';
  const little = !bigEndian;
  let format: Format | undefined;
  let longDataBytes: number | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const id = text(bytes, at);
    const size = view.getUint32(at + 4, little);
    const start = at + 8;
    if (id === 'ds64' && start + 16 <= bytes.length) {
      longDataBytes = view.getUint32(start + 8, little) + 2 ** 32 * view.getUint32(start + 12, little);
    }
    if (id === 'fmt ' && size >= 16 && start + size <= bytes.length)
      format = readFormat(view, start, size, little);
    if (id === 'data') {
      if (!format) break;
      const known = size === 0xffff_ffff && longDataBytes !== undefined ? longDataBytes : size;
      return { ...format, bigEndian, samples: wholeSamples(bytes, start, known, format) };
    }
    at = start + size + (size % 2);
  }
  throw new UnusableRecording(
    'truncated',
    'The file begins like a WAV file, but holds no sound that can be read.',
    'It was not written to its end, or was damaged in copying. Copy it again from the recorder, or record again.',
  );
}

interface Format {
  readonly channels: number;
  readonly sampleRateHz: number;
  readonly bits: number;
  readonly coding: 'integer' | 'float';
}

function readFormat(view: DataView, start: number, size: number, little: boolean): Format {
  const outer = view.getUint16(start, little);
  const code = outer === formatCodes.extensible && size >= 26 ? view.getUint16(start + 24, little) : outer;
  const channels = view.getUint16(start + 2, little);
  const sampleRateHz = view.getUint32(start + 4, little);
  const frameBytes = view.getUint16(start + 12, little);
  const bits = view.getUint16(start + 14, little);
  const coding = code === formatCodes.integer ? 'integer' : code === formatCodes.float ? 'float' : undefined;
  const bitsAllowed = coding === 'integer' ? [16, 24, 32] : [32, 64];
  if (!coding || !bitsAllowed.includes(bits)) {
    const what = coding
      ? `${bits}-bit ${coding === 'float' ? 'float' : 'PCM'}`
      : `format ${code}, perhaps compressed`;
    throw new UnusableRecording('coding', `The samples of this WAV file cannot be used: ${what}.`, readable);
  }
  if (channels < 1 || frameBytes !== (channels * bits) / 8 || sampleRateHz < 8000 || sampleRateHz > 768_000) {
    throw new UnusableRecording(
      'not-a-wav',
      `The header contradicts itself: ${channels} channels, ${bits} bits, ${frameBytes} bytes a frame, ${sampleRateHz} Hz.`,
      readable,
    );
  }
  return { channels, sampleRateHz, bits, coding };
}

function wholeSamples(bytes: Uint8Array, start: number, size: number, format: Format): Uint8Array {
  const frameBytes = (format.channels * format.bits) / 8;
  const seconds = (count: number): string => (count / frameBytes / format.sampleRateHz).toFixed(2);
  const held = bytes.length - start;
  if (size > held || (size === 0 && held >= frameBytes)) {
    // A recorder writes the length last; 0 or the largest number stands until then.
    const said =
      size === 0 || size >= 0x7fff_ffff
        ? 'the header was never completed'
        : `its header announces ${seconds(size)} s`;
    throw new UnusableRecording(
      'truncated',
      `The file is truncated: ${said}, and ${seconds(held)} s of sound are there.`,
      'It was cut off while it was recorded or copied. Copy it again from the recorder, or record again.',
    );
  }
  return bytes.subarray(start, start + size - (size % frameBytes));
}

function text(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

/** The name of another audio format by its first bytes, for those who chose the wrong file. */
function otherFormat(bytes: Uint8Array): string | undefined {
  const start = text(bytes, 0);
  if (start === 'fLaC') return 'a FLAC file';
  if (start === 'OggS') return 'an Ogg file';
  if (start === 'FORM') return 'an AIFF file';
  if (start.startsWith('ID3') || (bytes[0] === 0xff && ((bytes[1] ?? 0) & 0xe6) === 0xe2))
    return 'an MP3 file';
  if (text(bytes, 4) === 'ftyp') return 'an MP4 or M4A file';
  return bytes.length === 0 ? 'an empty file' : undefined;
}
