/**
 * The door for what an entry says. The types in the session room are the source of meaning; the compiler proves that
 * these schemas let in exactly what those types say. A record read from a disk or a file is from outside: nothing in it
 * is believed before it went through here.
 */
import * as v from 'valibot';
import type { ToolReason } from '../procedure/tool-reasons.ts';
import type { Basis, EventBody, WrittenRule } from '../session/event.ts';
import type { Heard, Instant, Meaning, Question, ReadingDoubt, SaidReading, Source } from '../session/intent.ts';
import type { Refusal } from '../session/refusal.ts';
import { compare, DECIMAL, fromWritten, unitsOf, type Kind, type Written } from '../units/index.ts';

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
const exactly =
  <Type>() =>
  <Schema extends v.GenericSchema<unknown, Type>>(schema: Schema & Agrees<Type, v.InferOutput<Schema>>): Schema =>
    schema;

const list = <Item extends v.GenericSchema>(item: Item) => v.pipe(v.array(item), v.readonly());
/** The number of an entry, of a pass or of a step's warning. */
const Count = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
const Time = v.pipe(v.string(), v.isoTimestamp());
const Hash = v.pipe(v.string(), v.hash(['sha256']));

/** A number as it was written. Text of more digits than a double can hold is no value that the program writes. */
const DecimalText = v.pipe(
  v.string(),
  v.regex(DECIMAL),
  v.check((text) => Number.isFinite(Number(text)), 'Expected a finite value'),
);

/** A quantity as it was written. */
const written = <K extends Kind>(kind: K) =>
  v.strictObject({
    value: DecimalText,
    unit: v.picklist(unitsOf(kind)),
  });
const WrittenTorque = exactly<Written<'torque'>>()(written('torque'));

export const SourceSchema = exactly<Source>()(v.picklist(['voice', 'gesture', 'pedal', 'touch', 'key', 'program']));

export const InstantSchema = exactly<Instant>()(v.strictObject({ utc: Time, monotonic: v.number() }));

export const HeardSchema = exactly<Heard>()(
  v.strictObject({
    text: v.string(),
    words: list(v.strictObject({ word: v.string(), confidence: v.string() })),
    spoken: v.exactOptional(v.strictObject({ from: Time, to: Time })),
  }),
);

/** What was said, right or wrong: it is not judged here. */
const Said = exactly<SaidReading>()(v.strictObject({ fastener: v.nullable(v.number()), value: v.string() }));

const Doubts = exactly<readonly ReadingDoubt[]>()(
  list(
    v.picklist([
      'not sure',
      'off the scale',
      'between marks',
      'sounds like another',
      'out by ten',
      'digits swapped',
      'digit count',
    ]),
  ),
);

const Doubtful = {
  doubt: v.picklist(['several readings', 'not sure', 'other unit']),
  readings: list(Said),
} as const;

const only = <const Word extends string>(kind: Word) => v.strictObject({ kind: v.literal(kind) });

const QuestionSchema = exactly<Question>()(
  v.variant('about', [
    v.strictObject({ about: v.picklist(['place', 'left', 'last readings', 'why', 'slowly']) }),
    v.strictObject({ about: v.literal('logged'), fastener: v.number() }),
  ]),
);

const MeaningSchema = exactly<Meaning>()(
  v.variant('kind', [
    only('reopen'),
    only('next'),
    only('turned'),
    only('back'),
    only('say again'),
    v.strictObject({ kind: v.literal('question'), question: QuestionSchema }),
    only('stand by'),
    only('continue'),
    only('affirm'),
    only('negative'),
    only('disregard'),
    only('silence'),
    v.strictObject({ kind: v.literal('answer'), outcome: v.string() }),
    v.strictObject({ kind: v.literal('reading'), reading: Said, doubts: v.exactOptional(Doubts) }),
    v.strictObject({ kind: v.literal('correction'), reading: Said, doubts: v.exactOptional(Doubts) }),
    v.strictObject({ kind: v.literal('witness'), reading: Said }),
    v.strictObject({ kind: v.literal('click'), fastener: v.nullable(v.number()) }),
    v.strictObject({ kind: v.literal('unclear'), ...Doubtful }),
  ]),
);

const ToolReasonSchema = exactly<ToolReason>()(
  v.strictObject({
    code: v.picklist([
      'calibration unknown',
      'calibration expired',
      'below usable range',
      'above range',
      'too coarse',
      'no mark in the window',
      'shows no torque',
      'running torque uncertain',
    ]),
    sentence: v.string(),
  }),
);

const code = <const Word extends string>(word: Word) => v.strictObject({ code: v.literal(word) });

const RefusalSchema = exactly<Refusal>()(
  v.variant('code', [
    code('standing by'),
    code('session closed'),
    code('warning first'),
    code('condition first'),
    v.strictObject({ code: v.literal('tool not usable'), tool: v.string(), reasons: list(ToolReasonSchema) }),
    v.strictObject({ code: v.literal('confirm first'), fastener: v.number() }),
    v.strictObject({ code: v.literal('witness first'), fastener: v.number() }),
    code('no second person'),
    code('nothing to witness'),
    code('nothing to confirm'),
    code('nothing to correct'),
    code('answer first'),
    code('no such answer'),
    code('no reading here'),
    v.strictObject({ code: v.literal('reading first'), fastener: v.number() }),
    v.strictObject({ code: v.literal('out of order'), offered: v.number(), expected: v.number() }),
    v.strictObject({ code: v.literal('no such fastener'), offered: v.number(), expected: v.number() }),
    v.strictObject({ code: v.literal('not the last reading'), offered: v.number(), last: v.number() }),
    v.strictObject({ code: v.literal('unclear'), ...Doubtful }),
    code('not a setting tool'),
    v.strictObject({ code: v.literal('running torque is read'), fastener: v.number() }),
    code('first step'),
    code('readings stand'),
    code('not standing by'),
  ]),
);

const Window = v.pipe(
  v.strictObject({ min: WrittenTorque, max: WrittenTorque }),
  v.check(
    ({ min, max }) => compare(fromWritten('torque', min), fromWritten('torque', max)) <= 0,
    'Expected a min that is not above its max',
  ),
);

const RuleSchema = exactly<WrittenRule>()(
  v.variant('rule', [
    v.strictObject({ rule: v.literal('simple') }),
    v.strictObject({ rule: v.literal('guard band'), uncertainty: WrittenTorque, factor: DecimalText }),
    v.strictObject({ rule: v.literal('relative tool error'), errorPercent: DecimalText }),
  ]),
);

const BasisSchema = exactly<Basis>()(
  v.variant('of', [
    v.strictObject({
      of: v.literal('torque'),
      tool: v.string(),
      target: WrittenTorque,
      runningTorque: v.nullable(WrittenTorque),
      adapter: v.nullable(
        v.strictObject({ lever: written('length'), length: written('length'), angle: written('angle') }),
      ),
      setting: WrittenTorque,
      window: Window,
      accepted: v.nullable(Window),
      judging: RuleSchema,
    }),
    v.strictObject({ of: v.literal('running torque'), tool: v.string(), minimum: v.nullable(WrittenTorque) }),
  ]),
);

/** What happened, one schema for each kind of event. */
export const EventBodySchema = exactly<EventBody>()(
  v.variant('kind', [
    v.strictObject({
      kind: v.literal('opened'),
      format: v.literal(1),
      app: v.string(),
      people: v.strictObject({ mechanic: v.string(), second: v.nullable(v.string()) }),
      procedureHash: Hash,
      /** Read by the procedure room, which names every fault in it. */
      procedure: v.unknown(),
    }),
    only('reopened'),
    v.strictObject({ kind: v.literal('warning acknowledged'), step: v.string(), index: Count }),
    v.strictObject({ kind: v.literal('step done'), step: v.string() }),
    v.strictObject({ kind: v.literal('step taken back'), step: v.string() }),
    v.strictObject({ kind: v.literal('condition answered'), condition: v.string(), is: v.boolean() }),
    v.strictObject({ kind: v.literal('step skipped'), step: v.string(), condition: v.string(), is: v.boolean() }),
    v.strictObject({ kind: v.literal('answered'), step: v.string(), outcome: v.string() }),
    v.strictObject({
      kind: v.literal('fastener done'),
      step: v.string(),
      pass: Count,
      fastener: Count,
      turned: v.exactOptional(v.literal(true)),
    }),
    v.strictObject({
      kind: v.literal('reading captured'),
      step: v.string(),
      pass: Count,
      fastener: Count,
      evidence: v.picklist(['read', 'click']),
      reading: WrittenTorque,
      verdict: v.picklist(['in', 'under', 'over', 'not provable', 'nut worn']),
      basis: BasisSchema,
      corrects: v.nullable(Count),
      doubts: v.exactOptional(Doubts),
    }),
    v.strictObject({ kind: v.literal('witnessed'), of: Count, reading: WrittenTorque, person: v.string() }),
    v.strictObject({ kind: v.literal('disputed'), of: Count }),
    v.strictObject({ kind: v.literal('reading confirmed'), of: Count }),
    v.strictObject({ kind: v.literal('reading rejected'), of: Count }),
    v.strictObject({ kind: v.literal('reading disregarded'), of: Count }),
    v.strictObject({ kind: v.literal('timed out'), of: Count }),
    only('repeat asked'),
    v.strictObject({ kind: v.literal('asked'), question: QuestionSchema }),
    only('stood by'),
    only('continued'),
    v.strictObject({ kind: v.literal('refused'), meaning: MeaningSchema, reason: RefusalSchema }),
    only('closed'),
  ]),
);
