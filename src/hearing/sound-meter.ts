import { decibels, NoiseFloor, powerOf, powerWithoutOffset } from './noise-floor.ts';
import type { AudioChunk, Word } from './types.ts';
import { UNKNOWN } from './recogniser.ts';

/** What the ear is given, in dBFS (0: a full-scale square wave). Nothing here is a word's meaning. */
export interface Sound {
  /** Of the newest 0.1 s. */
  readonly level: number;
  /** Of the background, see `NoiseFloor`; null in the first half second. */
  readonly noise: number | null;
  /** Of the last utterances, without the background; null before the first. */
  readonly speech: number | null;
  /** Samples stood at full scale within the last three seconds: what was said then is distorted. */
  readonly isClipped: boolean;
}

/** How far speech stands above the background, in dB; null where one of them is not known yet. */
export const signalToNoise = ({ noise, speech }: Pick<Sound, 'noise' | 'speech'>): number | null =>
  noise === null || speech === null ? null : speech - noise;

const FRAME_MS = 20;
/** An utterance is known a second after its end, and may be twenty seconds long. */
const MEMORY_FRAMES = 1250;
/** Loud enough to be of a vowel, not the loudest: a click is no speech. */
const SPEECH_QUANTILE = 0.8;
/** Of so many utterances the middle one counts: one cough is no change of voice. */
const UTTERANCES = 5;
/** What stands no more than this out of the background is not measured any finer, in dB. */
const LEAST_SNR_DB = -10;
/** Sound cards differ in their last steps. */
const FULL_SCALE = 0.99;
/** A single sample may be a true peak. */
const CLIPPED_SAMPLES = 3;
const CLIPPED_MS = 3000;

/** Measures sound and speech in it. Pure but for what it remembers: no clock, all times are those of the chunks. */
export class SoundMeter {
  readonly #sampleRate: number;
  readonly #frameLength: number;
  readonly #floor = new NoiseFloor();
  readonly #frames: { readonly time: number; readonly power: number }[] = [];
  /** dBFS, oldest first. */
  readonly #spoken: number[] = [];
  #rest: AudioChunk | null = null;
  #level = decibels(0);
  #noise: number | null = null;
  #clipped = -Infinity;

  /** @param sampleRate in hertz */
  constructor(sampleRate: number) {
    this.#sampleRate = sampleRate;
    this.#frameLength = Math.round((sampleRate * FRAME_MS) / 1000);
  }

  /** Chunks have to come in order of time; between them may be gaps. */
  take(chunk: AudioChunk): Sound {
    const { samples, time } = this.#withRest(chunk);
    const end = time + this.#lasting(samples.length);
    const atFullScale = chunk.samples.reduce((count, sample) => count + (Math.abs(sample) >= FULL_SCALE ? 1 : 0), 0);
    if (atFullScale >= CLIPPED_SAMPLES) this.#clipped = end;
    let at = 0;
    for (; at + this.#frameLength <= samples.length; at += this.#frameLength)
      this.#takeFrame(samples.subarray(at, at + this.#frameLength), time + this.#lasting(at));
    this.#rest = { samples: samples.slice(at), time: time + this.#lasting(at) };
    this.#frames.splice(0, this.#frames.length - MEMORY_FRAMES);
    return {
      level: this.#level,
      noise: this.#noise,
      speech: median(this.#spoken),
      isClipped: end - this.#clipped < CLIPPED_MS,
    };
  }

  /**
   * Tells what was heard as speech. What is in no phrase of the list may have been any noise, and does not count.
   * @returns how far it stood above the background, in dB; null where that is not known
   */
  spoke(words: readonly Word[]): number | null {
    const known = words.filter(({ word }) => word !== UNKNOWN);
    const powers = this.#frames
      .filter(({ time }) => known.some(({ start, end }) => time >= start && time + FRAME_MS <= end))
      .map(({ power }) => power)
      .sort((a, b) => a - b);
    const power = powers[Math.floor(SPEECH_QUANTILE * (powers.length - 1))];
    if (power === undefined || this.#noise === null) return null;
    const noise = powerOf(this.#noise);
    const speech = decibels(Math.max(power - noise, noise * powerOf(LEAST_SNR_DB)));
    this.#spoken.push(speech);
    this.#spoken.splice(0, this.#spoken.length - UTTERANCES);
    return speech - this.#noise;
  }

  #lasting(samples: number): number {
    return (samples / this.#sampleRate) * 1000;
  }

  /** A frame goes on in the next chunk, unless some audio is missing between them. */
  #withRest({ samples, time }: AudioChunk): AudioChunk {
    const rest = this.#rest;
    if (!rest || Math.abs(rest.time + this.#lasting(rest.samples.length) - time) > FRAME_MS) return { samples, time };
    const joined = new Float32Array(rest.samples.length + samples.length);
    joined.set(rest.samples);
    joined.set(samples, rest.samples.length);
    return { samples: joined, time: rest.time };
  }

  #takeFrame(samples: Float32Array, time: number): void {
    const power = powerWithoutOffset(samples);
    // A room is never without any sound: a device that gives zeros says nothing of it.
    if (!(power > 0)) return;
    this.#frames.push({ time, power });
    const { level, noise } = this.#floor.take(power);
    this.#level = level;
    this.#noise = noise;
  }
}

function median(values: readonly number[]): number | null {
  return values.toSorted((a, b) => a - b)[Math.floor((values.length - 1) / 2)] ?? null;
}
