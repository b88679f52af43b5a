import { expect, test } from 'vitest';
import { PictureRate } from '../../src/gesture/picture-rate.ts';

/** Takes pictures in for some seconds. */
function run(pictures: PictureRate, rate: number, { from = 0, seconds = 12 } = {}): number {
  for (let i = 1; i <= seconds * rate; i++) pictures.add(from + (i * 1000) / rate);
  return from + seconds * 1000;
}

test.each([
  [3, true],
  [5, true],
  [6, true],
  [6.9, true],
  [7.5, false],
  [8, false],
  [15, false],
  [30, false],
])('%d pictures a second are too few: %s', (rate, isSlow) => {
  const pictures = new PictureRate();
  run(pictures, rate);
  expect(pictures.isSlow).toBe(isSlow);
});
test('a moment is too short to tell', () => {
  const pictures = new PictureRate();
  run(pictures, 5, { seconds: 1 });
  expect(pictures.isSlow).toBe(false);
});
test('what lies between the two bounds stays what it was', () => {
  const rising = new PictureRate();
  run(rising, 7.2, { from: run(rising, 5) });
  expect(rising.isSlow).toBe(true);
  const falling = new PictureRate();
  run(falling, 7.2, { from: run(falling, 15) });
  expect(falling.isSlow).toBe(false);
});
test('more pictures end it, and after a gap it is reckoned anew', () => {
  const steady = new PictureRate();
  run(steady, 15, { from: run(steady, 5) });
  expect(steady.isSlow).toBe(false);
  const left = new PictureRate();
  const back = run(left, 5) + 60_000;
  const now = run(left, 15, { from: back, seconds: 1 });
  expect(left.isSlow, 'a moment is too short to tell').toBe(true);
  run(left, 15, { from: now, seconds: 0.5 });
  expect(left.isSlow).toBe(false);
});
