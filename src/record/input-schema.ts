/** The door for what an input was, as it stands in an entry: where it came from, what was heard, what it meant. */
import * as v from 'valibot';
import type { ToolReason } from '../procedure/tool-reasons.ts';
import {
  DEVIATION_KINDS,
  DISPOSITION_KINDS,
  type Heard,
  type SoundOfReading,
  type Instant,
  type Meaning,
  type Question,
  type ReadingDoubt,
  type SaidReading,
  type Source,
} from '../session/intent.ts';
import type { Refusal } from '../session/refusal.ts';
import { Count, Day, exactly, Hash, list, only, Time } from './exactly.ts';

export const SourceSchema = exactly<Source>()(v.picklist(['voice', 'gesture', 'pedal', 'touch', 'key', 'program']));

export const InstantSchema = exactly<Instant>()(
  v.strictObject({ utc: Time, monotonic: v.number(), day: v.exactOptional(Day) }),
);

const SoundSchema = exactly<SoundOfReading>()(
  v.variant('kept', [
    v.strictObject({ kept: v.literal(true), sha256: Hash, bytes: Count, from: Time, to: Time }),
    v.strictObject({ kept: v.literal(false), why: v.string() }),
  ]),
);

export const HeardSchema = exactly<Heard>()(
  v.strictObject({
    text: v.string(),
    words: list(v.strictObject({ word: v.string(), confidence: v.string() })),
    again: v.exactOptional(v.string()),
    spoken: v.exactOptional(v.strictObject({ from: Time, to: Time })),
    sound: v.exactOptional(SoundSchema),
  }),
);

/** What was said, right or wrong: it is not judged here. */
const Said = exactly<SaidReading>()(v.strictObject({ fastener: v.nullable(v.number()), value: v.string() }));

export const Doubts = exactly<readonly ReadingDoubt[]>()(
  list(
    v.picklist([
      'not sure',
      'off the scale',
      'between marks',
      'sounds like another',
      'out by ten',
      'digits swapped',
      'digit count',
      'too soon',
    ]),
  ),
);

const Doubtful = {
  doubt: v.picklist(['several readings', 'not sure', 'other unit']),
  readings: list(Said),
} as const;

export const QuestionSchema = exactly<Question>()(
  v.variant('about', [
    v.strictObject({ about: v.picklist(['place', 'left', 'last readings', 'why', 'slowly']) }),
    v.strictObject({ about: v.literal('logged'), fastener: v.number() }),
  ]),
);

/** What may be meant from the second person's own window: a blind value, their word for a step, joining and leaving. */
export type SecondMeaning = Extract<Meaning, { kind: 'witness' | 'witness says' | 'inspects' | 'second person' }>;

const BySecond = [
  v.strictObject({ kind: v.literal('witness'), reading: Said }),
  v.strictObject({ kind: v.literal('witness says'), agrees: v.boolean() }),
  v.strictObject({ kind: v.literal('inspects'), name: v.string(), agrees: v.boolean() }),
  v.strictObject({ kind: v.literal('second person'), name: v.nullable(v.string()) }),
] as const;

export const SecondMeaningSchema = exactly<SecondMeaning>()(v.variant('kind', [...BySecond]));

export const MeaningSchema = exactly<Meaning>()(
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
    only('time passed'),
    only('held'),
    only('set down'),
    only('help'),
    v.strictObject({ kind: v.literal('answer'), outcome: v.string() }),
    v.strictObject({ kind: v.literal('reading'), reading: Said, doubts: v.exactOptional(Doubts) }),
    v.strictObject({ kind: v.literal('correction'), reading: Said, doubts: v.exactOptional(Doubts) }),
    ...BySecond,
    v.strictObject({ kind: v.literal('observed'), value: v.string() }),
    v.strictObject({
      kind: v.literal('dispose'),
      of: v.number(),
      what: v.picklist(DISPOSITION_KINDS),
      by: v.string(),
      note: v.string(),
    }),
    v.strictObject({
      kind: v.literal('fresh consumable'),
      consumable: v.string(),
      batch: v.string(),
      expires: v.string(),
      quantity: v.string(),
    }),
    v.strictObject({ kind: v.literal('sign'), role: v.picklist(['mechanic', 'inspector']), name: v.string() }),
    v.strictObject({ kind: v.literal('click'), fastener: v.nullable(v.number()) }),
    v.strictObject({ kind: v.literal('report'), what: v.picklist(DEVIATION_KINDS) }),
    only('leave open'),
    v.strictObject({ kind: v.literal('reason'), text: v.string() }),
    only('hand over'),
    v.strictObject({ kind: v.literal('take over'), name: v.string() }),
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

export const RefusalSchema = exactly<Refusal>()(
  v.variant('code', [
    code('standing by'),
    code('session closed'),
    code('warning first'),
    code('condition first'),
    v.strictObject({ code: v.literal('tool not usable'), tool: v.string(), reasons: list(ToolReasonSchema) }),
    v.strictObject({ code: v.literal('point first'), point: v.string() }),
    v.strictObject({ code: v.literal('unaccounted'), points: list(v.string()) }),
    v.strictObject({ code: v.literal('seal not reusable'), seal: v.string(), failed: v.nullable(v.string()) }),
    v.strictObject({ code: v.literal('seal not seated'), seal: v.string() }),
    v.strictObject({ code: v.literal('not started by hand'), pattern: v.string() }),
    v.strictObject({ code: v.literal('consumable expired'), consumable: v.string(), expires: v.string() }),
    v.strictObject({ code: v.literal('consumable used up'), consumable: v.string() }),
    code('no such consumable'),
    v.strictObject({ code: v.literal('no expiry date'), consumable: v.string() }),
    v.strictObject({ code: v.literal('no quantity'), consumable: v.string() }),
    v.strictObject({ code: v.literal('confirm first'), fastener: v.number() }),
    v.strictObject({ code: v.literal('in doubt'), fastener: v.number() }),
    v.strictObject({ code: v.literal('witness first'), fastener: v.number() }),
    code('no second person'),
    code('nothing to witness'),
    code('step witness first'),
    code('doer is no witness'),
    code('no name'),
    code('between steps'),
    code('not handing over'),
    code('same mechanic'),
    code('break first'),
    code('reason first'),
    code('no reason wanted'),
    code('nothing to report on'),
    code('report first'),
    code('nothing to confirm'),
    code('nothing to correct'),
    code('value first'),
    code('value unconfirmed'),
    code('scale ends at zero'),
    code('wait first'),
    v.strictObject({ code: v.literal('wait not over'), seconds: v.number() }),
    code('inspector first'),
    v.strictObject({ code: v.literal('own work'), name: v.string() }),
    code('closing'),
    code('nothing to decide'),
    v.strictObject({
      code: v.literal('not worked again'),
      because: v.picklist(['not left open', 'moved since', 'nut seated']),
    }),
    code('nothing to sign'),
    v.strictObject({ code: v.literal('not the mechanic'), name: v.string() }),
    code('hold first'),
    code('holding'),
    code('set down first'),
    code('nothing to hold'),
    code('not holding'),
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
