/** The kinds of field a procedure file is made of. Every message says what was expected; fault.ts adds what was found. */
import * as v from 'valibot';
import { isDay } from './day.ts';
import { named } from './fault.ts';
import { compare, DECIMAL, fromWritten, unitsOf, type Kind, type Quantity } from '../units/index.ts';

/** An object with these fields and no others. A field that is missing or unknown is a fault at its own path. */
export function fields<const Entries extends v.ObjectEntries>(entries: Entries) {
  return v.strictObject(entries, (issue) => fieldMessage(entries, issue));
}

function fieldMessage(entries: v.ObjectEntries, { path }: v.StrictObjectIssue): string {
  const key = path?.[0]?.key;
  const known = Object.keys(entries).join(', ');
  if (typeof key !== 'string') return `expected an object with the fields ${known}`;
  const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
  if (entry === undefined) {
    const others = Object.keys(path?.[0]?.input ?? {}).filter((name) => name !== key && !Object.hasOwn(entries, name));
    return `unknown field${others.length > 0 ? ` (as are ${others.map(named).join(', ')})` : ''}, expected one of: ${known}`;
  }
  return `missing, ${expectedBy(entry)}`;
}

/** What a field expects is what it says about null, which no field of a procedure takes. */
const expectedBy = (schema: v.GenericSchema): string => v.safeParse(schema, null).issues?.[0].message ?? '';

const LONGEST_TEXT = 1000;

/** Controls and lone surrogates stand as ranges, so that every reader of the published schema knows them. */
const ONE_LINE = /^(?!\s)[^\u0000-\u001f\u007f-\u009f\ud800-\udfff]+(?<!\s)$/u; // eslint-disable-line no-control-regex

/** Words for a person, in one line: never empty. */
export const Text = v.pipe(
  v.string('expected words in quotes'),
  v.regex(ONE_LINE, 'expected words in one line, without a space before or after them'),
  v.maxLength(LONGEST_TEXT, `expected ${LONGEST_TEXT} characters at most`),
);

/** A short name that other parts of the file point to. */
export const Id = v.pipe(
  v.string('expected a name in quotes'),
  v.regex(/^[a-z][a-z0-9-]*$/, 'expected a name of small letters, digits and hyphens, starting with a letter'),
  v.maxLength(60, 'expected a name of 60 characters at most'),
);

export const Ids = (what: string) => v.array(Id, `expected a list of ids of ${what}`);

export const Flag = v.boolean('expected true or false');

/** One word out of a few. */
export function oneOf<const Words extends readonly string[]>(...words: Words) {
  return v.picklist(words, `expected one of: ${words.join(', ')}`);
}

/** More digits than any tool shows; a longer number is a slip, and could be too large to be finite. */
const LONGEST_DECIMAL = 20;

/** A number as decimal text ("24.5"), so that no value changes on its way through a file. */
export const Decimal = v.pipe(
  v.string('expected a decimal number in quotes, such as "24.5"'),
  v.regex(DECIMAL, 'expected a decimal number such as "24.5" (a point, no exponent, no thousands mark)'),
  v.maxLength(LONGEST_DECIMAL, `expected ${LONGEST_DECIMAL} characters at most`),
);

/** A bare number written as decimal text. */
export const NumberText = v.pipe(Decimal, v.transform(Number));

export function Whole(least: number, most: number) {
  const message = `expected a whole number from ${least} to ${most}`;
  return v.pipe(v.number(message), v.integer(message), v.minValue(least, message), v.maxValue(most, message));
}

const DATE = 'expected a day such as "2026-03-31"';
export const DateText = v.pipe(v.string(DATE), v.isoDate(DATE), v.check(isDay, 'expected a day of the calendar'));

/** Per cent as decimal text, above 0 and up to `most`. */
export const Percent = (most: number) =>
  v.pipe(
    NumberText,
    v.check((value) => value > 0 && value <= most, `expected a percentage above 0 and up to ${most}`),
  );

/** A quantity as it stands in a file, `{ "value": "24.5", "unit": "N·m" }`, read into full precision. */
export function quantity<K extends Kind>(kind: K) {
  const units = unitsOf(kind);
  const example = `expected a ${kind} such as { "value": "24.5", "unit": "${units[0] ?? ''}" }`;
  return v.pipe(
    v.strictObject(
      { value: Decimal, unit: v.picklist(units, `expected a unit of ${kind}: ${units.join(', ')}`) },
      ({ path, expected }) => quantityMessage(example, path?.[0]?.key, expected),
    ),
    v.transform((written): Quantity<K> => fromWritten(kind, written)),
  );
}

function quantityMessage(example: string, key: unknown, expected: string | null): string {
  if (key === undefined) return example;
  return `${expected === 'never' ? 'unknown field' : 'missing'}, ${example}`;
}

/** A quantity that is above zero. */
export const positive = <K extends Kind>(kind: K) =>
  v.pipe(
    quantity(kind),
    v.check((found: Quantity<K>) => found.value > 0, `expected a ${kind} above zero`),
  );

/** A quantity that is zero or more. */
export const notNegative = <K extends Kind>(kind: K) =>
  v.pipe(
    quantity(kind),
    v.check((found: Quantity<K>) => found.value >= 0, `expected a ${kind} of zero or more`),
  );

/** Two torques, the lower one first. */
export const TorqueRange = v.pipe(
  fields({ min: positive('torque'), max: positive('torque') }),
  v.check(({ min, max }) => compare(min, max) <= 0, 'expected a "min" that is not above its "max"'),
);
