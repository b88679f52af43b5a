import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { indexAt, lasting, layAxis, nearestTo, ticksOf, type Shortening } from '../../../src/ui/replay/axis.ts';

const MINUTE = 60_000;
const shortening: Shortening = { longest: 5 * MINUTE, shown: MINUTE };
const at = (...clock: readonly string[]): readonly string[] => clock.map((time) => `2026-03-12T${time}Z`);

const anyTimes = fc
  .array(fc.integer({ min: -MINUTE, max: 40 * MINUTE }), { minLength: 1, maxLength: 60 })
  .map((steps) => {
    let time = Date.UTC(2026, 2, 12, 7);
    return steps.map((step) => new Date((time += step)).toISOString());
  });

describe('the axis of a replay', () => {
  test('keeps real time between entries', () =>
    expect(layAxis(at('07:00:00', '07:00:04', '07:04:04'), shortening)).toEqual({
      positions: [0, 4000, 244_000],
      length: 244_000,
      gaps: [],
      setBack: [],
    }));
  test('shortens a long gap, and tells where it is and how long it was', () =>
    expect(layAxis(at('07:00:00', '07:00:04', '09:10:04', '09:10:14'), shortening)).toEqual({
      positions: [0, 4000, 64_000, 74_000],
      length: 74_000,
      gaps: [{ before: 2, lasted: 130 * MINUTE, position: 4000, shown: MINUTE }],
      setBack: [],
    }));
  test('stands still where the clock was set back, and says so: the order is that of the record', () =>
    expect(layAxis(at('07:00:00', '06:00:00', '06:00:10'), shortening)).toMatchObject({
      positions: [0, 0, 10_000],
      setBack: [{ before: 1, by: 60 * MINUTE }],
    }));
  test('of one entry, or of none, has no length', () => {
    expect(layAxis(at('07:00:00'), shortening).length).toBe(0);
    expect(layAxis([], shortening)).toMatchObject({ positions: [], length: 0 });
  });
  test('never goes back, and no step on it is longer than what is not shortened', () =>
    fc.assert(
      fc.property(anyTimes, (times) => {
        const { positions, length } = layAxis(times, shortening);
        positions.forEach((position, i) => {
          const step = position - (positions[i - 1] ?? 0);
          expect(step).toBeGreaterThanOrEqual(0);
          expect(step).toBeLessThanOrEqual(shortening.longest);
        });
        expect(length).toBe(positions.at(-1));
      }),
    ));
});

describe('a place on the axis', () => {
  const axis = { positions: [0, 10, 10, 30] };
  test.each([
    [-5, 0],
    [0, 0],
    [9, 0],
    [10, 2],
    [29, 2],
    [30, 3],
    [99, 3],
  ])('%i shows the last entry that was there by then: %i', (position, index) =>
    expect(indexAt(axis, position)).toBe(index),
  );
  test.each([
    [4, 0],
    [5, 0],
    [6, 1],
    [19, 2],
    [21, 3],
    [99, 3],
  ])('%i is nearest to entry %i', (position, index) => expect(nearestTo(axis, position)).toBe(index));
  test('of an entry shows it, or one at the same time after it', () =>
    fc.assert(
      fc.property(anyTimes, fc.nat(59), (times, pick) => {
        const { positions } = layAxis(times, shortening);
        const index = pick % positions.length;
        const shown = indexAt({ positions }, positions[index] ?? 0);
        expect(shown).toBeGreaterThanOrEqual(index);
        expect(positions[shown]).toBe(positions[index]);
      }),
    ));
});

describe('the scale of the axis', () => {
  test('has round times at their places', () => {
    const times = at('07:58:30', '08:01:30');
    expect(ticksOf(layAxis(times, shortening), times, 4)).toEqual([
      { position: 30_000, utc: '2026-03-12T07:59:00.000Z' },
      { position: 90_000, utc: '2026-03-12T08:00:00.000Z' },
      { position: 150_000, utc: '2026-03-12T08:01:00.000Z' },
    ]);
  });
  test('has none inside what is shortened', () => {
    const times = at('07:59:30', '08:30:30', '08:31:30');
    expect(ticksOf(layAxis(times, shortening), times, 5).map(({ utc }) => utc)).toEqual(['2026-03-12T08:31:00.000Z']);
  });
  test('has no more than room for, but for one', () =>
    fc.assert(
      fc.property(anyTimes, fc.integer({ min: 1, max: 20 }), (times, most) => {
        const axis = layAxis(times, { longest: Infinity, shown: 0 });
        expect(ticksOf(axis, times, most).length).toBeLessThanOrEqual(most + 1 + axis.setBack.length);
      }),
    ));
});

test.each([
  [4000, '4 s'],
  [119_000, '119 s'],
  [12 * MINUTE, '12 min'],
  [125 * MINUTE, '2 h 5 min'],
  [180 * MINUTE, '3 h'],
  [52 * 60 * MINUTE, '2 days 4 h'],
  [72 * 60 * MINUTE, '3 days'],
])('%i milliseconds are told as %s', (milliseconds, text) => expect(lasting(milliseconds)).toBe(text));
