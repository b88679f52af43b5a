/** Quantities: a finite value with its unit, kept as given; and their written form for files and the log. */
import { quantities } from '../words/quantities.ts';
import { decimalOf, textOf } from './decimal.ts';
import { isUnit, type Kind, type Unit, unitsOf } from './factors.ts';
import { refuse } from './refused.ts';

export { type Kind, type Unit, unitsOf } from './factors.ts';

export interface Quantity<K extends Kind> {
  readonly kind: K;
  readonly value: number;
  readonly unit: Unit<K>;
}
export type Torque = Quantity<'torque'>;
export type Mass = Quantity<'mass'>;
export type Length = Quantity<'length'>;
export type Volume = Quantity<'volume'>;
export type Angle = Quantity<'angle'>;
export type Density = Quantity<'density'>;

/** @throws Refused `not-finite` for NaN and infinities, `unknown-unit` for a unit that is not one of this kind. */
export function quantity<K extends Kind>(kind: K, value: number, unit: Unit<K>): Quantity<K> {
  if (!Number.isFinite(value)) refuse('not-finite', quantities.notFinite(kind, value));
  if (!isUnit(kind, unit)) {
    refuse('unknown-unit', quantities.unknownUnit(String(unit), kind, unitsOf(kind)));
  }
  return { kind, value: value + 0, unit }; // + 0 turns −0 into 0
}
export const torque = (value: number, unit: Unit<'torque'>): Torque => quantity('torque', value, unit);
export const mass = (value: number, unit: Unit<'mass'>): Mass => quantity('mass', value, unit);
export const length = (value: number, unit: Unit<'length'>): Length => quantity('length', value, unit);
export const volume = (value: number, unit: Unit<'volume'>): Volume => quantity('volume', value, unit);
export const angle = (value: number, unit: Unit<'angle'> = '°'): Angle => quantity('angle', value, unit);
export const density = (value: number, unit: Unit<'density'>): Density => quantity('density', value, unit);

/** How a quantity stands in files and in the log: a plain decimal and a unit, so that no float formatting enters a hash. */
export interface Written<K extends Kind> {
  readonly value: string;
  readonly unit: Unit<K>;
}

/** Digits, then perhaps a point and more digits. No exponent, no sign but a minus, no leading zeros, no decimal comma. */
export const DECIMAL = /^-?(0|[1-9]\d*)(\.\d+)?$/;

/** @throws Refused `not-a-decimal`, `not-finite` (too many digits), `unknown-unit`. */
export function fromWritten<K extends Kind>(kind: K, written: Written<NoInfer<K>>): Quantity<K> {
  if (!DECIMAL.test(written.value)) {
    refuse('not-a-decimal', quantities.notPlainDecimal(written.value));
  }
  return quantity(kind, Number(written.value), written.unit);
}

/** The number as it was given, with its unit: '12.5 N·m'. */
export const asGiven = <K extends Kind>({ value, unit }: Quantity<K>): string => `${value} ${unit}`;

/** The shortest decimal that reads back as the same value. */
export function toWritten<K extends Kind>({ value, unit }: Quantity<K>): Written<K> {
  return { value: textOf(decimalOf(value)), unit };
}
