/** Signs and symbols of units as they are spoken. Words of numbers belong to the language of numbers. */
import { said } from './said.ts';

export const spokenSigns = said('spokenSigns', {
  minus: 'minus',
  /** Between numbers of a list: the voice pauses no longer there than within a number. */
  and: 'and',
  torque: {
    'N·m': 'newton metres',
    'kgf·m': 'kilogram metres',
    'kgf·cm': 'kilogram centimetres',
    'lbf·in': 'inch pounds',
    'lbf·ft': 'foot pounds',
    'ozf·in': 'inch ounces',
  },
  others: {
    '%': 'per cent',
    '°': 'degrees',
    h: 'hours',
    kg: 'kilograms',
    lb: 'pounds',
    L: 'litres',
    mL: 'millilitres',
    mm: 'millimetres',
    psi: 'pounds per square inch',
    kPa: 'kilopascals',
    min: 'minutes',
  },
  /** After "US" or "Imp", with figures before. */
  measures: { gal: 'gallons', qt: 'quarts' },
});
