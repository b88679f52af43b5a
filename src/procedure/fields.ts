import * as v from 'valibot';
import { DECIMAL, fromWritten, unitsOf, type Kind, type Quantity } from '../units/index.ts';

/** Words for a person: never empty. */
export const Text = v.pipe(
  v.string('expected words in quotes'),
  v.trim(),
  v.nonEmpty('expected words, found an empty text'),
);

/** A short name that other parts of the file point to. */
export const Id = v.pipe(
  v.string('expected a name in quotes'),
  v.regex(/^[a-z][a-z0-9-]*$/, 'expected a name of small letters, digits and hyphens, starting with a letter'),
);

/** A number as decimal text ("24.5"), so that no value changes on its way through a file. */
export const Decimal = v.pipe(
  v.string('expected a decimal number in quotes, such as "24.5"'),
  v.regex(DECIMAL, 'expected a decimal number such as "24.5" (a point, no exponent, no thousands mark)'),
);

export const Whole = (least: number, most: number) =>
  v.pipe(
    v.number(`expected a whole number from ${least} to ${most}`),
    v.integer(`expected a whole number from ${least} to ${most}`),
    v.minValue(least, `expected a whole number from ${least} to ${most}`),
    v.maxValue(most, `expected a whole number from ${least} to ${most}`),
  );

export const DateText = v.pipe(
  v.string('expected a date in quotes'),
  v.isoDate('expected a date such as "2026-03-31"'),
);

/** Per cent as decimal text, above 0 and up to `most`. */
export const Percent = (most: number) =>
  v.pipe(
    Decimal,
    v.transform(Number),
    v.check((value) => value > 0 && value <= most, `expected a percentage above 0 and up to ${most}`),
  );

/** A quantity as it stands in a file, `{ "value": "24.5", "unit": "N·m" }`, read into full precision. */
export function quantity<K extends Kind>(kind: K) {
  const units = unitsOf(kind);
  const message = `expected a ${kind} such as { "value": "24.5", "unit": "${units[0]}" }`;
  return v.pipe(
    v.strictObject(
      { value: Decimal, unit: v.picklist(units, `expected a unit of ${kind}: ${units.join(', ')}`) },
      message,
    ),
    v.transform((written): Quantity<K> => fromWritten(kind, written)),
  );
}

/** A quantity that is above zero. */
export function positive<K extends Kind>(kind: K) {
  return v.pipe(
    quantity(kind),
    v.check((found: Quantity<K>) => found.value > 0, `expected a ${kind} above zero`),
  );
}
