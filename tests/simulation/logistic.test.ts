import { expect, test } from 'vitest';
import { fitOdds, type Case } from './logistic.ts';

const cases = (value: number, isTrue: boolean, count: number): readonly Case[] =>
  Array.from({ length: count }, () => ({ values: [value], isTrue }));

// In closed form: of a table of two by two, bias and slope are the log odds without it and the log odds ratio.
test('the odds of a table of two by two are the counted ones', () => {
  const { bias, slopes } = fitOdds(
    [...cases(0, true, 3), ...cases(0, false, 7), ...cases(1, true, 8), ...cases(1, false, 2)],
    0,
  );
  expect(bias).toBeCloseTo(Math.log(3 / 7), 6);
  expect(slopes[0]).toBeCloseTo(Math.log((8 * 7) / (2 * 3)), 6);
});

test('a case of a weight counts as so many', () => {
  const counted = [...cases(0, true, 3), ...cases(0, false, 7), ...cases(1, true, 8), ...cases(1, false, 2)];
  const weighed = [...cases(0, true, 1), ...cases(0, false, 7), ...cases(1, true, 1), ...cases(1, false, 2)].map(
    ({ values, isTrue }) => ({ values, isTrue, weight: isTrue ? (values[0] === 0 ? 3 : 8) : 1 }),
  );
  const [{ bias, slopes }, expected] = [fitOdds(weighed, 0), fitOdds(counted, 0)];
  expect(bias).toBeCloseTo(expected.bias, 6);
  expect(slopes[0]).toBeCloseTo(expected.slopes[0] ?? NaN, 6);
});

test('a ridge makes slopes smaller, and leaves the share of true cases as it is', () => {
  const all = [...cases(0, true, 3), ...cases(0, false, 7), ...cases(1, true, 8), ...cases(1, false, 2)];
  const { bias, slopes } = fitOdds(all, 5);
  const slope = slopes[0] ?? 0;
  expect(slope).toBeGreaterThan(0);
  expect(slope).toBeLessThan(Math.log((8 * 7) / (2 * 3)));
  const chances = all.map(({ values }) => 1 / (1 + Math.exp(-(bias + slope * (values[0] ?? 0)))));
  expect(chances.reduce((sum, each) => sum + each, 0)).toBeCloseTo(11, 3);
});
