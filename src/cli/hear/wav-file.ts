/** The door for recordings: a WAV file from anywhere becomes mono sound, or is refused with what is wrong and the mend. */
import { open, type FileHandle } from 'node:fs/promises';
import type { Sound } from '../../speaking/sound.ts';
import { NotUsable, openingTrouble } from './refusal.ts';
import { resample } from './resample.ts';
import { wavLayout, type ReadAt, type WavFormat, type WavLayout } from './wav-format.ts';

/** A recording, and what is odd about it though it can be used. */
export interface Recorded {
  readonly sound: Sound;
  readonly notes: readonly string[];
}

/** Longer ones are refused: all samples of one are held at once, and hours of sound are no utterance. */
export const LONGEST_MINUTES = 10;
/** Shorter than any word. */
const SHORTEST_MS = 100;
/** The engine takes sound of more than its model's rate, but not of less. */
const ENGINE_RATE = 16_000;
/** Float samples beyond this are on another scale than −1 to 1. */
const LOUDEST_FLOAT = 4;
/** Bytes read at a time; any sample of any channel fits many times. */
const BLOCK = 2 ** 20;

/**
 * Reads a WAV file. Channels are averaged to one, and a rate under 16 kHz is raised to it.
 * @throws NotUsable for everything that is no recording of 0.1 s to 10 minutes with sound in it
 */
export async function readRecording(path: string): Promise<Recorded> {
  let file: FileHandle | null = null;
  try {
    file = await open(path, 'r');
    const stat = await file.stat();
    if (!stat.isFile()) throw new NotUsable('it is no plain file; name a WAV file');
    return await recordedIn(readerOf(file), stat.size);
  } catch (error) {
    throw error instanceof NotUsable ? error : new NotUsable(openingTrouble(error));
  } finally {
    await file?.close();
  }
}

const readerOf =
  (file: FileHandle): ReadAt =>
  async (from, length) => {
    const bytes = new Uint8Array(length);
    let filled = 0;
    while (filled < length) {
      const { bytesRead } = await file.read(bytes, filled, length - filled, from + filled);
      if (bytesRead === 0) break;
      filled += bytesRead;
    }
    return new DataView(bytes.buffer, 0, filled);
  };

/** The same of bytes in memory. */
export const readRecordingBytes = (bytes: Uint8Array): Promise<Recorded> =>
  recordedIn((from, length) => {
    const part = Uint8Array.from(bytes.subarray(from, from + length));
    return Promise.resolve(new DataView(part.buffer));
  }, bytes.length);

async function recordedIn(readAt: ReadAt, size: number): Promise<Recorded> {
  const layout = await wavLayout(readAt, size);
  const { rate } = layout.format;
  const count = Math.floor(layout.bytes / frameBytes(layout.format));
  checkLength(count, rate);
  const read = await readSamples(readAt, layout, count);
  if (read.peak > LOUDEST_FLOAT)
    throw new NotUsable(`its float samples reach ${read.peak.toPrecision(3)}; scale them to −1 … 1`);
  if (read.samples.every((sample) => sample === read.samples[0]))
    throw new NotUsable('it holds no sound, all samples are equal; see that the microphone is on, and record again');
  const sound = { samples: read.samples, rate };
  return { sound: rate < ENGINE_RATE ? resample(sound, ENGINE_RATE) : sound, notes: notesOf(layout, count, read) };
}

function checkLength(count: number, rate: number): void {
  if (count === 0) throw new NotUsable('it holds no samples; record it again');
  if (count / rate < SHORTEST_MS / 1000)
    throw new NotUsable(
      `it is too short to hold a word: ${count === 1 ? '1 sample' : `${count} samples`}, ${((count / rate) * 1000).toPrecision(2)} ms; record at least ${SHORTEST_MS} ms`,
    );
  const minutes = count / rate / 60;
  if (minutes > LONGEST_MINUTES)
    throw new NotUsable(
      `it is ${minutes < 90 ? `${minutes.toFixed(1)} minutes` : `${(minutes / 60).toFixed(1)} hours`} long; at most ${LONGEST_MINUTES} minutes are decoded; cut it into pieces`,
    );
}

interface Read {
  readonly samples: Float32Array<ArrayBuffer>;
  /** Largest absolute value of any channel. */
  readonly peak: number;
  /** Samples in runs at full scale. */
  readonly clipped: number;
  /** Float samples that were no number, and became 0. */
  readonly noNumber: number;
}

/** Fewer at full scale in a row are a loud sound that just fits. */
const CLIPPED_RUN = 3;

async function readSamples(readAt: ReadAt, { format, from }: WavLayout, count: number): Promise<Read> {
  const { channels, bits } = format;
  const value = valueReader(format);
  const full = format.encoding === 'float' ? 1 : 1 - 2 ** (1 - bits);
  const samples = new Float32Array(count);
  const runs = new Array<number>(channels).fill(0);
  let [peak, clipped, noNumber] = [0, 0, 0];
  const frame = frameBytes(format);
  const block = Math.max(1, Math.floor(BLOCK / frame));
  for (let at = 0; at < count; at += block) {
    const view = await readAt(from + at * frame, Math.min(block, count - at) * frame);
    const frames = Math.floor(view.byteLength / frame);
    for (let i = 0; i < frames; i++) {
      let sum = 0;
      for (let channel = 0; channel < channels; channel++) {
        const read = value(view, i * frame + (channel * bits) / 8);
        const sample = Number.isFinite(read) ? read : 0;
        if (sample !== read) noNumber++;
        const size = Math.abs(sample);
        peak = Math.max(peak, size);
        const run = size >= full ? (runs[channel] ?? 0) + 1 : 0;
        runs[channel] = run;
        if (run >= CLIPPED_RUN) clipped += run === CLIPPED_RUN ? CLIPPED_RUN : 1;
        sum += sample;
      }
      samples[at + i] = sum / channels;
    }
  }
  return { samples, peak, clipped, noNumber };
}

const frameBytes = ({ channels, bits }: WavFormat): number => (channels * bits) / 8;

/** One sample as a part of full scale. */
function valueReader({ encoding, bits }: WavFormat): (view: DataView, at: number) => number {
  switch (bits) {
    case 8:
      return (view, at) => (view.getUint8(at) - 128) / 128;
    case 16:
      return (view, at) => view.getInt16(at, true) / 32_768;
    case 24:
      return (view, at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 65_536) / 8_388_608;
    case 32:
      return encoding === 'float'
        ? (view, at) => view.getFloat32(at, true)
        : (view, at) => view.getInt32(at, true) / 2_147_483_648;
    case 64:
      return (view, at) => view.getFloat64(at, true);
  }
}

function notesOf({ format, missing }: WavLayout, count: number, { clipped, noNumber }: Read): readonly string[] {
  const seconds = (samples: number): string => `${(samples / format.rate).toFixed(2)} s`;
  return [
    ...(missing > 0
      ? [
          `cut off: its header promises ${seconds(count + missing / frameBytes(format))}, ${seconds(count)} are there and were decoded`,
        ]
      : []),
    ...(clipped > 0 ? [`clipped: ${clipped} samples at full scale; decoded all the same, record it quieter`] : []),
    ...(noNumber > 0 ? [`${noNumber} samples are no numbers and were taken for silence`] : []),
  ];
}
