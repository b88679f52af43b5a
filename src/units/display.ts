/**
 * Numbers for the eye and the voice. Full precision is kept inside and rounded once, here.
 *
 * Tie rule: half away from zero (ISO 80000-1 allows it or half to even; one is chosen so that 12.25 reads 12.3 as a
 * mechanic expects). Limits are never rounded outwards: a minimum goes up, a maximum down.
 */
import { quantities } from '../words/quantities.ts';
import { type Decimal, decimalOf, roundTo, type Rounding, textOf } from './decimal.ts';
import { compare, type Limits, valueIn } from './arithmetic.ts';
import type { Kind, Quantity, Unit, Written } from './quantity.ts';
import { refuse } from './refused.ts';

const MOST_PLACES = 15;

/** A value rounded to a number of places (0 to 15) in the unit asked for. */
export function rounded<K extends Kind>(
  quantity: Quantity<K>,
  unit: NoInfer<Unit<K>>,
  places: number,
  rounding: Rounding = 'nearest',
): Written<K> {
  if (!Number.isInteger(places) || places < 0 || places > MOST_PLACES) {
    refuse('not-a-number-of-places', quantities.badPlaces(MOST_PLACES, places));
  }
  return { value: textOf(roundTo(withoutDust(valueIn(quantity, unit)), places, rounding)), unit };
}

/** Fifteen digits are kept, so that the last bit of a conversion cannot push a limit one whole step inwards. */
const withoutDust = (value: number): Decimal => decimalOf(Number(value.toPrecision(15)));

/** '66.7 lbf·in', '90°'. */
export function display<K extends Kind>(
  quantity: Quantity<K>,
  unit: NoInfer<Unit<K>>,
  places: number,
  rounding: Rounding = 'nearest',
): string {
  return withUnit(rounded(quantity, unit, places, rounding));
}

/**
 * Both limits rounded inwards. Where the window is so narrow that nothing is left at this number of places, more places
 * are taken until it fits; a window too narrow for fifteen places is shown as one value.
 * @throws Refused `limits-crossed`, `not-a-number-of-places`.
 */
export function roundedWindow<K extends Kind>(
  window: Limits<K>,
  unit: NoInfer<Unit<K>>,
  places: number,
): { readonly min: Written<K>; readonly max: Written<K> } {
  if (compare(window.min, window.max) > 0) refuse('limits-crossed', quantities.limitsCrossed);
  const min = rounded(window.min, unit, places, 'up');
  const max = rounded(window.max, unit, places, 'down');
  if (Number(min.value) <= Number(max.value)) return { min, max };
  if (places < MOST_PLACES) return roundedWindow(window, unit, places + 1);
  const value = rounded(window.min, unit, places);
  return { min: value, max: value };
}

/** '94.0 to 106.0 N·m'. */
export function displayWindow<K extends Kind>(window: Limits<K>, unit: NoInfer<Unit<K>>, places: number): string {
  const { min, max } = roundedWindow(window, unit, places);
  return quantities.window(min.value, withUnit(max));
}

const withUnit = ({ value, unit }: Written<Kind>): string => (unit === '°' ? `${value}°` : `${value} ${unit}`);
