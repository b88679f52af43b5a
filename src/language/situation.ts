import type { Step, StepOf } from '../procedure/procedure.ts';
import { checksForTurning, isReadCall } from '../session/calls.ts';
import { reportable, statedOnCall } from '../session/deviations.ts';
import { awaitsHold, heldStep, isUnderLoad } from '../session/hold.ts';
import type { Meaning } from '../session/intent.ts';
import { goesBelowZero, outsideValue, pendingValue } from '../session/observed.ts';
import { isBetweenSteps } from '../session/people.ts';
import type { Point } from '../session/point.ts';
import { currentPoint } from '../session/points.ts';
import { openReason } from '../session/reasons.ts';
import { reuseRefusal } from '../session/seals.ts';
import {
  confirmsByGoingOn,
  currentCall,
  currentStep,
  correctable,
  lastConfirmed,
  openCondition,
  openWarning,
  pendingReading,
  type SessionState,
} from '../session/state.ts';
import { awaitsStepWitness, wantsInspector } from '../session/step-witness.ts';
import { awaitsWitness } from '../session/witness.ts';
import { readingRoom, withNext, type ReadingRoom } from './reading-room.ts';
import {
  AFFIRM,
  BACK,
  CONTINUE,
  DISREGARD,
  HAND_OVER,
  HELD,
  HELP,
  LEAVE_OPEN,
  NEGATIVE,
  NEXT,
  NINE_FOR_AFFIRM,
  QUESTIONS,
  REPORTS,
  REUSE_OR_REPLACE,
  SAY_AGAIN,
  says,
  SET_DOWN,
  STAND_BY,
  TURNED,
  WHERE,
  WHY,
  WITNESS_LEAVES,
  WITNESS_SAYS,
  type Saying,
} from './sayings.ts';

/**
 * Everything that may be said now. The recogniser's phrase list and the parser are both made from this,
 * so that they cannot drift apart.
 */
export interface Situation {
  readonly sayings: readonly Saying[];
  /** A value may be said: of the fastener called for, or, where none is, one that will be refused aloud. */
  readonly reading: ReadingRoom | null;
  /** The word "correction" may lead a value, of the reading it is about: perhaps of another step and tool. */
  readonly correction: ReadingRoom | null;
  /** It may be asked what is logged of one of these fasteners. */
  readonly logged: ReadingRoom | null;
  /** The word "witness" may lead a value, of the reading that awaits the second person. */
  readonly witness: ReadingRoom | null;
  /** A value of something else than a torque tool may be said, in this unit, below zero with "minus"; null where none is read. */
  readonly observed: { readonly unit: string; readonly belowZero: boolean } | null;
  /** Whatever is said beside the sayings is a reason in somebody's own words, kept as text. */
  readonly dictation: boolean;
}

/** The situation after a state: what may be said, by whichever device. */
export function situationOf(state: SessionState): Situation {
  const step = currentStep(state);
  if (state.phase === 'closed') return fixed(SAY_AGAIN);
  if (state.phase === 'standing by') return fixed([...CONTINUE, ...SAY_AGAIN, ...(isUnderLoad(state) ? HELP : [])]);
  // What is left is typed and tapped, and signed by a deliberate act: no word stands for these.
  if (step === null) return fixed([...SAY_AGAIN, ...STAND_BY, ...HAND_OVER]);
  const leaves = state.people.second === null ? [] : WITNESS_LEAVES;
  // Few words while both hands carry. "Held" is none of them: it sounds like "help", which must not be missed.
  if (heldStep(state)) return fixed([...NEXT, ...HELP, ...SET_DOWN, ...SAY_AGAIN]);
  const always = [...SAY_AGAIN, ...STAND_BY, ...(isUnderLoad(state) ? HELP : [])];
  if (state.breakOf !== null) return fixed([...AFFIRM, ...NEGATIVE, ...WHERE, ...always]);
  const wanted = openReason(state);
  if (wanted) {
    const isGiven = wanted.status === 'reason given';
    return {
      ...fixed([...(isGiven ? [...AFFIRM, ...NEGATIVE] : []), ...DISREGARD, ...always]),
      dictation: !isGiven,
    };
  }
  if (openWarning(state)) return fixed([...AFFIRM, ...always, ...(isBetweenSteps(state) ? HAND_OVER : [])]);

  const pending = pendingReading(state);
  if (pending) {
    const room = readingRoom(state, pending);
    if (awaitsWitness(state, pending)) {
      const sayings = [...NEGATIVE, ...DISREGARD, ...WHY, ...always, ...leaves];
      return {
        sayings,
        reading: room,
        correction: room,
        logged: null,
        witness: room,
        observed: null,
        dictation: false,
      };
    }
    return {
      sayings: [
        ...AFFIRM,
        ...NEGATIVE,
        ...DISREGARD,
        ...NEXT,
        ...WHY,
        ...always,
        // Where going on confirms, it may be the value of the next fastener.
        ...(confirmsByGoingOn(state, pending) ? [] : NINE_FOR_AFFIRM),
      ],
      reading: room && withNext(state, step, pending, room),
      correction: room,
      logged: null,
      witness: null,
      observed: null,
      dictation: false,
    };
  }
  if (pendingValue(state)) {
    return { ...fixed([...AFFIRM, ...NEGATIVE, ...DISREGARD, ...WHY, ...always]), observed: scaleOf(step) };
  }
  const isOfStep = (each: { readonly step: string }): boolean => each.step === step.id;
  const isStated = [lastConfirmed(state), state.deviations.findLast(({ status }) => status === 'stated')].some(
    (each) => each && isOfStep(each),
  );
  const drops = isStated || outsideValue(state, step.id) ? DISREGARD : [];
  const about = correctable(state);
  const call = currentCall(state);
  const called =
    call && isReadCall(call)
      ? readingRoom(state, { step: step.id, pass: call.pass.index, fastener: call.fastener })
      : null;
  // After a rejected reading, a correction is a new value for the fastener that is called again.
  const correction = about ? readingRoom(state, about) : state.readings.length > 0 ? called : null;
  if (awaitsStepWitness(state)) {
    return {
      ...fixed([
        ...(wantsInspector(step) ? [] : WITNESS_SAYS),
        ...NEXT,
        ...BACK,
        ...QUESTIONS,
        ...always,
        ...drops,
        ...leaves,
      ]),
      reading: correction,
      correction,
    };
  }
  if (openCondition(state)) {
    return {
      sayings: [...AFFIRM, ...NEGATIVE, ...BACK, ...QUESTIONS, ...always, ...drops],
      reading: correction,
      correction,
      logged: null,
      witness: null,
      observed: null,
      dictation: false,
    };
  }
  const point = currentPoint(state);
  if (point) {
    return {
      ...fixed([
        ...sayingsFor(state, point),
        ...(point.kind === 'ordered' ? outOfOrder(state, step) : []),
        ...NEXT,
        ...BACK,
        ...QUESTIONS,
        ...always,
        ...drops,
        ...(isBetweenSteps(state) ? HAND_OVER : []),
        ...leaves,
      ]),
      reading: correction,
      correction,
    };
  }
  return {
    sayings: [
      ...(step.kind === 'check' ? answersOf(step) : awaitsHold(state) ? HELD : NEXT),
      ...(call && checksForTurning(call.pass) ? TURNED : []),
      ...BACK,
      ...QUESTIONS,
      ...always,
      ...drops,
      ...(call ? outOfOrder(state, step) : []),
      ...(outsideValue(state, step.id) ? LEAVE_OPEN : []),
      ...(isBetweenSteps(state) ? HAND_OVER : []),
      ...leaves,
    ],
    // A bare value is of what is read now.
    reading: step.kind === 'measure' ? null : (called ?? correction),
    correction,
    logged: called ?? correction,
    witness: null,
    observed: scaleOf(step),
    dictation: false,
  };
}

const scaleOf = (step: Step): Situation['observed'] =>
  step.kind === 'measure' ? { unit: step.unit, belowZero: goesBelowZero(step) } : null;

/** Only these may be said. */
export const fixed = (sayings: readonly Saying[]): Situation => ({
  sayings,
  reading: null,
  correction: null,
  logged: null,
  witness: null,
  observed: null,
  dictation: false,
});

/** What may be said of a fastener that is not as it should be. */
const outOfOrder = (state: SessionState, step: Step): readonly Saying[] => [
  ...reportable(step).flatMap((what) => REPORTS[what]),
  ...(statedOnCall(state, step).length > 0 ? LEAVE_OPEN : []),
];

/** The answers to a point; where a seal cannot be used again, the one that can be comes first. */
function sayingsFor(state: SessionState, point: Point): readonly Saying[] {
  switch (point.kind) {
    case 'seal':
      return reuseRefusal(state, point.seal) === null ? REUSE_OR_REPLACE : [...REUSE_OR_REPLACE].reverse();
    case 'held':
      // Who cannot hold it calls: a cry for help must never be heard as "held".
      return [...HELD, ...HELP];
    default:
      return [...AFFIRM, ...NEGATIVE];
  }
}

const answersOf = ({ outcomes }: StepOf<'check'>): readonly Saying[] =>
  outcomes.flatMap(({ id, say }) => says(meaningOf(id), ...(say ?? [id])));

/** "affirm" and "negative" may be outcomes of a check; as words they keep their one meaning. */
const meaningOf = (outcome: string): Meaning =>
  outcome === 'affirm' || outcome === 'negative' ? { kind: outcome } : { kind: 'answer', outcome };
