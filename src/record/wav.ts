/** Sound as a WAV file: 16-bit PCM, one channel, nothing lost and nothing compressed. */

const HEADER = 44;
const PCM = 1;
const BYTES_PER_SAMPLE = 2;

/** @param rate in hertz */
export function wavFile(samples: Int16Array, rate: number): Uint8Array<ArrayBuffer> {
  const data = samples.length * BYTES_PER_SAMPLE;
  const bytes = new Uint8Array(HEADER + data);
  const view = new DataView(bytes.buffer);
  const tag = (at: number, text: string): void => bytes.set(new TextEncoder().encode(text), at);
  tag(0, 'RIFF');
  view.setUint32(4, HEADER - 8 + data, true);
  tag(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, PCM, true);
  view.setUint16(22, 1, true);
  view.setUint32(24, rate, true);
  view.setUint32(28, rate * BYTES_PER_SAMPLE, true);
  view.setUint16(32, BYTES_PER_SAMPLE, true);
  view.setUint16(34, 8 * BYTES_PER_SAMPLE, true);
  tag(36, 'data');
  view.setUint32(40, data, true);
  for (const [i, sample] of samples.entries()) view.setInt16(HEADER + i * BYTES_PER_SAMPLE, sample, true);
  return bytes;
}
