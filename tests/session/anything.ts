/** Anything that may be said, and jobs that come some way and then meet it. */
import fc from 'fast-check';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { isReadCall, planOf, toolFor } from '../../src/session/calls.ts';
import { openReason } from '../../src/session/reasons.ts';
import { DEVIATION_KINDS, DISPOSITION_KINDS, type Meaning } from '../../src/session/intent.ts';
import { witnessIn } from '../../src/session/people.ts';
import { pointsOf, type Point } from '../../src/session/point.ts';
import { currentPoint } from '../../src/session/points.ts';
import { reuseRefusal } from '../../src/session/seals.ts';
import { answerCheck, spentConsumable } from '../../src/session/settle.ts';
import { settingOf } from '../../src/session/setting.ts';
import {
  currentCall,
  currentStep,
  lastConfirmed,
  openCondition,
  openWarning,
  pendingReading,
  type SessionState,
} from '../../src/session/state.ts';
import { beforeClosing } from '../../src/session/closing.ts';
import { pendingValue } from '../../src/session/observed.ts';
import { awaitsStepWitness, wantsInspector } from '../../src/session/step-witness.ts';
import { asksValue, awaitsWitness, wantsWitness } from '../../src/session/witness.ts';
import {
  demo,
  dial,
  fireBoat,
  indicating,
  procedureOf,
  setting,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from './play.ts';

const fastener = fc.oneof(
  { weight: 3, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: 11 }) },
);
const value = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom('12', '18', '24.5', '15.5', '22.9', '30') },
  { weight: 3, arbitrary: fc.integer({ min: 0, max: 9999 }).map((tenths) => `${tenths / 10}`) },
  { weight: 1, arbitrary: fc.string() },
);
const said = fc.record({ fastener, value });
const doubted = fc.record(
  { doubts: fc.subarray(['off the scale', 'between marks', 'digits swapped', 'not sure'] as const, { minLength: 1 }) },
  { requiredKeys: [] },
);
/** A packing that was fetched. */
const freshOf = (consumable: string, expires = '2031-03-31'): Meaning => ({
  ...{ kind: 'fresh consumable', consumable, batch: '7', expires, quantity: '2' },
});
export const meaning: fc.Arbitrary<Meaning> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('affirm' as const) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('next' as const) }) },
  {
    weight: 4,
    arbitrary: fc.tuple(said, doubted).map(([reading, more]): Meaning => ({ kind: 'reading', reading, ...more })),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(said, doubted).map(([reading, more]): Meaning => ({ kind: 'correction', reading, ...more })),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('witness' as const), reading: said }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('click' as const), fastener }) },
  { weight: 1, arbitrary: value.map((value): Meaning => ({ kind: 'observed', value })) },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc
        .tuple(fc.constantFrom('Mechanic', 'Sixth person', ''), fc.boolean())
        .map(([name, agrees]): Meaning => ({ kind: 'inspects', name, agrees })),
      fc
        .tuple(fc.constantFrom('mechanic' as const, 'inspector' as const), fc.constantFrom('Mechanic', 'Sixth person'))
        .map(([role, name]): Meaning => ({ kind: 'sign', role, name })),
      fc
        .constantFrom(...DISPOSITION_KINDS)
        .map((what): Meaning => ({ kind: 'dispose', of: 3, what, by: 'Mechanic', note: '' })),
      fc
        .tuple(fc.constantFrom('new-seal', 'gasket', 'x'), fc.constantFrom('2031-03-31', '2020-01-01', 'soon'))
        .map(([consumable, expires]): Meaning => freshOf(consumable, expires)),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('answer' as const), outcome: fc.constantFrom('reuse', 'stop', 'x') }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('unclear' as const),
      doubt: fc.constantFrom('several readings' as const, 'not sure' as const, 'other unit' as const),
      readings: fc.array(said, { maxLength: 2 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc
      .oneof(
        fc.record({
          about: fc.constantFrom('place' as const, 'left' as const, 'why' as const, 'last readings' as const),
        }),
        fc.record({ about: fc.constant('logged' as const), fastener: fc.integer({ min: 1, max: 11 }) }),
      )
      .map((question): Meaning => ({ kind: 'question', question })),
  },
  {
    weight: 6,
    arbitrary: fc
      .constantFrom('negative', 'disregard', 'back', 'turned', 'say again', 'stand by', 'continue', 'reopen', 'silence')
      .map((kind): Meaning => ({ kind })),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom('held', 'set down', 'help', 'time passed').map((kind): Meaning => ({ kind })),
  },
  {
    weight: 3,
    arbitrary: fc.oneof(
      fc.boolean().map((agrees): Meaning => ({ kind: 'witness says', agrees })),
      fc.constantFrom(...DEVIATION_KINDS).map((what): Meaning => ({ kind: 'report', what })),
      fc.constantFrom('thread is torn', ' ').map((text): Meaning => ({ kind: 'reason', text })),
      fc.constantFrom('leave open', 'hand over').map((kind): Meaning => ({ kind })),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.oneof(
      fc
        .constantFrom('Mechanic', 'Second person', 'Third person', '')
        .map((name): Meaning => ({ kind: 'take over', name })),
      fc.constantFrom('Mechanic', 'Fourth person', null).map((name): Meaning => ({ kind: 'second person', name })),
    ),
  },
);

const final = { final: { target: { value: '24.5', unit: 'N·m' }, window: torquePass('24.5', '23', '26').window } };
const pass = fc.constantFrom<object>(
  { kind: 'snug' },
  { kind: 'percent', percent: '60' },
  { kind: 'percent', percent: '100' },
  { kind: 'circular check' },
  { kind: 're-check', afterHours: '4' },
  { kind: 'angle', angle: { value: '90', unit: '°' }, tolerance: { value: '5', unit: '°' } },
);
/** Passes never go down, so those with a torque come in this order. */
const passes = fc
  .array(pass, { minLength: 1, maxLength: 4 })
  .map((some) => [
    ...some.filter((each) => 'percent' in each && each.percent === '60'),
    ...some.filter((each) => !('percent' in each && each.percent === '60')),
  ]);
const judging = fc.constantFrom<object>(
  { rule: 'simple' },
  { rule: 'guard band', uncertainty: { value: '0.2', unit: 'N·m' } },
);
const confirm = fc.constantFrom('each', 'by going on', 'witness each');
const hazards = fc.array(
  fc.constantFrom('danger', 'warning', 'caution').map((signal) => ({ signal, consequence: 'person', text: 'Mind.' })),
  { maxLength: 2 },
);
const outcomes = [
  { id: 'reuse', text: 'Reuse it.', then: 'go on' },
  { id: 'stop', text: 'Stop.', then: 'stay' },
];
/** Running torque, of new nuts or of used ones. The tool of the step may only show it where it is no setting tool. */
const runDown = fc.constantFrom<object>(
  { used: false, tool: 'dial' },
  { used: true, minimum: { value: '2', unit: 'N·m' }, tool: 'dial' },
);
const applies = fc.option(fc.record({ condition: fc.constantFrom('wet', 'old'), is: fc.boolean() }), {
  nil: undefined,
});
const conditions = [
  { id: 'wet', question: 'Is it wet?' },
  { id: 'old', question: 'Is it old?' },
];
const steps = fc
  .array(
    fc
      .oneof(
        { weight: 1, arbitrary: hazards.map((some) => ({ kind: 'do', hazards: some })) },
        { weight: 1, arbitrary: hazards.map((some) => ({ kind: 'check', outcomes, hazards: some })) },
        { weight: 1, arbitrary: fc.constant({ kind: 'loosen', pattern: 'three' }) },
        { weight: 1, arbitrary: hazards.map((some) => ({ kind: 'hold', calls: ['Off', 'Down'], hazards: some })) },
        {
          weight: 1,
          arbitrary: fc.tuple(hazards, fc.boolean()).map(([some, independent]) => ({
            ...{ kind: 'witness', what: 'all of it', hazards: some, independent },
          })),
        },
        {
          weight: 1,
          arbitrary: hazards.map((some) => ({
            ...{ kind: 'measure', what: 'level', unit: 'mm', window: { min: '12', max: '18' }, hazards: some },
          })),
        },
        {
          weight: 3,
          arbitrary: fc
            .record({ passes, judging, confirm, hazards, runDown: fc.option(runDown, { nil: undefined }) })
            .map(({ runDown, ...some }) => tighten('any', { ...final, ...some, ...(runDown ? { runDown } : {}) })),
        },
      )
      .chain((some) =>
        fc
          .tuple(applies, fc.boolean())
          .map(([only, witness]) => ({ ...some, witness, ...(only ? { applies: only } : {}) })),
      ),
    { minLength: 1, maxLength: 5 },
  )
  .map((some) => some.map(({ kind, ...more }, i) => ({ ...step(`step-${i}`, kind), ...more, id: `step-${i}` })));
const small = fc
  .record({ steps, tool: fc.constantFrom(indicating, setting), signatures: fc.subarray(['mechanic', 'inspector']) })
  .map(({ steps, tool, signatures }) => procedureOf(steps, { tools: [tool, dial], conditions, signatures }));
const procedure = fc.oneof(fc.constant(demo()), fc.constant(fireBoat()), small);

/** The answer that takes the job on: warnings are acknowledged, readings are what was called for and are confirmed. */
export function openly(state: SessionState): Meaning {
  const current = currentStep(state);
  const left = beforeClosing(state);
  if (state.phase === 'standing by') return { kind: 'continue' };
  if (state.breakOf !== null) return { kind: 'affirm' };
  const wanted = openReason(state);
  if (wanted) return wanted.reason === null ? { kind: 'reason', text: 'worn' } : { kind: 'affirm' };
  if (current === null && left?.kind === 'disposition')
    return { kind: 'dispose', of: left.point.seq, what: 'deferred', by: 'Sixth person', note: '' };
  if (current === null && left?.kind === 'signature')
    return { kind: 'sign', role: left.role, name: left.role === 'mechanic' ? state.people.mechanic : 'Sixth person' };
  if (current !== null && awaitsStepWitness(state) && wantsInspector(current))
    return { kind: 'inspects', name: 'Sixth person', agrees: true };
  const isWitnessed = current !== null && (awaitsStepWitness(state) || wantsWitness(state, current.id));
  if (isWitnessed && witnessIn(state) === null) return { kind: 'second person', name: 'Fifth person' };
  const pending = pendingReading(state);
  if (pending && !openWarning(state) && awaitsWitness(state, pending))
    return { kind: 'witness', reading: { fastener: null, value: pending.reading.value } };
  if (pending && !openWarning(state) && asksValue(state, pending)) return { kind: 'negative' };
  if (openCondition(state) || openWarning(state) || pending || pendingValue(state)) return { kind: 'affirm' };
  if (awaitsStepWitness(state)) return { kind: 'witness says', agrees: true };
  const spent = spentConsumable(state);
  if (spent) return freshOf(spent.consumable);
  const point = currentPoint(state);
  if (point) return openAnswer(state, point);
  if (current?.kind === 'measure')
    return current.waitMinutes !== undefined && !state.waits.has(current.id)
      ? { kind: 'next' }
      : { kind: 'observed', value: current.window?.min ?? '1' };
  if (current?.kind === 'hold')
    return { kind: state.hold === null ? 'held' : current.calls.length > state.hold.called ? 'next' : 'set down' };
  if (current?.kind === 'check') {
    // Whoever hears that a seal cannot be used again says the other word.
    const onwards = current.outcomes.filter(({ then }) => then === 'go on').map(({ id }) => id);
    const taken = onwards.find((id) => answerCheck(state, current, id).kind === 'accepted');
    return { kind: 'answer', outcome: taken ?? onwards[0] ?? '' };
  }
  const call = currentCall(state);
  if (current?.kind !== 'tighten' || !call || !isReadCall(call)) return { kind: 'next' };
  const { resolution } = toolFor(state.procedure, current, call.pass.index);
  // A running torque that no used nut is refused for, and that lifts no setting off its scale.
  const running = { value: resolution.unit === 'lbf·in' ? '22' : '2.5' };
  const { value } = settingOf(state, current, call)?.value ?? running;
  return { kind: 'reading', reading: { fastener: call.fastener, value } };
}

/** The answer for which everything is in order; a seal that cannot be used again is replaced. */
function openAnswer(state: SessionState, point: Point): Meaning {
  switch (point.kind) {
    case 'held':
      return { kind: 'held' };
    case 'seal':
      return { kind: 'answer', outcome: reuseRefusal(state, point.seal) ? 'replace' : 'reuse' };
    default:
      return { kind: 'affirm' };
  }
}

export const goOpenly = (play: Play, count: number): Play =>
  Array.from({ length: count }).reduce<Play>(
    (at) => (at.state.phase === 'closed' ? at : tell(at, openly(at.state))),
    play,
  );

/** How many open answers a job takes; counted once for the demonstrations, which come again and again. */
const counted = new WeakMap<Procedure, number>();
function answersIn(procedure: Procedure): number {
  const known = counted.get(procedure) ?? countAnswers(procedure);
  counted.set(procedure, known);
  return known;
}
function countAnswers(procedure: Procedure): number {
  let play = start(procedure);
  let answers = 0;
  for (; play.state.phase !== 'closed' && answers < mostAnswers(procedure); answers++)
    play = tell(play, openly(play.state));
  return answers;
}

/** A correction of the reading that is in question, by a value that fits it. */
function rightly(state: SessionState): Meaning {
  const inQuestion = pendingReading(state) ?? lastConfirmed(state);
  return { kind: 'correction', reading: { fastener: null, value: inQuestion?.reading.value ?? '24.5' } };
}

/** What is begun is ended: a report is given its reason, a handover somebody who takes over. Chance alone seldom does. */
function onwards({ deviations, handingOver, doers }: SessionState): Meaning {
  const newest = deviations.at(-1);
  if (handingOver) return { kind: 'take over', name: `Mechanic ${doers.length + 1}` };
  if (newest?.status === 'reason wanted') return { kind: 'reason', text: 'thread is torn' };
  if (newest?.status === 'reason given') return { kind: 'affirm' };
  return newest?.status === 'stated' && !newest.leftOpen ? { kind: 'leave open' } : { kind: 'report', what: 'damage' };
}

/** Anything at all, or something that fits: without the others, chance seldom gets far. */
const move: fc.Arbitrary<(state: SessionState) => Meaning> = fc.oneof(
  { weight: 3, arbitrary: meaning.map((meaning) => () => meaning) },
  { weight: 2, arbitrary: fc.constant(openly) },
  { weight: 1, arbitrary: fc.constant(rightly) },
  { weight: 1, arbitrary: fc.constant(onwards) },
);

/** A job that has come some way, and then meets anything at all. */
export const job = fc
  .record({ procedure, way: fc.nat(99), moves: fc.array(move, { maxLength: 30, size: 'max' }) })
  .map(({ procedure, way, moves }) => {
    const begun = goOpenly(start(procedure), Math.floor((answersIn(procedure) * way) / 100));
    return moves.reduce((play, move) => tell(play, move(play.state)), begun);
  });

/** More answers than any job wants: each warning, each point, each step and its condition, three for each reading, and one more round of each check. */
export function mostAnswers(procedure: Procedure): number {
  const calls = procedure.steps.flatMap((each) => planOf(procedure, each).calls);
  const warnings = procedure.steps.flatMap(({ hazards }) => hazards);
  const { steps, openings, tools, consumables } = procedure;
  const points = steps.flatMap((each) => pointsOf(procedure, each));
  const accounts = 2 * openings.length + tools.length + consumables.length;
  // One event a second: what is said before a wait is over is refused.
  const waits = steps.map((each) => (each.kind === 'measure' ? 60 * (each.waitMinutes ?? 0) : 0));
  return (
    waits.reduce((sum, each) => sum + each, 20) +
    3 * steps.length +
    warnings.length +
    4 * calls.length +
    points.length +
    accounts
  );
}
