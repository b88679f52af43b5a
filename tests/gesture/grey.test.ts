import { expect, test } from 'vitest';
import { greyOf } from '../../src/gesture/grey.ts';
import { middleOf } from '../../src/gesture/frame.ts';

// ITU-R BT.601: Y' = 0.299 R' + 0.587 G' + 0.114 B'.
test.each([
  [[0, 0, 0], 0],
  [[255, 255, 255], 255],
  [[255, 0, 0], 77],
  [[0, 255, 0], 149],
  [[0, 0, 255], 29],
])('the luma of %o is %i', ([r = 0, g = 0, b = 0], luma) => {
  expect([...greyOf(Uint8ClampedArray.of(r, g, b, 255, r, g, b, 0))]).toEqual([luma, luma]);
});

test.each([
  [640, 480, { left: 0, top: 0, width: 640, height: 480 }],
  [1280, 720, { left: 160, top: 0, width: 960, height: 720 }],
  [480, 640, { left: 0, top: 140, width: 480, height: 360 }],
])('of a picture of %i × %i the middle is looked at, not stretched', (width, height, middle) => {
  expect(middleOf(width, height)).toEqual(middle);
});
