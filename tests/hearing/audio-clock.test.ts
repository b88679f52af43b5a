import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AudioClock } from '../../src/hearing/audio-clock.ts';

const RATE = 44_100;
const CHUNK = 4_096;
const CHUNK_MS = (CHUNK / RATE) * 1000;

/** Chunks whose audio began at `start`, on a sound card that runs `drift` too slow, each late by its delay. */
function times(clock: AudioClock, start: number, delays: readonly number[], drift = 0) {
  return delays.map((delay, at) => {
    const truth = start + at * CHUNK_MS * (1 + drift);
    return { truth, time: clock.timeOf(at * CHUNK, CHUNK, truth + CHUNK_MS + delay) };
  });
}

describe('the time of a chunk', () => {
  const delays = fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 1, maxLength: 100 });

  test('is never before it was taken, and never later than its message was', () => {
    fc.assert(
      fc.property(delays, (late) => {
        times(new AudioClock(RATE), 5_000, late).forEach(({ truth, time }, at) => {
          expect(time - truth).toBeGreaterThan(-0.001);
          expect(time - truth).toBeLessThan((late[at] ?? 0) + 0.001);
        });
      }),
    );
  });

  test('is steady once a prompt message was seen, however late the others are', () => {
    const late = [0, 150, 80, 199, 20, 120];
    for (const { truth, time } of times(new AudioClock(RATE), 0, late)) expect(time - truth).toBeLessThan(1);
  });

  test('follows a sound card that drifts by a ten-thousandth, either way, for an hour', () => {
    for (const drift of [1e-4, -1e-4]) {
      const hour = Math.round(3_600_000 / CHUNK_MS);
      const last = times(new AudioClock(RATE), 0, Array<number>(hour).fill(3), drift).at(-1);
      expect(Math.abs((last?.time ?? 0) - (last?.truth ?? 0))).toBeLessThan(10);
    }
  });

  test('starts afresh after a standstill, as when the computer slept', () => {
    const clock = new AudioClock(RATE);
    times(clock, 0, [0, 0, 0]);
    const arrived = 3 * CHUNK_MS + CHUNK_MS + 60_000;
    expect(clock.timeOf(3 * CHUNK, CHUNK, arrived)).toBeCloseTo(arrived - CHUNK_MS, 6);
  });
});
