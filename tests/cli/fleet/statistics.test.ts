/** The statistics in SQL against certified values of NIST’s Statistical Reference Datasets (StRD). */
import { DuckDBInstance, type DuckDBConnection } from '@duckdb/node-api';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { lineThrough, spreadOf } from '../../../src/cli/fleet/figures.ts';

let connection: DuckDBConnection;
beforeAll(async () => {
  connection = await (await DuckDBInstance.create()).connect();
});
afterAll(() => connection.closeSync());

async function over(points: readonly (readonly [x: number, y: number])[], what: string) {
  const values = points.map(([x, y]) => `(${x}::DOUBLE, ${y}::DOUBLE)`).join(', ');
  const [row] = (await connection.runAndReadAll(`SELECT ${what} FROM (VALUES ${values}) AS p(x, y)`)).getRowObjectsJS();
  return row;
}

/** y, x */
const NORRIS = `0.1 0.2, 338.8 337.4, 118.1 118.2, 888.0 884.6, 9.2 10.1, 228.1 226.5, 668.5 666.3, 998.5 996.3,
  449.1 448.6, 778.9 777.0, 559.2 558.2, 0.3 0.4, 0.1 0.6, 778.1 775.5, 668.8 666.9, 339.3 338.0, 448.9 447.5,
  10.8 11.6, 557.7 556.0, 228.3 228.1, 998.0 995.8, 888.8 887.6, 119.6 120.2, 0.3 0.3, 0.6 0.3, 557.6 556.8,
  339.3 339.1, 888.0 887.2, 998.5 999.0, 778.9 779.0, 10.2 11.1, 117.6 118.3, 228.9 229.2, 668.4 669.1, 449.2 448.9,
  0.2 0.5`
  .split(',')
  .map((pair) => pair.trim().split(' ').map(Number))
  .map(([y = 0, x = 0]) => [x, y] as const);

it('a line of least squares: Norris, 36 points (from memory)', async () => {
  const line = await over(NORRIS, lineThrough('y', 'x'));
  expect(line?.points).toBe(36);
  expect(line?.slope).toBeCloseTo(1.00211681802045, 12);
  expect(line?.intercept).toBeCloseTo(-0.262323073774029, 10);
  expect(line?.slope_error).toBeCloseTo(0.429796848199937e-3, 9);
});

it('mean and standard deviation: NumAcc1 and NumAcc3, where digits are easily lost (from memory)', async () => {
  const three = [10_000_001, 10_000_003, 10_000_002].map((y) => [0, y] as const);
  expect(await over(three, spreadOf('y'))).toMatchObject({ n: 3, mean: 10_000_002, s: 1 });
  const many = [1_000_000.2, ...Array.from({ length: 500 }, () => [1_000_000.1, 1_000_000.3]).flat()];
  const found = await over(
    many.map((y) => [0, y] as const),
    spreadOf('y'),
  );
  expect(found?.n).toBe(1001);
  expect(found?.mean).toBeCloseTo(1_000_000.2, 8);
  expect(found?.s).toBeCloseTo(0.1, 8);
});

it('no line is drawn through one point, nor through points of one day', async () => {
  expect(await over([[1, 2]], lineThrough('y', 'x'))).toMatchObject({ slope: null, slope_error: null });
  const oneDay = [0, 1, 2].map((y) => [5, y] as const);
  expect(await over(oneDay, lineThrough('y', 'x'))).toMatchObject({ points: 3, slope: null, intercept: null });
});
