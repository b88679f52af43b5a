/** What holds whatever is said, in whatever order, over the demonstration and over small procedures made at random. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Procedure } from '../../src/procedure/procedure.ts';
import { calledValue, isTorqueCall, planOf, toolOf } from '../../src/session/calls.ts';
import { decide } from '../../src/session/decide.ts';
import type { EventBody } from '../../src/session/event.ts';
import type { Meaning } from '../../src/session/intent.ts';
import {
  begin,
  currentCall,
  currentStep,
  fold,
  isSettled,
  lastConfirmed,
  openWarning,
  pendingReading,
  type Reading,
  type SessionState,
} from '../../src/session/state.ts';
import { convert, toWritten } from '../../src/units/index.ts';
import {
  demo,
  indicating,
  people,
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
const meaning: fc.Arbitrary<Meaning> = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('affirm' as const) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('next' as const) }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('reading' as const), reading: said }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('correction' as const), reading: said }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('click' as const), fastener }) },
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
    weight: 6,
    arbitrary: fc
      .constantFrom('negative', 'disregard', 'back', 'turned', 'say again', 'stand by', 'continue', 'reopen')
      .map((kind): Meaning => ({ kind })),
  },
);

const final = { final: { target: { value: '24.5', unit: 'N·m' }, window: torquePass('24.5', '23', '26').window } };
const pass = fc.constantFrom<object>(
  { kind: 'snug' },
  { kind: 'percent', percent: '30' },
  { kind: 'percent', percent: '100' },
  { kind: 'circular check' },
  { kind: 're-check', afterHours: '4' },
  { kind: 'angle', angle: { value: '90', unit: '°' }, tolerance: { value: '5', unit: '°' } },
);
/** Passes never go down, so those with a torque come in this order. */
const passes = fc
  .array(pass, { minLength: 1, maxLength: 4 })
  .map((some) => [
    ...some.filter((each) => 'percent' in each && each.percent === '30'),
    ...some.filter((each) => !('percent' in each && each.percent === '30')),
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
const steps = fc
  .array(
    fc.oneof(
      { weight: 1, arbitrary: hazards.map((some) => ({ kind: 'do', hazards: some })) },
      { weight: 1, arbitrary: hazards.map((some) => ({ kind: 'check', outcomes, hazards: some })) },
      { weight: 1, arbitrary: fc.constant({ kind: 'loosen', pattern: 'three' }) },
      {
        weight: 3,
        arbitrary: fc
          .record({ passes, judging, confirm, hazards })
          .map((some) => ({ ...tighten('any', { ...final, ...some }) })),
      },
    ),
    { minLength: 1, maxLength: 4 },
  )
  .map((some) => some.map(({ kind, ...more }, i) => ({ ...step(`step-${i}`, kind), ...more, id: `step-${i}` })));
const small = fc
  .record({ steps, tool: fc.constantFrom(indicating, setting) })
  .map(({ steps, tool }) => procedureOf(steps, { tools: [tool] }));
const DEMO = demo();
const procedure = fc.oneof(fc.constant(DEMO), small);

/** The answer that takes the job on: warnings are acknowledged, readings are what was called for and are confirmed. */
function openly(state: SessionState): Meaning {
  const current = currentStep(state);
  if (state.phase === 'standing by') return { kind: 'continue' };
  if (openWarning(state) || pendingReading(state)) return { kind: 'affirm' };
  if (current?.kind === 'check')
    return { kind: 'answer', outcome: current.outcomes.find(({ then }) => then === 'go on')?.id ?? '' };
  const call = currentCall(state);
  if (current?.kind !== 'tighten' || !call || !isTorqueCall(call)) return { kind: 'next' };
  const { unit } = toolOf(state.procedure, current).range.max;
  const shown = call.pass.target.unit === unit ? calledValue(call.pass) : toWritten(convert(call.pass.target, unit));
  return { kind: 'reading', reading: { fastener: call.fastener, value: shown.value } };
}

const goOpenly = (play: Play, count: number): Play =>
  Array.from({ length: count }).reduce<Play>(
    (at) => (at.state.phase === 'closed' ? at : tell(at, openly(at.state))),
    play,
  );

/** How many open answers a job takes. */
function answersIn(procedure: Procedure): number {
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

/** Anything at all, or something that fits: without the second, chance seldom gets far. */
const move: fc.Arbitrary<(state: SessionState) => Meaning> = fc.oneof(
  { weight: 3, arbitrary: meaning.map((meaning) => () => meaning) },
  { weight: 2, arbitrary: fc.constant(openly) },
  { weight: 1, arbitrary: fc.constant(rightly) },
);

/** A job that has come some way, and then meets anything at all. */
const job = fc
  .record({ procedure, way: fc.nat(99), moves: fc.array(move, { maxLength: 30, size: 'max' }) })
  .map(({ procedure, way, moves }) => {
    const begun = goOpenly(start(procedure), Math.floor((answersIn(procedure) * way) / 100));
    return moves.reduce((play, move) => tell(play, move(play.state)), begun);
  });

const bodies = ({ events }: Play): readonly EventBody[] => events.map(({ body }) => body);
/** The state before the first event and after each. */
const statesOf = ({ state, events }: Play): readonly SessionState[] =>
  events.reduce<SessionState[]>(
    (states, event) => [...states, fold(states.at(-1) ?? state, event)],
    [begin(state.procedure, people)],
  );
const withoutStatus = ({ status: _status, ...rest }: Reading) => rest;
const NEXT_STATUS: Readonly<Record<Reading['status'], readonly Reading['status'][]>> = {
  captured: ['captured', 'confirmed', 'rejected', 'disregarded', 'replaced'],
  confirmed: ['confirmed', 'disregarded', 'replaced'],
  rejected: ['rejected'],
  disregarded: ['disregarded'],
  replaced: ['replaced'],
};

describe('whatever is said', () => {
  test('no reading is confirmed that was not captured before it, and none twice', () => {
    fc.assert(
      fc.property(job, (play) => {
        const all = bodies(play);
        const confirmed = all.flatMap((body, seq) => (body.kind === 'reading confirmed' ? [{ of: body.of, seq }] : []));
        for (const { of, seq } of confirmed) {
          expect(of).toBeLessThan(seq);
          expect(all[of]?.kind).toBe('reading captured');
        }
        expect(new Set(confirmed.map(({ of }) => of)).size).toBe(confirmed.length);
      }),
    );
  });

  test('a correction points at an earlier reading of the same fastener in the same pass', () => {
    fc.assert(
      fc.property(job, (play) => {
        for (const [seq, body] of bodies(play).entries()) {
          if (body.kind !== 'reading captured' || body.corrects === null) continue;
          expect(body.corrects).toBeLessThan(seq);
          const { step, pass, fastener } = body;
          expect(bodies(play)[body.corrects]).toMatchObject({ kind: 'reading captured', step, pass, fastener });
        }
      }),
    );
  });

  test('nothing is erased: readings are only added, and only their standing changes, one way', () => {
    fc.assert(
      fc.property(job, (play) => {
        const states = statesOf(play);
        for (const [i, after] of states.entries()) {
          const before = states[i - 1]?.readings ?? [];
          expect(after.readings.slice(0, before.length).map(withoutStatus)).toEqual(before.map(withoutStatus));
          for (const [at, { status }] of before.entries())
            expect(NEXT_STATUS[status]).toContain(after.readings[at]?.status);
        }
      }),
    );
  });

  test('at most one reading waits for its confirmation, and one inside its window stands for each call', () => {
    fc.assert(
      fc.property(job, (play) => {
        for (const { readings } of statesOf(play)) {
          expect(readings.filter(({ status }) => status === 'captured').length).toBeLessThanOrEqual(1);
          const standing = readings
            .filter(({ status, verdict }) => status === 'confirmed' && verdict === 'in')
            .map(({ step, pass, fastener }) => `${step}/${pass}/${fastener}`);
          expect(new Set(standing).size).toBe(standing.length);
        }
      }),
    );
  });

  test('the steps before the current one are done and no others, each with every call settled', () => {
    fc.assert(
      fc.property(job, ({ state }) => {
        const { procedure } = state;
        const done = procedure.steps.slice(0, state.at);
        expect([...state.doneSteps].sort()).toEqual(done.map(({ id }) => id).sort());
        for (const each of done)
          for (const { pass, fastener } of planOf(procedure, each).calls)
            expect(isSettled(state, each.id, pass, fastener)).toBe(true);
      }),
    );
  });

  test('a refusal changes nothing', () => {
    fc.assert(
      fc.property(job, meaning, (play, meaning) => {
        if (decide(play.state, { meaning }).kind === 'refused') expect(tell(play, meaning).state).toEqual(play.state);
      }),
    );
  });

  test('replay stopped early is the session as it was then', () => {
    fc.assert(
      fc.property(job, fc.nat(), (play, count) => {
        const stop = count % (play.events.length + 1);
        const replayed = play.events.slice(0, stop).reduce<SessionState>(fold, begin(play.state.procedure, people));
        expect(replayed).toEqual(statesOf(play)[stop]);
        if (stop === play.events.length) expect(replayed).toEqual(play.state);
      }),
    );
  });

  test('the job can still be finished, by answering openly', () => {
    fc.assert(
      fc.property(job, (play) => {
        expect(goOpenly(play, mostAnswers(play.state.procedure)).state.phase).toBe('closed');
      }),
    );
  });
});

/** More answers than any job wants: each warning, each step, two for each reading, and one more round of each check. */
function mostAnswers(procedure: Procedure): number {
  const calls = procedure.steps.flatMap((each) => planOf(procedure, each).calls);
  const warnings = procedure.steps.flatMap(({ hazards }) => hazards);
  return 10 + procedure.steps.length + warnings.length + 3 * calls.length;
}
