/** Workshop noise, made by code from a seed: nothing recorded, and the same on every machine. */
import type { Sound } from '../../src/speaking/sound.ts';

/** A number from 0 up to, but not including, 1. */
export type Random = () => number;

/** mulberry32: a small generator with 32 bits of state, good enough for noise. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A compressor's hum over a coloured bed, with hammer blows and an air line's hiss; root mean square 0.1. */
export function workshopNoise(seconds: number, rate: number, seed: number): Sound {
  const random = seededRandom(seed);
  const length = Math.round(seconds * rate);
  const between = (low: number, high: number): number => low + (high - low) * random();
  const parts = [
    { samples: bed(length, rate, random), level: 1 },
    { samples: hum(length, rate, random), level: between(0.3, 1) },
    { samples: hammer(length, rate, random), level: between(0.5, 1.2) },
    { samples: hiss(length, rate, random), level: between(0.3, 1) },
  ];
  const samples = new Float32Array(length);
  for (const part of parts) addScaled(samples, part.samples, part.level / (rms(part.samples) || 1));
  const scale = 0.1 / (rms(samples) || 1);
  return { samples: samples.map((sample) => sample * scale), rate };
}

/**
 * The level of the speech in a sound that also has pauses: the root mean square of the 20 ms frame at the 80th
 * percentile of energy, so that pauses do not count and single clicks do not either.
 */
export function activeLevel({ samples, rate }: Sound): number {
  const frame = Math.round(0.02 * rate);
  const energies: number[] = [];
  for (let at = 0; at + frame <= samples.length; at += frame) energies.push(rms(samples.subarray(at, at + frame)) ** 2);
  energies.sort((a, b) => a - b);
  return Math.sqrt(energies[Math.floor(0.8 * (energies.length - 1))] ?? 0);
}

/**
 * Adds noise to a sound so that the active speech level lies `snrDb` above the noise. The noise is repeated or cut to
 * the sound's length. A mix that would clip is turned down as a whole, which keeps the ratio.
 * @throws RangeError when the rates differ or the noise is empty.
 */
export function mix(sound: Sound, noise: Sound, snrDb: number): Sound {
  if (noise.rate !== sound.rate)
    throw new RangeError(`The noise is at ${noise.rate} Hz, the sound at ${sound.rate} Hz.`);
  if (noise.samples.length === 0) throw new RangeError('The noise is empty.');
  const cover = Float32Array.from(sound.samples, (_, i) => noise.samples[i % noise.samples.length] ?? 0);
  const samples = sound.samples.slice();
  addScaled(samples, cover, (activeLevel(sound) * 10 ** (-snrDb / 20)) / (rms(cover) || 1));
  const peak = samples.reduce((largest, sample) => Math.max(largest, Math.abs(sample)), 0);
  return { samples: peak > 1 ? samples.map((sample) => sample / peak) : samples, rate: sound.rate };
}

/** White noise through a one-pole low-pass: flat below the corner, falling 6 dB an octave above. */
function bed(length: number, rate: number, random: Random): Float32Array {
  const corner = 150 + 650 * random();
  const keep = Math.exp((-2 * Math.PI * corner) / rate);
  let last = 0;
  return Float32Array.from({ length }, () => (last = keep * last + (1 - keep) * gaussian(random)));
}

/** A motor: a fundamental of 24 to 60 Hz and its harmonics, swelling and fading a few times a second. */
function hum(length: number, rate: number, random: Random): Float32Array {
  const fundamental = 24 + 36 * random();
  const swell = 1 + 7 * random();
  const harmonics = Array.from({ length: 13 }, (_, i) => ({
    order: i + 1,
    phase: 2 * Math.PI * random(),
    size: (0.2 + 0.8 * random()) / (i + 1) ** 0.6,
  }));
  return Float32Array.from({ length }, (_, i) => {
    const turn = (2 * Math.PI * i) / rate;
    const tone = harmonics.reduce((sum, h) => sum + h.size * Math.sin(turn * fundamental * h.order + h.phase), 0);
    return tone * (1 + 0.4 * Math.sin(turn * swell));
  });
}

/** One to three blows a second: five ringing modes that die away within a quarter of a second. */
function hammer(length: number, rate: number, random: Random): Float32Array {
  const samples = new Float32Array(length);
  const ring = Math.round(0.25 * rate);
  const blows = Math.max(1, Math.round((1 + 2 * random()) * (length / rate)));
  for (let blow = 0; blow < blows; blow++) {
    const at = Math.floor(random() * length);
    for (let mode = 0; mode < 5; mode++) {
      const decay = 15 + 65 * random();
      const turn = (2 * Math.PI * (250 + 4250 * random())) / rate;
      const size = gaussian(random);
      for (let i = 0; i < ring && at + i < length; i++)
        samples[at + i] = (samples[at + i] ?? 0) + size * Math.exp((-decay * i) / rate) * Math.sin(turn * i);
    }
  }
  return samples;
}

/** An air line that opens and closes: white noise less its own low-pass, on half of the time with soft edges. */
function hiss(length: number, rate: number, random: Random): Float32Array {
  const keep = Math.exp((-2 * Math.PI * (1200 + 2800 * random())) / rate);
  const period = (0.7 + 2.6 * random()) * rate;
  const phase = random();
  const edge = 1 / (0.05 * rate);
  let low = 0;
  let open = 0;
  return Float32Array.from({ length }, (_, i) => {
    const white = gaussian(random);
    low = keep * low + (1 - keep) * white;
    const isOn = (i / period + phase) % 1 < 0.5;
    open = Math.max(0, Math.min(1, open + (isOn ? edge : -edge)));
    return (white - low) * open;
  });
}

/** Box and Muller's method. */
const gaussian = (random: Random): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / (samples.length || 1));

function addScaled(to: Float32Array, from: Float32Array, factor: number): void {
  for (let i = 0; i < to.length; i++) to[i] = (to[i] ?? 0) + (from[i] ?? 0) * factor;
}
