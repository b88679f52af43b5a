/** The door of the room: quantities with exact factors, their text forms, and the error all pure rooms share. */
export { Refused, type UnitsRefusal } from './refused.ts';
export { isUnit, type Units } from './factors.ts';
export * from './quantity.ts';
export * from './arithmetic.ts';
export * from './display.ts';
export type { Rounding } from './decimal.ts';
export { parseUnit } from './parse-unit.ts';
