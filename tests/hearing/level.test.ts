import { expect, test } from 'vitest';
import { levelOf } from '../../src/hearing/level.ts';

test('a full-scale square wave is 0 dBFS, a full-scale sine 3.01 dB less, a tenth of it 20 dB less', () => {
  const sine = Float32Array.from({ length: 48_000 }, (_, at) => Math.sin((2 * Math.PI * 1_000 * at) / 48_000));
  expect(levelOf(Float32Array.of(1, -1, 1, -1))).toBe(0);
  expect(levelOf(sine)).toBeCloseTo(10 * Math.log10(1 / 2), 3);
  expect(levelOf(sine.map((sample) => sample / 10))).toBeCloseTo(10 * Math.log10(1 / 2) - 20, 3);
});

test('exact zeros have no level; what is no number counts as zero', () => {
  expect(levelOf(new Float32Array(100))).toBe(-Infinity);
  expect(levelOf(Float32Array.of(NaN, 1, Infinity, -1))).toBeCloseTo(10 * Math.log10(1 / 2), 6);
});
