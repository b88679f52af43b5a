/** Logistic regression with a ridge, by Newton's method. */

export interface Case {
  readonly values: readonly number[];
  readonly isTrue: boolean;
  /** Counts as so many cases; 1 unless told. */
  readonly weight?: number;
}

export interface Odds {
  readonly bias: number;
  readonly slopes: readonly number[];
}

const MOST_STEPS = 40;
const CLOSE = 1e-6;

/** @param ridge penalty on half the square of each slope, on values scaled to a standard deviation of 1 */
export function fitOdds(cases: readonly Case[], ridge: number): Odds {
  const width = cases[0]?.values.length ?? 0;
  const columns = Array.from({ length: width }, (_, i) => cases.map(({ values }) => values[i] ?? 0));
  const means = columns.map(mean);
  const deviations = columns.map(
    (column, i) => Math.sqrt(mean(column.map((each) => (each - (means[i] ?? 0)) ** 2))) || 1,
  );
  const scaled = cases.map(({ values, isTrue, weight = 1 }) => ({
    weight,
    x: [1, ...values.map((each, i) => (each - (means[i] ?? 0)) / (deviations[i] ?? 1))],
    y: isTrue ? 1 : 0,
  }));
  let weights = new Array<number>(width + 1).fill(0);
  for (let step = 0; step < MOST_STEPS; step++) {
    const slope = weights.map((weight, i) => (i === 0 ? 0 : ridge * weight));
    const curve = weights.map((_, i) => weights.map((__, j) => (i === j ? (i === 0 ? 1e-6 : ridge) : 0)));
    for (const { x, y, weight } of scaled) {
      const odds = x.reduce((sum, each, i) => sum + each * (weights[i] ?? 0), 0);
      const chance = 1 / (1 + Math.exp(-odds));
      const spread = weight * chance * (1 - chance);
      x.forEach((each, i) => {
        slope[i] = (slope[i] ?? 0) + weight * each * (chance - y);
        const row = curve[i];
        if (row) x.forEach((other, j) => (row[j] = (row[j] ?? 0) + spread * each * other));
      });
    }
    const change = solve(curve, slope);
    weights = weights.map((weight, i) => weight - (change[i] ?? 0));
    if (Math.max(...change.map(Math.abs)) < CLOSE) break;
  }
  const slopes = weights.slice(1).map((weight, i) => weight / (deviations[i] ?? 1));
  return { bias: (weights[0] ?? 0) - slopes.reduce((sum, slope, i) => sum + slope * (means[i] ?? 0), 0), slopes };
}

const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / (values.length || 1);

/** The solution of a system of linear equations, by elimination with the largest pivot. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  for (let column = 0; column < rows.length; column++) {
    const pivot =
      rows
        .slice(column)
        .reduce(
          (best, row, i, all) => (Math.abs(row[column] ?? 0) > Math.abs(all[best]?.[column] ?? 0) ? i : best),
          0,
        ) + column;
    const [from, to] = [rows[pivot], rows[column]];
    if (!from || !to) break;
    [rows[column], rows[pivot]] = [from, to];
    for (const [i, row] of rows.entries()) {
      if (i === column) continue;
      const part = (row[column] ?? 0) / (from[column] ?? 1);
      for (let j = column; j < row.length; j++) row[j] = (row[j] ?? 0) - part * (from[j] ?? 0);
    }
  }
  return rows.map((row, i) => (row.at(-1) ?? 0) / (row[i] ?? 1));
}
