/** The kinds of field a procedure file is made of. Every message says what was expected; fault.ts adds what was found. */
import * as v from 'valibot';
import { isDay } from './day.ts';
import { named } from './fault.ts';
import { compare, DECIMAL, fromWritten, unitsOf, type Kind, type Quantity } from '../units/index.ts';
import { expected } from '../words/expected.ts';

/** An object with these fields and no others. A field that is missing or unknown is a fault at its own path. */
export function fields<const Entries extends v.ObjectEntries>(entries: Entries) {
  return v.strictObject(entries, (issue) => fieldMessage(entries, issue));
}

function fieldMessage(entries: v.ObjectEntries, { path }: v.StrictObjectIssue): string {
  const key = path?.[0]?.key;
  const known = Object.keys(entries);
  if (typeof key !== 'string') return expected.fields(known);
  const entry = Object.hasOwn(entries, key) ? entries[key] : undefined;
  if (entry === undefined) {
    const others = Object.keys(path?.[0]?.input ?? {}).filter((name) => name !== key && !Object.hasOwn(entries, name));
    return expected.noOtherField(others.map(named), known);
  }
  return expected.missing(expectedBy(entry));
}

/** What a field expects is what it says about null, which no field of a procedure takes. */
const expectedBy = (schema: v.GenericSchema): string => v.safeParse(schema, null).issues?.[0].message ?? '';

const LONGEST_TEXT = 1000;

/** Controls and lone surrogates stand as ranges, so that every reader of the published schema knows them. */
const ONE_LINE = /^(?!\s)[^\u0000-\u001f\u007f-\u009f\ud800-\udfff]+(?<!\s)$/u; // eslint-disable-line no-control-regex

/** Words for a person, in one line: never empty. */
export const Text = v.pipe(
  v.string(() => expected.words),
  v.regex(ONE_LINE, () => expected.oneLine),
  v.maxLength(LONGEST_TEXT, () => expected.charactersAtMost(LONGEST_TEXT)),
);

/** A short name that other parts of the file point to. */
export const Id = v.pipe(
  v.string(() => expected.id),
  v.regex(/^[a-z][a-z0-9-]*$/, () => expected.idLetters),
  v.maxLength(60, () => expected.idLength),
);

export const Ids = (of: 'openings' | 'patterns') => v.array(Id, () => expected.ids(of));

export const Flag = v.boolean(() => expected.flag);

/** One word out of a few. */
export function oneOf<const Words extends readonly string[]>(...words: Words) {
  return v.picklist(words, () => expected.oneOf(words));
}

/** More digits than any tool shows; a longer number is a slip, and could be too large to be finite. */
const LONGEST_DECIMAL = 20;

/** A number as decimal text ("24.5"), so that no value changes on its way through a file. */
export const Decimal = v.pipe(
  v.string(() => expected.decimalInQuotes),
  v.regex(DECIMAL, () => expected.decimal),
  v.maxLength(LONGEST_DECIMAL, () => expected.charactersAtMost(LONGEST_DECIMAL)),
);

/** A bare number written as decimal text. */
export const NumberText = v.pipe(Decimal, v.transform(Number));

export function Whole(least: number, most: number) {
  const message = () => expected.whole(least, most);
  return v.pipe(v.number(message), v.integer(message), v.minValue(least, message), v.maxValue(most, message));
}

const aDay = () => expected.day;
export const DateText = v.pipe(
  v.string(aDay),
  v.isoDate(aDay),
  v.check(isDay, () => expected.calendarDay),
);

/** Per cent as decimal text, above 0 and up to `most`. */
export const Percent = (most: number) =>
  v.pipe(
    NumberText,
    v.check(
      (value) => value > 0 && value <= most,
      () => expected.percentage(most),
    ),
  );

/** A quantity as it stands in a file, `{ "value": "24.5", "unit": "N·m" }`, read into full precision. */
export function quantity<K extends Kind>(kind: K) {
  const units = unitsOf(kind);
  return v.pipe(
    v.strictObject(
      { value: Decimal, unit: v.picklist(units, () => expected.unit(kind, units)) },
      ({ path, expected: wanted }) => quantityMessage(kind, units[0] ?? '', path?.[0]?.key, wanted),
    ),
    v.transform((written): Quantity<K> => fromWritten(kind, written)),
  );
}

function quantityMessage(kind: Kind, unit: string, key: unknown, wanted: string | null): string {
  const example = expected.quantity(kind, unit);
  if (key === undefined) return example;
  return wanted === 'never' ? expected.onlyQuantity(example) : expected.missing(example);
}

/** A quantity that is above zero. */
export const positive = <K extends Kind>(kind: K) =>
  v.pipe(
    quantity(kind),
    v.check(
      (found: Quantity<K>) => found.value > 0,
      () => expected.aboveZero(kind),
    ),
  );

/** A quantity that is zero or more. */
export const notNegative = <K extends Kind>(kind: K) =>
  v.pipe(
    quantity(kind),
    v.check(
      (found: Quantity<K>) => found.value >= 0,
      () => expected.zeroOrMore(kind),
    ),
  );

/** Two torques, the lower one first. */
export const TorqueRange = v.pipe(
  fields({ min: positive('torque'), max: positive('torque') }),
  v.check(
    ({ min, max }) => compare(min, max) <= 0,
    () => expected.minNotAboveMax,
  ),
);
