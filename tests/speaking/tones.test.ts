import { describe, expect, test } from 'vitest';
import { durationMs, peak } from '../../src/speaking/sound.ts';
import { lengthMs, peakOf, render, TONE_RATE, TONES } from '../../src/speaking/tones.ts';
import type { ToneKind } from '../../src/speaking/types.ts';

const SHORT = ['heard', 'logged', 'question', 'stop'] as const satisfies readonly ToneKind[];
const KINDS: readonly ToneKind[] = [...SHORT, 'help'];
const sound = (kind: ToneKind, noise: number | null = null) => render(TONES[kind], peakOf(kind, noise), TONE_RATE);

/** How much of a frequency is in it, by Goertzel’s algorithm; in any unit. */
function power(samples: Float32Array, hertz: number): number {
  const turn = 2 * Math.cos((2 * Math.PI * hertz) / TONE_RATE);
  let [one, two] = [0, 0];
  for (const sample of samples) [one, two] = [sample + turn * one - two, one];
  return one * one + two * two - turn * one * two;
}
const NOTES = [415, 590, 660, 880, 990, 1320, 1480];
/** The strongest note of each tenth of the signal, null where it is silent: its melody. */
const melody = (kind: ToneKind): readonly (number | null)[] => {
  const { samples } = sound(kind);
  const size = Math.floor(samples.length / 10);
  return Array.from({ length: 10 }, (_, i) => {
    const part = samples.subarray(i * size, (i + 1) * size);
    const loud = Math.max(...part.map(Math.abs));
    if (loud < 0.01) return null;
    return NOTES.reduce((best, note) => (power(part, note) > power(part, best) ? note : best));
  });
};

describe('signals', () => {
  test.each(SHORT)('%s is over within a quarter of a second', (kind) => {
    expect(lengthMs(TONES[kind])).toBeLessThan(250);
    expect(durationMs(sound(kind))).toBeLessThan(250);
  });

  test('have each a melody and a length of their own', () => {
    const told = KINDS.map((kind) => JSON.stringify([melody(kind), TONES[kind].length]));
    expect(new Set(told).size).toBe(KINDS.length);
    expect(melody('logged')[0]).toBeLessThan(melody('logged')[8] ?? 0);
    expect(melody('stop')[0]).toBeGreaterThan(melody('stop')[8] ?? Infinity);
  });

  test.each(KINDS)('%s neither clips nor clicks, in whatever noise', (kind) => {
    for (const noise of [null, -120, -60, -45, -30, 0]) {
      const { samples } = sound(kind, noise);
      expect(peak({ samples, rate: TONE_RATE })).toBeLessThanOrEqual(0.95);
      const largestStep = samples.reduce(
        (most, sample, i) => Math.max(most, Math.abs(sample - (samples[i - 1] ?? 0))),
        0,
      );
      // A tone of 1600 Hz with these harmonics moves by no more in one sample; a click moves by its whole height.
      expect(largestStep).toBeLessThan(0.4 * 0.95);
      expect(Math.abs(samples[0] ?? 1) + Math.abs(samples.at(-1) ?? 1)).toBeLessThan(0.01);
    }
  });
});

describe('loudness', () => {
  test.each([-70, -50, -30, null])('goes from heard to stop at a background of %s dBFS', (noise) => {
    const peaks = SHORT.map((kind) => peakOf(kind, noise));
    expect(peaks).toEqual(peaks.toSorted((one, other) => one - other));
    expect(new Set(peaks).size).toBe(SHORT.length);
  });

  test.each(KINDS)('of %s follows the noise, and never goes down with it', (kind) => {
    const peaks = Array.from({ length: 121 }, (_, i) => peakOf(kind, i - 120));
    expect(peaks).toEqual(peaks.toSorted((one, other) => one - other));
    expect(peakOf(kind, -30)).toBeGreaterThan(peakOf(kind, -60));
    expect(peakOf(kind, -90)).toBe(peakOf(kind, -60));
  });
});
