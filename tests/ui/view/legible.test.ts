import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  ASSUMED_PIXELS_PER_MM,
  fontSizeFor,
  GLANCE,
  LEAST,
  legibleFrom,
  letterHeight,
  reachOf,
  visualAngle,
} from '../../../src/ui/view/legible.ts';

describe('the height of a letter for a distance', () => {
  // NUREG-0700, 1.3.1-4: H = 6.283·D·MA/21600, with H and D in the same unit.
  test.each([
    [0.5, 16],
    [1, 20],
    [3, 22],
    [5, 30],
  ])('at %d m and %d′ is what the rule of NUREG-0700 gives, which takes the arc for its chord', (distance, angle) => {
    expect(letterHeight(distance, angle)).toBeCloseTo((6.283 * distance * 1000 * angle) / 21600, 2);
  });

  // Computed apart from the code, to a hundredth of a millimetre: H = 2·D·tan(α/2).
  test.each([
    [0.5, 16, 2.33],
    [1, 22, 6.4],
    [2, 20, 11.64],
    [3, 16, 13.96],
    [3, 22, 19.2],
  ])('at %d m and %d′ is %d mm', (distance, angle, height) => {
    expect(letterHeight(distance, angle)).toBeCloseTo(height, 2);
  });
});

const distance = fc.double({ min: 0.5, max: 5, noNaN: true });
const angle = fc.double({ min: 1, max: 60, noNaN: true });
const letters = fc.record({
  pixelsPerMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
  digitRatio: fc.double({ min: 0.5, max: 0.8, noNaN: true }),
});

test('height, distance and angle lead back to each other', () => {
  fc.assert(
    fc.property(distance, angle, letters, (metres, minutes, face) => {
      const height = letterHeight(metres, minutes);
      expect(visualAngle(height, metres)).toBeCloseTo(minutes, 6);
      expect(legibleFrom(height, minutes)).toBeCloseTo(metres, 6);
      // Digits are drawn in whole pixels: what is asked for is reached, and by less than a pixel more.
      const reach = reachOf(fontSizeFor(metres, minutes, face), minutes, face);
      const pixel = legibleFrom(1 / face.pixelsPerMm, minutes);
      expect(reach).toBeGreaterThan(metres - 0.02 * pixel);
      expect(reach).toBeLessThan(metres + pixel);
    }),
  );
});

test('twice as far away wants letters twice as high, and more pixels where pixels are smaller', () => {
  const face = { pixelsPerMm: ASSUMED_PIXELS_PER_MM, digitRatio: 0.7 };
  const near = fontSizeFor(1.5, GLANCE, face);
  const pixel = 1 / face.digitRatio;
  expect(Math.abs(fontSizeFor(3, GLANCE, face) - 2 * near)).toBeLessThan(2 * pixel);
  expect(fontSizeFor(1.5, GLANCE, { ...face, pixelsPerMm: 2 * face.pixelsPerMm })).toBe(fontSizeFor(3, GLANCE, face));
});

test('what may take a second look is smaller than what is read at a glance', () => {
  expect(letterHeight(3, LEAST)).toBeLessThan(letterHeight(3, GLANCE));
});
