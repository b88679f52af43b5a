/** Frequency multiplier of the NIOSH lifting equation (table 5 of DHHS (NIOSH) 94-110, rev. 9/2021). */

/** Work up to 1 h, 2 h or 8 h, the first two followed by light work for 1.0 and 0.3 times as long. */
export type Duration = 'short' | 'moderate' | 'long';

type Row = readonly [perMinute: number, low: number, high: number];

const same = (perMinute: number, value: number): Row => [perMinute, value, value];

/**
 * Lifts per minute, then the multiplier for hands below and from 75 cm (30 in) at the origin. The first row is "≤ 0.2"; a
 * reprint of the manual has "≤ 2" there, which is wrong. The 8 h column above 8 lifts/min is from memory but for the
 * value at 10.
 */
const TABLE: Readonly<Record<Duration, readonly Row[]>> = {
  short: [
    same(0.2, 1),
    same(0.5, 0.97),
    same(1, 0.94),
    same(2, 0.91),
    same(3, 0.88),
    same(4, 0.84),
    same(5, 0.8),
    same(6, 0.75),
    same(7, 0.7),
    same(8, 0.6),
    same(9, 0.52),
    same(10, 0.45),
    same(11, 0.41),
    same(12, 0.37),
    [13, 0, 0.34],
    [14, 0, 0.31],
    [15, 0, 0.28],
  ],
  moderate: [
    same(0.2, 0.95),
    same(0.5, 0.92),
    same(1, 0.88),
    same(2, 0.84),
    same(3, 0.79),
    same(4, 0.72),
    same(5, 0.6),
    same(6, 0.5),
    same(7, 0.42),
    same(8, 0.35),
    same(9, 0.3),
    same(10, 0.26),
    [11, 0, 0.23],
    [12, 0, 0.21],
    same(13, 0),
  ],
  long: [
    same(0.2, 0.85),
    same(0.5, 0.81),
    same(1, 0.75),
    same(2, 0.65),
    same(3, 0.55),
    same(4, 0.45),
    same(5, 0.35),
    same(6, 0.27),
    same(7, 0.22),
    same(8, 0.18),
    [9, 0, 0.15],
    [10, 0, 0.13],
    same(11, 0),
  ],
};

/** Above this many lifts a minute nothing may be lifted. */
const MOST_PER_MINUTE = 15;

/**
 * FM for a rate of lifting, between the rows in a straight line.
 * @param isLow hands below 75 cm (30 in) at the origin, also when the destination is judged.
 */
export function frequencyMultiplier(perMinute: number, duration: Duration, isLow: boolean): number {
  if (perMinute > MOST_PER_MINUTE) return 0;
  const rows = TABLE[duration].map(([rate, low, high]) => ({ rate, value: isLow ? low : high }));
  const above = rows.findIndex(({ rate }) => rate >= perMinute);
  const upper = rows[above];
  if (upper === undefined) return 0;
  const lower = rows[above - 1] ?? upper;
  const way = upper.rate === lower.rate ? 0 : (perMinute - lower.rate) / (upper.rate - lower.rate);
  return lower.value + way * (upper.value - lower.value);
}

/** The rate to use when lifting fills only part of a period: 10 a minute for 8 of 15 minutes is 5.33 a minute. */
export const averageRate = (perMinute: number, minutesLifting: number, periodMinutes = 15): number =>
  (perMinute * minutesLifting) / periodMinutes;
