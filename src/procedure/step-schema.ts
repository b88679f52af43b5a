/** The steps of a procedure as they stand in a file. */
import * as v from 'valibot';
import { expected } from '../words/expected.ts';
import { Decimal, fields, Flag, Id, Ids, NumberText, oneOf, Percent, positive, Text, Whole } from './fields.ts';
import { Order, Pass, Some, Target } from './pattern-schema.ts';

/** Signal word and consequence are stored apart: the same word means different harm in different trades. */
const Hazard = fields({
  signal: oneOf('danger', 'warning', 'caution', 'notice'),
  consequence: oneOf('person', 'equipment'),
  text: Text,
});

const hazards = v.optional(
  v.array(Hazard, () => expected.list('hazards')),
  [],
);
const notes = v.optional(
  v.array(Text, () => expected.list('notes')),
  [],
);

const common = {
  id: Id,
  title: Text,
  /** What the step asks for, as shown. */
  text: Text,
  /** The same, short, as spoken; the shown text where it is absent. */
  say: v.optional(Text),
  /** Told before the text of the step, the gravest first. They inform; they hold no work. */
  hazards,
  notes,
  /** The step is only worked when the named condition of the unit has this answer. */
  applies: v.optional(fields({ condition: Id, is: Flag })),
  /** A second person must take part. */
  witness: v.optional(Flag, false),
};

/** Here everything is accounted for: counted tools and wrappers, and each cap and plug. The last step does so in any case. */
const reconciles = v.optional(Flag, false);

/** What becomes of a seal in a step. */
const SealWork = fields({ seal: Id, is: oneOf('inspected', 'lubricated', 'seated', 'discarded') });
const seals = v.optional(
  v.array(SealWork, () => expected.list('seals worked on')),
  [],
);

const Outcome = fields({
  id: Id,
  /** What is said for it, each a whole utterance; the id itself where it is absent. */
  say: v.optional(
    v.pipe(
      v.array(Text, () => expected.list('sayings')),
      v.minLength(1, () => expected.atLeast('one saying')),
    ),
  ),
  text: Text,
  then: oneOf('go on', 'stay'),
});

/** What the manual says to do where a fastener is out of the ordinary; said when it is reported. */
const onDeviation = v.optional(
  v.array(fields({ what: oneOf('over torque', 'under torque', 'takes no torque', 'damage'), text: Text }), () =>
    expected.list('what to do'),
  ),
  [],
);

const Judging = v.variant(
  'rule',
  [
    fields({ rule: v.literal('simple') }),
    fields({
      rule: v.literal('guard band'),
      uncertainty: positive('torque'),
      factor: v.exactOptional(
        v.pipe(
          NumberText,
          v.check(
            (factor) => factor > 0 && factor <= 3,
            () => expected.factor,
          ),
        ),
      ),
    }),
    fields({ rule: v.literal('relative tool error'), errorPercent: Percent(50) }),
  ],
  () => expected.rule,
);

const MeasureWindow = v.pipe(
  fields({ min: Decimal, max: Decimal }),
  v.check(
    ({ min, max }) => Number(min) <= Number(max),
    () => expected.minNotAboveMax,
  ),
);

const MOST_PASSES = 50;

export const StepSchema = v.variant(
  'kind',
  [
    fields({
      kind: v.literal('do'),
      ...common,
      seals,
      /** Openings that come open here; each gets its cap or plug at once. */
      opens: v.optional(Ids('openings'), []),
      /** Openings whose cap or plug is taken out here, to make the connection again. */
      closes: v.optional(Ids('openings'), []),
      /** Patterns whose fasteners are all started by hand here, before any is run down. */
      handStart: v.optional(Ids('patterns'), []),
      reconciles,
    }),
    fields({
      kind: v.literal('check'),
      ...common,
      seals,
      reconciles,
      outcomes: v.pipe(
        v.array(Outcome, () => expected.list('outcomes')),
        v.minLength(2, () => expected.atLeast('two outcomes')),
        v.check(
          (outcomes) => outcomes.some(({ then }) => then === 'go on'),
          () => expected.outcomeThatGoesOn,
        ),
      ),
    }),
    /** One opening comes open and gets its cap or plug at once. */
    fields({ kind: v.literal('open'), ...common, opening: Id }),
    /** The cap or plug of one opening is taken out, to make the connection again. */
    fields({ kind: v.literal('close'), ...common, opening: Id }),
    fields({
      kind: v.literal('hold'),
      ...common,
      /** How it must be held, in a few words: "ports up". Said again with the time. */
      orientation: v.optional(Text),
      /** What is said one after another while it is held, each a few words: "straight off". */
      calls: v.optional(
        v.array(Text, () => expected.list('calls')),
        [],
      ),
      /** How often the voice tells that the hold goes on. */
      everySeconds: v.optional(Whole(5, 600), 15),
    }),
    fields({
      kind: v.literal('loosen'),
      ...common,
      pattern: Id,
      /** The manual's own order for removal; the reverse of tightening where it is absent. */
      order: v.exactOptional(Order),
      stages: v.exactOptional(
        v.pipe(
          v.array(Text, () => expected.list('stages')),
          v.minLength(1, () => expected.atLeast('one stage')),
        ),
      ),
      /** Which fasteners come off first and which last, each one in one group; those of a group in the order of the step. */
      groups: v.exactOptional(
        v.pipe(
          v.array(fields({ name: Text, numbers: Some }), () => expected.list('groups')),
          v.minLength(2, () => expected.atLeast('two groups')),
        ),
      ),
      /** In the last stage, what is freed only once somebody has said that the weight is held. */
      heldBefore: v.exactOptional(oneOf('last fastener', 'last group')),
      onDeviation,
    }),
    fields({
      kind: v.literal('tighten'),
      ...common,
      pattern: Id,
      tool: Id,
      /** On the wrench. The values of the passes are at the fastener; the setting is computed. */
      adapter: v.optional(Id),
      /**
       * The nut's own drag is measured on each, at the fastener with a bare tool, and added to the target. A nut
       * below the minimum is rejected, new or used. The tool is that of the step where none is named.
       */
      runDown: v.optional(fields({ minimum: v.optional(positive('torque')), used: Flag, tool: v.optional(Id) })),
      /** What percentages, increments and checks refer to. */
      final: v.exactOptional(Target),
      passes: v.pipe(
        v.array(Pass, () => expected.list('passes')),
        v.minLength(1, () => expected.atLeast('one pass')),
        v.maxLength(MOST_PASSES, () => expected.atMost(MOST_PASSES, 'passes')),
      ),
      confirm: v.optional(oneOf('each', 'by going on', 'witness each'), 'each'),
      judging: v.optional(Judging, { rule: 'simple' }),
      onDeviation,
      /** A pass that was broken off for this many minutes or longer is begun again; never, where it is absent. */
      restartPassAfterMinutes: v.exactOptional(Whole(1, 1440)),
    }),
    fields({
      kind: v.literal('measure'),
      ...common,
      what: Text,
      unit: Text,
      window: v.optional(MeasureWindow),
      /** Whether the scale that is read goes below zero; where it is absent, it does where its window does. */
      belowZero: v.exactOptional(Flag),
      /** So long is waited, from the mechanic's word that the wait begins, before a value is taken: a leak check. */
      waitMinutes: v.optional(Whole(1, 1440)),
    }),
    fields({
      kind: v.literal('witness'),
      ...common,
      what: Text,
      /** An inspection by somebody who was never the mechanic in the session, and who gives their name for it. */
      independent: v.optional(Flag, false),
    }),
    fields({ kind: v.literal('note'), ...common }),
  ],
  () => expected.step,
);
