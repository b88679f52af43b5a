import type { Unit } from '../units/index.ts';

/** Units of torque as they may be spoken to us; the first form is the usual one. What we say is in the catalogue. */
export const TORQUE_UNIT_SPOKEN: Readonly<Record<Unit<'torque'>, readonly [string, ...string[]]>> = {
  'N·m': ['newton metres', 'newton meters', 'newton metre', 'newton meter'],
  'kgf·m': ['kilogram metres', 'kilogram meters', 'kilogram metre', 'kilogram meter', 'kilo metres', 'kilo meters'],
  'kgf·cm': ['kilogram centimetres', 'kilogram centimeters'],
  'lbf·in': ['inch pounds', 'inch pound', 'pound inches'],
  'lbf·ft': ['foot pounds', 'foot pound', 'pound feet', 'pound foot'],
  'ozf·in': ['inch ounces', 'ounce inches'],
};
