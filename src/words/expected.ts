/** What a field of a procedure file expects. Names of fields, and words that stand in the file, stay as they are there. */
import { said } from './said.ts';

type Kind = 'torque' | 'mass' | 'length' | 'volume' | 'angle' | 'density';

/** Lists of things that are described at the head of the file. */
type Described = 'conditions' | 'openings' | 'tools' | 'adapters' | 'seals' | 'consumables' | 'patterns';

const lists = {
  'fastener numbers': 'fastener numbers, such as [1, 2, 3]',
  places: 'places, such as { "x": "0", "y": "1" }',
  'seals worked on': 'seals and what becomes of them',
  'what to do': 'what to do',
};

type List =
  | Described
  | ('ports' | 'circumstances' | 'criteria' | 'roles' | 'steps' | 'hazards' | 'notes' | 'sayings' | 'outcomes')
  | ('calls' | 'stages' | 'groups' | 'passes' | 'parts');

type Fewest =
  | ('one step' | 'one pass' | 'one part' | 'one place' | 'one fastener number' | 'one saying' | 'one stage')
  | ('two outcomes' | 'two groups');

const aKind = (kind: Kind): string => `${kind === 'angle' ? 'an' : 'a'} ${kind}`;

export const expected = said('expected', {
  fields: (known: readonly string[]) => `expected an object with the fields ${known.join(', ')}`,
  noOtherField: (others: readonly string[], known: readonly string[]) =>
    `unknown field${others.length > 0 ? ` (as are ${others.join(', ')})` : ''}, expected one of: ${known.join(', ')}`,
  missing: (what: string) => `missing, ${what}`,

  words: 'expected words in quotes',
  oneLine: 'expected words in one line, without a space before or after them',
  charactersAtMost: (most: number) => `expected ${most} characters at most`,
  id: 'expected a name in quotes',
  idLetters: 'expected a name of small letters, digits and hyphens, starting with a letter',
  idLength: 'expected a name of 60 characters at most',
  ids: (of: 'openings' | 'patterns') => `expected a list of ids of ${of}`,
  flag: 'expected true or false',
  oneOf: (words: readonly string[]) => `expected one of: ${words.join(', ')}`,
  decimalInQuotes: 'expected a decimal number in quotes, such as "24.5"',
  decimal: 'expected a decimal number such as "24.5" (a point, no exponent, no thousands mark)',
  whole: (least: number, most: number) => `expected a whole number from ${least} to ${most}`,
  day: 'expected a day such as "2026-03-31"',
  calendarDay: 'expected a day of the calendar',
  percentage: (most: number) => `expected a percentage above 0 and up to ${most}`,
  quantity: (kind: Kind, unit: string) => `expected ${aKind(kind)} such as { "value": "24.5", "unit": "${unit}" }`,
  onlyQuantity: (quantity: string) => `unknown field, ${quantity}`,
  unit: (kind: Kind, units: readonly string[]) => `expected a unit of ${kind}: ${units.join(', ')}`,
  aboveZero: (kind: Kind) => `expected ${aKind(kind)} above zero`,
  zeroOrMore: (kind: Kind) => `expected ${aKind(kind)} of zero or more`,
  minNotAboveMax: 'expected a "min" that is not above its "max"',

  list: (of: List | keyof typeof lists) => `expected a list of ${of in lists ? lists[of as keyof typeof lists] : of}`,
  atLeast: (fewest: Fewest) => `expected at least ${fewest}`,
  atMost: (most: number, of: Described | 'steps' | 'passes' | 'places') => `expected ${most} ${of} at most`,
  eachNumberOnce: 'expected each fastener number once',
  eachRoleOnce: 'expected each role once',

  shape: 'expected a shape: ring, double ring, rectangle or free',
  order: 'expected a kind of order: explicit, crosswise, circular, spiral, grouped, in turn or reverse',
  pass: 'expected a kind of pass: snug, torque, percent, increments, angle, circular check or re-check',
  step: 'expected a kind of step: do, check, open, close, hold, loosen, tighten, measure, witness or note',
  rule: 'expected a rule: simple, guard band or relative tool error',

  schemaAddress: 'expected the address of a schema in quotes',
  format: (format: string) => `expected "${format}"`,
  version: (version: number) => `expected ${version}, the version of this format`,
  angleUpTo180: 'expected an angle up to 180°',
  angleFrom0To180: 'expected an angle from 0° to 180°',
  liftsPerMinute: 'expected a number of lifts per minute from 0 to 60',
  factor: 'expected a factor above 0 and up to 3',
  outcomeThatGoesOn: 'expected an outcome that goes on, or the work stays here for ever',
});
