import { readFile, writeFile } from 'node:fs/promises';
import type { Sound } from '../../src/speaking/sound.ts';
import { decodeWav } from '../../src/speaking/wav.ts';

/** Reads a 16-bit PCM WAV file of any rate; stereo becomes mono. @throws Error that names the file. */
export async function readWav(path: string): Promise<Sound> {
  const bytes = await readFile(path);
  try {
    return decodeWav(bytes);
  } catch (error) {
    throw new Error(`${path}: ${String(error)}`, { cause: error });
  }
}

/** Writes a mono 16-bit PCM WAV file. Samples beyond -1 to 1 are clipped, as a sound card would. */
export const writeWav = (path: string, sound: Sound): Promise<void> => writeFile(path, encodeWav(sound));

const HEADER = 44;
const PCM = 1;

export function encodeWav({ samples, rate }: Sound): Uint8Array {
  const bytes = new Uint8Array(HEADER + samples.length * 2);
  const view = new DataView(bytes.buffer);
  const tag = (at: number, text: string): void => bytes.set(new TextEncoder().encode(text), at);
  tag(0, 'RIFF');
  view.setUint32(4, bytes.length - 8, true);
  tag(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, PCM, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * 2, true);
  view.setUint16(32, 2, true);
  view.setUint16(34, 16, true);
  tag(36, 'data');
  view.setUint32(40, samples.length * 2, true);
  samples.forEach((sample, i) => {
    const scaled = Math.round(sample * 32768);
    view.setInt16(HEADER + i * 2, Math.max(-32768, Math.min(32767, scaled)), true);
  });
  return bytes;
}
