import * as v from 'valibot';
import { DateText, Id, Percent, Text, Whole, positive, quantity } from './fields.ts';
import { Layout, Order, Pass, Window } from './pattern-schema.ts';

/** Signal word and consequence are stored apart: the same word means different harm in different trades. */
const Hazard = v.strictObject({
  signal: v.picklist(['danger', 'warning', 'caution', 'notice'], 'expected one of: danger, warning, caution, notice'),
  consequence: v.picklist(['person', 'equipment'], 'expected one of: person, equipment'),
  text: Text,
});

const common = {
  id: Id,
  title: Text,
  /** What the step asks for, as shown. */
  text: Text,
  /** The same, short, as spoken; the shown text where it is absent. */
  say: v.optional(Text),
  hazards: v.optional(v.array(Hazard), []),
  notes: v.optional(v.array(Text), []),
  /** The step is only worked when the named condition of the unit has this answer. */
  applies: v.optional(v.strictObject({ condition: Id, is: v.boolean('expected true or false') })),
  /** A second person must take part. */
  witness: v.optional(v.boolean('expected true or false'), false),
};

const Outcome = v.strictObject({
  id: Id,
  /** What is said for it, each a whole utterance; the id itself where it is absent. */
  say: v.optional(v.array(Text)),
  text: Text,
  then: v.picklist(['go on', 'stay'], 'expected one of: go on, stay'),
});

const confirm = v.optional(
  v.picklist(['each', 'by going on', 'witness each'], 'expected one of: each, by going on, witness each'),
  'each',
);

const judging = v.optional(
  v.variant(
    'rule',
    [
      v.strictObject({ rule: v.literal('simple') }),
      v.strictObject({ rule: v.literal('guard band'), uncertainty: positive('torque') }),
      v.strictObject({ rule: v.literal('relative tool error'), errorPercent: Percent(50) }),
    ],
    'expected a rule: simple, guard band or relative tool error',
  ),
  { rule: 'simple' },
);

const StepSchema = v.variant(
  'kind',
  [
    v.strictObject({ kind: v.literal('do'), ...common }),
    v.strictObject({
      kind: v.literal('check'),
      ...common,
      outcomes: v.pipe(v.array(Outcome), v.minLength(2, 'expected at least two outcomes')),
    }),
    v.strictObject({ kind: v.literal('open'), ...common, opening: Id }),
    v.strictObject({ kind: v.literal('close'), ...common, opening: Id }),
    v.strictObject({
      kind: v.literal('hold'),
      ...common,
      orientation: v.optional(Text),
      everySeconds: v.optional(Whole(5, 600), 15),
    }),
    v.strictObject({
      kind: v.literal('loosen'),
      ...common,
      pattern: Id,
      order: v.exactOptional(Order),
      stages: v.exactOptional(v.array(Text)),
    }),
    v.strictObject({
      kind: v.literal('tighten'),
      ...common,
      pattern: Id,
      tool: Id,
      adapter: v.optional(Id),
      /** The nut's own drag is measured on each and added to the target. */
      runDown: v.optional(v.strictObject({ minimum: v.optional(quantity('torque')), used: v.boolean() })),
      /** What percentages, increments and checks refer to. */
      final: v.exactOptional(v.strictObject({ target: positive('torque'), window: Window })),
      passes: v.pipe(v.array(Pass), v.minLength(1, 'expected at least one pass')),
      confirm,
      judging,
    }),
    v.strictObject({
      kind: v.literal('measure'),
      ...common,
      what: Text,
      unit: Text,
      window: v.optional(v.strictObject({ min: Text, max: Text })),
    }),
    v.strictObject({ kind: v.literal('witness'), ...common, what: Text }),
    v.strictObject({ kind: v.literal('note'), ...common }),
  ],
  'expected a kind of step: do, check, open, close, hold, loosen, tighten, measure, witness or note',
);

export const ProcedureSchema = v.strictObject({
  $schema: v.optional(v.string()),
  format: v.literal('bothhands-procedure', 'expected "bothhands-procedure"'),
  version: v.literal(1, 'expected 1, the version of this format'),
  id: Id,
  title: Text,
  /** True for demonstrations: shown and spoken, so that nobody works to invented values. */
  invented: v.optional(v.boolean('expected true or false'), false),
  source: v.strictObject({ document: Text, revision: Text, issued: v.optional(DateText) }),
  component: v.strictObject({
    name: Text,
    partNumber: v.optional(Text),
    dryMass: positive('mass'),
    fluid: v.optional(v.strictObject({ name: Text, density: positive('density') })),
    drains: v.optional(quantity('volume')),
    retains: v.optional(quantity('volume')),
    portsUp: v.optional(v.array(Text), []),
  }),
  conditions: v.optional(v.array(v.strictObject({ id: Id, question: Text })), []),
  openings: v.optional(
    v.array(
      v.strictObject({
        id: Id,
        name: Text,
        closure: v.picklist(['cap', 'plug'], 'expected one of: cap, plug'),
      }),
    ),
    [],
  ),
  tools: v.array(
    v.strictObject({
      id: Id,
      name: Text,
      type: v.picklist(['indicating', 'setting'], 'expected one of: indicating, setting'),
      range: v.strictObject({ min: positive('torque'), max: positive('torque') }),
      resolution: positive('torque'),
      maximumError: v.optional(Percent(20)),
      /** Drive centre to the point of the grip where the hand pulls. */
      lever: v.optional(positive('length')),
      calibrationDue: v.optional(DateText),
    }),
  ),
  adapters: v.optional(
    v.array(v.strictObject({ id: Id, name: Text, length: quantity('length'), angle: quantity('angle') })),
    [],
  ),
  seals: v.optional(
    v.array(
      v.strictObject({
        id: Id,
        name: Text,
        partNumber: v.optional(Text),
        fluid: v.optional(Text),
        reuse: v.picklist(['never', 'if it passes inspection'], 'expected one of: never, if it passes inspection'),
        criteria: v.optional(v.array(Text), []),
      }),
    ),
    [],
  ),
  consumables: v.optional(v.array(v.strictObject({ id: Id, name: Text, expires: v.optional(v.boolean(), false) })), []),
  patterns: v.array(
    v.strictObject({
      id: Id,
      name: Text,
      fastener: v.picklist(['stud', 'nut', 'bolt', 'screw'], 'expected one of: stud, nut, bolt, screw'),
      thread: v.optional(Text),
      /** Thread condition as the source states it ("dry", "oiled with …"): a lubricated value is never derived. */
      threadCondition: v.optional(Text),
      layout: Layout,
      order: Order,
    }),
  ),
  steps: v.pipe(v.array(StepSchema), v.minLength(1, 'expected at least one step')),
});

/** A procedure as it is written in a file. */
export type ProcedureFile = v.InferInput<typeof ProcedureSchema>;
/** A procedure read from a file: quantities in full precision, absent parts filled with their stated defaults. */
export type Procedure = v.InferOutput<typeof ProcedureSchema>;
