import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Places } from '../../src/gesture/head-places.ts';
import { shapeOf, type Shape } from '../../src/gesture/head-shape.ts';
import { supportOf } from '../../src/gesture/head-support.ts';
import type { Step } from '../../src/gesture/history.ts';
import { stillMotion } from '../../src/gesture/motion.ts';
import { COLUMNS, WINDOWS, type Window } from '../../src/gesture/windows.ts';

/** How far something at a place goes, for each pixel of the common motion: along the axis, and across it. */
type Field = (x: number, y: number) => { readonly along: number; readonly aside?: number };

/** Two ways to and fro. */
const COMMON = Float32Array.from([2, 3, -3, -4, 3, 4, -2, -3]);

/** @param field by the middle of a place, in blocks from the top left of the picture */
function placesOf(field: Field): Places {
  const steps = [...COMMON].map((by, i): Step => {
    const motion = stillMotion();
    WINDOWS.forEach(({ column, row, size }, window) => {
      const { along, aside = 0 } = field(column + size / 2, row + size / 2);
      motion.right[window] = along * by;
      motion.down[window] = aside * by;
    });
    return { from: 50 * i, to: 50 * (i + 1), motion };
  });
  return new Places(steps, 'right', COMMON);
}

const head = { x: 9, y: 5, radius: 2.6 };
const HEAD: Window = { column: 7, row: 3, size: 4 };
const isInHead = (x: number, y: number): boolean => Math.hypot(x - head.x, y - head.y) <= head.radius;
const shakenHead: Field = (x, y) => ({ along: isInHead(x, y) ? 1 : 0 });

/** A bar on a pivot at its lower end: each place goes the farther the higher it is, as long as the bar. */
const PIVOT = { x: 9, y: 12 };
const swungBar: Field = (x, y) => {
  const up = PIVOT.y - y;
  return { along: Math.abs(x - PIVOT.x) <= 1 && up > 0 && up < 9 ? up / 6 : 0 };
};

describe('what goes along with a head', () => {
  const shape = shapeOf(HEAD, placesOf(shakenHead));

  test('is as long as wide, straight, and in the middle of its window', () => {
    expect(shape.long).toBeLessThan(0.2);
    expect(shape.diagonal).toBeLessThan(0.05);
    expect(shape.offCentre).toBeLessThan(0.15);
  });

  test('goes as one and not aside, over shoulders that stay', () => {
    expect(shape).toMatchObject({ sloping: 0, sideways: 0, fromBelow: 0, below: 0 });
    expect(supportOf(HEAD, placesOf(shakenHead)).follow).toBe(1);
  });
});

describe('what goes along with a bar that swings', () => {
  const shape = shapeOf({ column: 7, row: 4, size: 4 }, placesOf(swungBar));

  test('is longer than wide, and goes the farther the farther from the pivot', () => {
    expect(shape.long).toBeGreaterThan(1);
    expect(shape.sloping).toBeGreaterThan(0.9);
  });

  test('moves below the window too', () => expect(shape.below).toBeGreaterThan(0.03));
});

test('an arm that comes from the lower edge is told by that', () => {
  const arm: Field = (x, y) => ({ along: isInHead(x, y) || (Math.abs(x - head.x) <= 1.5 && y > head.y) ? 1 : 0 });
  expect(shapeOf(HEAD, placesOf(arm)).fromBelow).toBe(1);
});

test('what goes slantwise is told by how far it goes aside', () => {
  const slanting: Field = (x, y) => ({ ...shakenHead(x, y), aside: isInHead(x, y) ? -0.7 : 0 });
  expect(shapeOf(HEAD, placesOf(slanting)).sideways).toBeCloseTo(0.7);
});

test('where nothing goes along there is no shape', () => {
  const still = shapeOf(
    HEAD,
    placesOf(() => ({ along: 0 })),
  );
  expect(still).toEqual({
    offCentre: 1,
    long: 0,
    diagonal: 0,
    sloping: 0,
    sideways: 0,
    fromBelow: 0,
    below: 0,
  } satisfies Shape);
});

test('it is the same in a mirror', () => {
  const bumps = fc.array(fc.record({ x: fc.integer({ min: 3, max: 17 }), y: fc.integer({ min: 2, max: 13 }) }), {
    minLength: 1,
    maxLength: 6,
  });
  const window = fc.constantFrom(...WINDOWS.filter(({ size }) => size <= 4));
  fc.assert(
    fc.property(bumps, window, (places, here) => {
      const field: Field = (x, y) => {
        const near = places.filter((at) => Math.hypot(x - at.x, y - at.y) < 2);
        return { along: Math.min(1.5, near.length / 2), aside: near.length / 5 };
      };
      const mirrored: Field = (x, y) => field(COLUMNS - x, y);
      const seen = shapeOf(here, placesOf(field));
      const other = shapeOf({ ...here, column: COLUMNS - here.size - here.column }, placesOf(mirrored));
      for (const name of ['offCentre', 'long', 'diagonal', 'sloping', 'sideways', 'fromBelow', 'below'] as const)
        expect(other[name], name).toBeCloseTo(seen[name], 4);
      for (const value of Object.values(seen)) expect(Number.isFinite(value)).toBe(true);
    }),
  );
});
