/**
 * Decimal numbers as people write them. A torque is read, spoken and filed as a decimal, so sums, shares and roundings
 * are done on the decimal and not on the binary fraction behind it: 13.5 + 7.3 is 20.8, 70 % of 90 is 63, and 1.005 to two
 * places is 1.01.
 */

/** digits × 10^−scale, scale ≥ 0. */
export interface Decimal {
  readonly digits: bigint;
  readonly scale: number;
}

/** 'nearest' rounds a tie away from zero (2.5 → 3, −2.5 → −3); 'up' is towards +∞, 'down' towards −∞. */
export type Rounding = 'nearest' | 'up' | 'down';

const power = (exponent: number): bigint => 10n ** BigInt(exponent);

/** The shortest decimal that reads back as the same number. The number must be finite. */
export function decimalOf(value: number): Decimal {
  const [mantissa = '0', exponentText = '0'] = String(value).split('e');
  const [whole = '0', fraction = ''] = mantissa.split('.');
  const digits = BigInt(whole + fraction);
  const scale = fraction.length - Number(exponentText);
  return scale >= 0 ? { digits, scale } : { digits: digits * power(-scale), scale: 0 };
}

/** Plain digits: no exponent, no plus sign, as many places as `scale` says. */
export function textOf({ digits, scale }: Decimal): string {
  const sign = digits < 0n ? '-' : '';
  const padded = (digits < 0n ? -digits : digits).toString().padStart(scale + 1, '0');
  return scale === 0 ? sign + padded : `${sign}${padded.slice(0, -scale)}.${padded.slice(-scale)}`;
}

/** The nearest number to a decimal. */
export const numberOf = (decimal: Decimal): number => Number(textOf(decimal));

export function plus(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale);
  return { digits: a.digits * power(scale - a.scale) + b.digits * power(scale - b.scale), scale };
}

export const product = (a: Decimal, b: Decimal): Decimal => ({
  digits: a.digits * b.digits,
  scale: a.scale + b.scale,
});

/** A decimal with exactly `places` places. */
export function roundTo(decimal: Decimal, places: number, rounding: Rounding): Decimal {
  if (decimal.scale <= places) return { digits: decimal.digits * power(places - decimal.scale), scale: places };
  const step = power(decimal.scale - places);
  const towardsZero = decimal.digits / step;
  const rest = decimal.digits % step;
  return { digits: towardsZero + carry(rest, step, rounding), scale: places };
}

/** What the cut-off rest adds to the digit before it. The rest carries the sign of the whole number. */
function carry(rest: bigint, step: bigint, rounding: Rounding): bigint {
  switch (rounding) {
    case 'up':
      return rest > 0n ? 1n : 0n;
    case 'down':
      return rest < 0n ? -1n : 0n;
    case 'nearest':
      if (2n * rest >= step) return 1n;
      return 2n * rest <= -step ? -1n : 0n;
  }
}
