/** What was typed into a field and cannot be read: what to write instead. */
import { said } from './said.ts';

export const typing = said('typing', {
  comma: (text: string) => `“${text}” has a comma: write it with a point, such as 38.5.`,
  noNumber: (text: string, unit: string) =>
    `“${text}” is no plain number: write digits only, such as 38.5; the unit is ${unit}.`,
  notAboveZero: (text: string, unit: string) => `${text} ${unit} is not above zero: measure again.`,
  noDay: (text: string) => `“${text}” is no day: write it as 2027-01-31.`,
  noCount: (text: string) => `“${text}” is no count: write a whole number, such as 2.`,
});
