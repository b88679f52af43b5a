import type { Sound } from './sound.ts';

/** Bytes that are not a WAV file of the kind we read. The message says what was wrong. */
export class WavError extends Error {
  override readonly name = 'WavError';
}

const PCM = 1;
/** The format code is then in the extension's GUID, whose first two bytes are the plain code. */
const EXTENSIBLE = 0xfffe;

interface Format {
  readonly channels: number;
  readonly rate: number;
}

/**
 * Reads a RIFF WAV file with 16-bit PCM of any rate; several channels are averaged to one.
 * A data chunk longer than the file (a stream that was never closed) is read as far as it goes.
 * @throws WavError when the bytes are something else.
 */
export function decodeWav(bytes: Uint8Array): Sound {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 12 || tag(view, 0) !== 'RIFF' || tag(view, 8) !== 'WAVE')
    throw new WavError(`Not a WAV file: it does not begin with RIFF and WAVE (${bytes.length} bytes).`);

  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length;) {
    const length = view.getUint32(at + 4, true);
    const body = new DataView(view.buffer, view.byteOffset + at + 8, Math.min(length, bytes.length - at - 8));
    if (tag(view, at) === 'fmt ') format = readFormat(body);
    if (tag(view, at) === 'data') {
      if (!format) throw new WavError('The WAV file has its data before its format.');
      return { samples: readSamples(body, format.channels), rate: format.rate };
    }
    at += 8 + length + (length % 2);
  }
  throw new WavError('The WAV file has no data chunk.');
}

function tag(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
}

function readFormat(body: DataView): Format {
  if (body.byteLength < 16) throw new WavError('The format chunk of the WAV file is cut off.');
  const code = body.getUint16(0, true);
  const encoding = code === EXTENSIBLE && body.byteLength >= 26 ? body.getUint16(24, true) : code;
  const channels = body.getUint16(2, true);
  const rate = body.getUint32(4, true);
  const bits = body.getUint16(14, true);
  if (encoding !== PCM || bits !== 16)
    throw new WavError(`Only 16-bit PCM is read; this WAV file has encoding ${encoding} with ${bits} bits.`);
  if (channels < 1 || rate < 1) throw new WavError(`A WAV file with ${channels} channels at ${rate} Hz has no sound.`);
  return { channels, rate };
}

function readSamples(body: DataView, channels: number): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(Math.floor(body.byteLength / 2 / channels));
  for (let i = 0; i < samples.length; i++) {
    let sum = 0;
    for (let channel = 0; channel < channels; channel++) sum += body.getInt16((i * channels + channel) * 2, true);
    samples[i] = sum / channels / 32768;
  }
  return samples;
}
