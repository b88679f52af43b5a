/**
 * The door for what an entry says. The types in the session room are the source of meaning; the compiler proves that
 * these schemas let in exactly what those types say. A record read from a disk or a file is from outside: nothing in it
 * is believed before it went through here.
 */
import * as v from 'valibot';
import type { Basis, EventBody, WrittenRule } from '../session/event.ts';
import { DEVIATION_KINDS, DISPOSITION_KINDS } from '../session/intent.ts';
import { compare, fromWritten } from '../units/index.ts';
import { recordFindings } from '../words/record-findings.ts';
import { Count, Day, DecimalText, exactly, Hash, list, only, written, WrittenTorque } from './exactly.ts';
import { PreparedFactSchema } from './prepared-schema.ts';
import { Doubts, MeaningSchema, QuestionSchema, RefusalSchema } from './input-schema.ts';

const Window = v.pipe(
  v.strictObject({ min: WrittenTorque, max: WrittenTorque }),
  v.check(
    // A bound that is no quantity has its own fault, and cannot be compared.
    ({ min, max }) =>
      ![min, max].every((bound) => v.is(WrittenTorque, bound)) ||
      compare(fromWritten('torque', min), fromWritten('torque', max)) <= 0,
    () => recordFindings.minAboveMax,
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
      sound: v.exactOptional(v.picklist(['agreed', 'not agreed'])),
      model: v.exactOptional(v.nullable(v.strictObject({ name: v.string(), sha256: v.string() }))),
    }),
    v.strictObject({ kind: v.literal('prepared'), fact: PreparedFactSchema }),
    only('reopened'),
    v.strictObject({ kind: v.literal('warning acknowledged'), step: v.string(), index: Count }),
    v.strictObject({ kind: v.literal('step done'), step: v.string() }),
    v.strictObject({ kind: v.literal('step taken back'), step: v.string() }),
    v.strictObject({ kind: v.literal('condition answered'), condition: v.string(), is: v.boolean() }),
    v.strictObject({ kind: v.literal('step skipped'), step: v.string(), condition: v.string(), is: v.boolean() }),
    v.strictObject({ kind: v.literal('hold begun'), step: v.string() }),
    v.strictObject({ kind: v.literal('hold call'), step: v.string(), index: Count }),
    v.strictObject({ kind: v.literal('hold ended'), step: v.string(), seconds: Count }),
    v.strictObject({ kind: v.literal('wait begun'), step: v.string() }),
    v.strictObject({
      kind: v.literal('value observed'),
      step: v.string(),
      value: DecimalText,
      unit: v.string(),
      window: v.nullable(v.strictObject({ min: DecimalText, max: DecimalText })),
      verdict: v.picklist(['in', 'under', 'over', 'no window']),
      waited: v.nullable(Count),
      corrects: v.nullable(Count),
    }),
    v.strictObject({ kind: v.literal('value confirmed'), of: Count }),
    v.strictObject({ kind: v.literal('value rejected'), of: Count }),
    v.strictObject({ kind: v.literal('value disregarded'), of: Count }),
    v.strictObject({ kind: v.literal('value left open'), of: Count }),
    v.strictObject({
      kind: v.literal('disposed'),
      of: Count,
      what: v.picklist(DISPOSITION_KINDS),
      by: v.string(),
      note: v.nullable(v.string()),
    }),
    v.strictObject({ kind: v.literal('signed'), role: v.picklist(['mechanic', 'inspector']), person: v.string() }),
    v.strictObject({ kind: v.literal('help called'), step: v.nullable(v.string()) }),
    v.strictObject({ kind: v.literal('answered'), step: v.string(), outcome: v.string() }),
    v.strictObject({
      kind: v.literal('point settled'),
      step: v.string(),
      point: v.string(),
      answer: v.picklist(['affirm', 'negative', 'held', 'reuse', 'replace']),
      part: v.exactOptional(v.literal('new')),
      replaced: v.exactOptional(
        v.strictObject({
          because: v.picklist(['never used again', 'failed', 'chosen']),
          failed: v.nullable(v.string()),
          partNumber: v.nullable(v.string()),
        }),
      ),
    }),
    v.strictObject({
      kind: v.literal('consumable fetched'),
      consumable: v.string(),
      batch: v.nullable(v.string()),
      expires: v.nullable(Day),
      quantity: v.nullable(Count),
    }),
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
    v.strictObject({ kind: v.literal('witness asked'), step: v.string() }),
    v.strictObject({
      kind: v.literal('step witnessed'),
      step: v.string(),
      person: v.string(),
      agrees: v.boolean(),
      independent: v.exactOptional(v.literal(true)),
    }),
    v.strictObject({
      kind: v.literal('deviation reported'),
      step: v.string(),
      pass: Count,
      fastener: Count,
      what: v.picklist(DEVIATION_KINDS),
      reading: v.nullable(Count),
      again: v.exactOptional(Count),
    }),
    v.strictObject({ kind: v.literal('reason given'), of: Count, text: v.string() }),
    v.strictObject({ kind: v.literal('reason confirmed'), of: Count }),
    v.strictObject({ kind: v.literal('reason rejected'), of: Count }),
    v.strictObject({ kind: v.literal('deviation disregarded'), of: Count }),
    v.strictObject({ kind: v.literal('left open'), of: Count }),
    v.strictObject({ kind: v.literal('second person joined'), name: v.string() }),
    v.strictObject({ kind: v.literal('second person left'), name: v.string() }),
    only('handover begun'),
    v.strictObject({ kind: v.literal('handed over'), from: v.string(), to: v.string() }),
    only('break noticed'),
    only('break accepted'),
    v.strictObject({ kind: v.literal('pass restarted'), step: v.string(), pass: Count }),
    only('repeat asked'),
    v.strictObject({ kind: v.literal('asked'), question: QuestionSchema }),
    only('stood by'),
    only('continued'),
    v.strictObject({ kind: v.literal('refused'), meaning: MeaningSchema, reason: RefusalSchema }),
    only('closed'),
    v.strictObject({ kind: v.literal('sounds deleted'), sounds: list(Hash) }),
  ]),
);
