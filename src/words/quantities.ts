/** Quantities: what a value or a unit cannot be, and a window in figures. */
import { said } from './said.ts';

type Kind = 'torque' | 'mass' | 'length' | 'volume' | 'angle' | 'density';

const aKind = (kind: Kind): string => `${kind === 'angle' ? 'An' : 'A'} ${kind}`;

export const quantities = said('quantities', {
  notFinite: (kind: Kind, value: number) => `${aKind(kind)} must be a finite number; this one is ${value}.`,
  unknownUnit: (text: string, kind: Kind, units: readonly string[]) =>
    `"${text}" is no unit of ${kind}; use one of: ${units.join(', ')}.`,
  ambiguousUnit: (text: string) => `"${text}" may be the US or the imperial measure; write US gal, US qt or Imp gal.`,
  notPlainDecimal: (text: string) => `"${text}" is not a plain decimal; write digits with a point, such as 12.5.`,
  kindsDiffer: (kind: Kind, from: string, to: string) => `${aKind(kind)} in ${from} cannot be given in ${to}.`,
  notMultiplied: (kind: Kind, factor: number) => `${aKind(kind)} cannot be multiplied by ${factor}.`,
  notCompared: (kind: Kind) => `${aKind(kind)} that is no number cannot be compared.`,
  limitsCrossed: 'The lower limit is above the upper limit.',
  limitAbove: (lower: string, upper: string) => `The lower limit ${lower} is above the upper limit ${upper}.`,
  badPlaces: (most: number, places: number) => `Places must be a whole number from 0 to ${most}; this is ${places}.`,
  /** The unit stands at the upper limit only. */
  window: (lower: string, upper: string) => `${lower} to ${upper}`,
});
