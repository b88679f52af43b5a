/** Tools for the schemas of a record: the compiler proves that they let in exactly what the types of the session say. */
import * as v from 'valibot';
import { isDay } from '../procedure/day.ts';
import { DECIMAL, unitsOf, type Kind, type Written } from '../units/index.ts';
import { recordFindings } from '../words/record-findings.ts';

/** To be read with: what is said where a schema has no words of its own. */
export const IN_WORDS: v.Config<v.BaseIssue<unknown>> = {
  message: ({ expected, received }) => recordFindings.notAsExpected(expected, received),
};

/** A type with every field that may be absent made to be there, to its depth: so a forgotten one shows as a difference. */
type Whole<Type> = unknown extends Type
  ? Type
  : Type extends object
    ? { [Key in keyof Type]-?: Whole<Type[Key]> }
    : Type;

/** In the compiler's error: the members of a type, each with all its fields, that a schema would keep out. */
interface KeepsOut<Kept> {
  readonly keepsOut: Kept;
}

/**
 * Nothing more is asked of a schema whose output is the type, no more and no less. A type is let through by `extends`
 * where it may have fields that the schema does not know: whole types, compared both ways, leave no such gap.
 */
type Agrees<Type, Output> = [Whole<Type>] extends [Whole<Output>]
  ? [Whole<Output>] extends [Whole<Type>]
    ? unknown
    : KeepsOut<Exclude<Whole<Type>, Whole<Output>> | 'fields that may be absent'>
  : KeepsOut<Exclude<Whole<Type>, Whole<Output>>>;

/** A schema of exactly this type: what it lets in is a `Type`, and no `Type` is kept out. Else it does not compile. */
export const exactly =
  <Type>() =>
  <Schema extends v.GenericSchema<unknown, Type>>(schema: Schema & Agrees<Type, v.InferOutput<Schema>>): Schema =>
    schema;

export const list = <Item extends v.GenericSchema>(item: Item) => v.pipe(v.array(item), v.readonly());
/** The number of an entry, of a pass or of a step's warning. */
export const Count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
export const Time = v.pipe(v.string(), v.isoTimestamp());
export const Hash = v.pipe(v.string(), v.hash(['sha256']));

/** A number as it was written. Text of more digits than a double can hold is no value that the program writes. */
export const DecimalText = v.pipe(
  v.string(),
  v.regex(DECIMAL),
  v.check(
    (text) => Number.isFinite(Number(text)),
    () => recordFindings.notFinite,
  ),
);

/** A quantity as it was written. */
export const written = <K extends Kind>(kind: K) =>
  v.strictObject({
    value: DecimalText,
    unit: v.picklist(unitsOf(kind)),
  });
export const WrittenTorque = exactly<Written<'torque'>>()(written('torque'));

/** What has a kind and nothing more. */
export const only = <const Word extends string>(kind: Word) => v.strictObject({ kind: v.literal(kind) });

/** A day that is none would stop the fold: whether a calibration holds is worked out from it. */
export const Day = v.pipe(
  v.string(),
  v.isoDate(),
  v.check(isDay, () => recordFindings.noDay),
);
