/** Conversion, sums and comparison. Every result keeps full precision; rounding is for the display alone. */
import { quantities } from '../words/quantities.ts';
import { decimalOf, numberOf, plus, product } from './decimal.ts';
import { ratioBetween } from './factors.ts';
import { asGiven, type Kind, type Quantity, quantity, type Unit } from './quantity.ts';
import { refuse } from './refused.ts';

/** A lower and an upper limit, both inside. */
export interface Limits<K extends Kind> {
  readonly min: Quantity<K>;
  readonly max: Quantity<K>;
}

/** Values that agree to this part of the larger one are the same: it is the dust of conversion, far below any tool. */
const DUST = 1e-12;

/** The bare number in the unit asked for. @throws Refused `kinds-differ`, `not-finite`. */
export function valueIn<K extends Kind>(from: Quantity<K>, unit: NoInfer<Unit<K>>): number {
  if (from.unit === unit) return from.value;
  const ratio = ratioBetween(from.unit, unit);
  if (ratio === undefined) {
    return refuse('kinds-differ', quantities.kindsDiffer(from.kind, from.unit, String(unit)));
  }
  return (from.value * ratio.times) / ratio.over;
}

export function convert<K extends Kind>(from: Quantity<K>, unit: NoInfer<Unit<K>>): Quantity<K> {
  return quantity(from.kind, valueIn(from, unit), unit);
}

/** a + b in the unit of a. Values in the same unit are added as decimals, without binary dust. */
export function add<K extends Kind>(a: Quantity<K>, b: Quantity<NoInfer<K>>): Quantity<K> {
  return addTimes(a, b, 1);
}

/** a − b in the unit of a; may be negative. */
export function subtract<K extends Kind>(a: Quantity<K>, b: Quantity<NoInfer<K>>): Quantity<K> {
  return addTimes(a, b, -1);
}

function addTimes<K extends Kind>(a: Quantity<K>, b: Quantity<K>, sign: 1 | -1): Quantity<K> {
  const other = quantity(a.kind, sign * valueIn(b, a.unit), a.unit);
  return quantity(a.kind, numberOf(plus(decimalOf(a.value), decimalOf(other.value))), a.unit);
}

/**
 * A share or a multiple, as a product of decimals: 70 % of 90 is 63.
 * @throws Refused `not-finite` when the factor, or the product, is not a finite number.
 */
export function scale<K extends Kind>(a: Quantity<K>, factor: number): Quantity<K> {
  if (!Number.isFinite(factor)) refuse('not-finite', quantities.notMultiplied(a.kind, factor));
  return quantity(a.kind, numberOf(product(decimalOf(a.value), decimalOf(factor))), a.unit);
}

/** −1, 0 or 1 as a is less than, the same as, or more than b. Values that differ by less than 1e-12 of the larger are the same. */
export function compare<K extends Kind>(a: Quantity<K>, b: Quantity<NoInfer<K>>): -1 | 0 | 1 {
  const other = valueIn(b, a.unit);
  const difference = a.value - other;
  if (Number.isNaN(difference)) refuse('not-finite', quantities.notCompared(a.kind));
  if (Math.abs(difference) <= DUST * Math.max(Math.abs(a.value), Math.abs(other))) return 0;
  return difference < 0 ? -1 : 1;
}

/** @throws Refused `limits-crossed` when the lower limit is above the upper one. */
export function limits<K extends Kind>(min: Quantity<K>, max: Quantity<NoInfer<K>>): Limits<K> {
  if (compare(min, max) > 0) {
    refuse('limits-crossed', quantities.limitAbove(asGiven(min), asGiven(max)));
  }
  return { min, max };
}

/** True from the lower limit to the upper, both included. */
export function isWithin<K extends Kind>(a: Quantity<K>, { min, max }: Limits<NoInfer<K>>): boolean {
  return compare(a, min) >= 0 && compare(a, max) <= 0;
}
