import { describe, expect, test } from 'vitest';
import { PauseMeter, type Sounded } from '../../src/hearing/pause-meter.ts';
import { seededRandom } from '../support/noise.ts';

const RATE = 16_000;
const CHUNK_MS = 40;
const CHUNK = (RATE * CHUNK_MS) / 1000;

/** Noise at these levels, each in dBFS for so many milliseconds. */
function noise(...pieces: readonly (readonly [dBFS: number, ms: number])[]): Float32Array {
  const random = seededRandom(7);
  return Float32Array.from(
    pieces.flatMap(([dBFS, ms]) =>
      Array.from({ length: (RATE * ms) / 1000 }, () => 10 ** (dBFS / 20) * Math.sqrt(3) * (2 * random() - 1)),
    ),
  );
}

/** What is measured after each chunk, with the time at its end. */
function measured(samples: Float32Array, meter = new PauseMeter(RATE)): (Sounded & { readonly now: number })[] {
  return Array.from({ length: Math.floor(samples.length / CHUNK) }, (_, i) => ({
    ...meter.take(samples.slice(i * CHUNK, (i + 1) * CHUNK), i * CHUNK_MS),
    now: (i + 1) * CHUNK_MS,
  }));
}

const total = (all: readonly Sounded[]): number => all.reduce((sum, { length }) => sum + length, 0);

describe('sound and pause', () => {
  test.each([-80, -50, -30])('a steady background at %i dBFS is no sound, once it is known', (background) => {
    expect(total(measured(noise([background, 4000])).slice(25))).toBe(0);
  });
  test.each([
    [-80, -30],
    [-60, -40],
    [-45, -25],
  ])('over a background of %i dBFS, half a second at %i dBFS is sound, and its end is known to 30 ms', (low, high) => {
    const all = measured(noise([low, 2000], [high, 480], [low, 600]));
    expect(total(all)).toBeGreaterThanOrEqual(420);
    expect(total(all)).toBeLessThanOrEqual(520);
    expect(Math.abs((all.at(-1)?.until ?? 0) - 2480)).toBeLessThanOrEqual(30);
  });
  test.each([
    [-70, -30, true],
    [-40, -28, false],
  ])('over a background of %i dBFS, a sound at %i dBFS stands out clearly: %s', (low, high, isClear) => {
    expect(measured(noise([low, 2000], [high, 480], [low, 160])).at(-1)?.isClear).toBe(isClear);
  });
  test('a click is no sound', () => {
    expect(total(measured(noise([-60, 2000], [-20, 10], [-60, 600])))).toBe(0);
  });
  test('a machine that starts is sound at first, and background when it goes on', () => {
    const all = measured(noise([-60, 2000], [-35, 6000]));
    expect(total(all.slice(50, 60))).toBeGreaterThan(300);
    expect(total(all.slice(-25))).toBe(0);
  });
  test('a low hum hides no pause', () => {
    const samples = noise([-70, 2000], [-35, 480], [-70, 600]);
    const hum = samples.map((sample, i) => sample + 0.1 * Math.sin((2 * Math.PI * 50 * i) / RATE));
    expect(Math.abs((measured(hum).at(-1)?.until ?? 0) - 2480)).toBeLessThanOrEqual(30);
  });
  test('samples that are no numbers are silence', () => {
    const meter = new PauseMeter(RATE);
    measured(noise([-60, 2000]), meter);
    expect(meter.take(new Float32Array(CHUNK).fill(NaN), 2000)).toEqual({
      length: 0,
      until: -Infinity,
      isClear: false,
    });
  });
});
