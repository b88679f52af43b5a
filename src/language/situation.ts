import type { StepOf } from '../procedure/procedure.ts';
import { checksForTurning, isReadCall, planOf, toolFor, RUNNING_ROUND } from '../session/calls.ts';
import type { Meaning } from '../session/intent.ts';
import {
  currentCall,
  currentStep,
  correctable,
  lastConfirmed,
  openCondition,
  openWarning,
  pendingReading,
  type SessionState,
} from '../session/state.ts';
import type { Torque, Unit } from '../units/index.ts';

/** A fixed phrase, always a whole utterance, and the one thing it means here. */
export interface Saying {
  readonly words: string;
  readonly meaning: Meaning;
}

/** What a reading may be at this moment: which fasteners exist and what the scale of the tool can show. Never the target. */
export interface ReadingRoom {
  readonly fasteners: ReadonlySet<number>;
  /** The fastener that a value without a number is about. */
  readonly called: number;
  readonly label: string;
  readonly scale: { readonly min: Torque; readonly max: Torque };
  readonly unit: Unit<'torque'>;
  readonly takesClicks: boolean;
}

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
}

const says = (meaning: Meaning, ...phrases: readonly string[]): readonly Saying[] =>
  phrases.map((words) => ({ words, meaning }));

const SAY_AGAIN = says({ kind: 'say again' }, 'say again');
const STAND_BY = says({ kind: 'stand by' }, 'stand by');
const CONTINUE = says({ kind: 'continue' }, 'continue');
const NEXT = says({ kind: 'next' }, 'next', 'done');
const TURNED = says({ kind: 'turned' }, 'turned', 'it turned');
const BACK = says({ kind: 'back' }, 'back', 'go back');
const AFFIRM = says({ kind: 'affirm' }, 'affirm', 'affirmative');
const NEGATIVE = says({ kind: 'negative' }, 'negative');
const DISREGARD = says({ kind: 'disregard' }, 'disregard', 'cancel that');

/** The situation after a state: what may be said, by whichever device. */
export function situationOf(state: SessionState): Situation {
  const step = currentStep(state);
  if (state.phase === 'closed' || step === null) return fixed(SAY_AGAIN);
  if (state.phase === 'standing by') return fixed([...CONTINUE, ...SAY_AGAIN]);
  const always = [...SAY_AGAIN, ...STAND_BY];
  if (openWarning(state)) return fixed([...AFFIRM, ...always]);

  const pending = pendingReading(state);
  if (pending) {
    const room = readingRoom(state, pending);
    return { sayings: [...AFFIRM, ...NEGATIVE, ...DISREGARD, ...NEXT, ...always], reading: room, correction: room };
  }
  const last = lastConfirmed(state);
  const about = correctable(state);
  const call = currentCall(state);
  const called =
    call && isReadCall(call)
      ? readingRoom(state, { step: step.id, pass: call.pass.index, fastener: call.fastener })
      : null;
  // After a rejected reading, a correction is a new value for the fastener that is called again.
  const correction = about ? readingRoom(state, about) : state.readings.length > 0 ? called : null;
  if (openCondition(state)) {
    const drops = last?.step === step.id ? DISREGARD : [];
    return { sayings: [...AFFIRM, ...NEGATIVE, ...BACK, ...always, ...drops], reading: correction, correction };
  }
  return {
    sayings: [
      ...(step.kind === 'check' ? answersOf(step) : NEXT),
      ...(call && checksForTurning(call.pass) ? TURNED : []),
      ...BACK,
      ...always,
      ...(last?.step === step.id ? DISREGARD : []),
    ],
    reading: called ?? correction,
    correction,
  };
}

const fixed = (sayings: readonly Saying[]): Situation => ({ sayings, reading: null, correction: null });

const answersOf = ({ outcomes }: StepOf<'check'>): readonly Saying[] =>
  outcomes.flatMap(({ id, say }) => says(meaningOf(id), ...(say ?? [id])));

/** "affirm" and "negative" may be outcomes of a check; as words they keep their one meaning. */
const meaningOf = (outcome: string): Meaning =>
  outcome === 'affirm' || outcome === 'negative' ? { kind: outcome } : { kind: 'answer', outcome };

function readingRoom(
  state: SessionState,
  about: { readonly step: string; readonly pass: number; readonly fastener: number },
): ReadingRoom | null {
  const step = state.procedure.steps.find(({ id }) => id === about.step);
  if (step?.kind !== 'tighten') return null;
  const pattern = state.procedure.patterns.find(({ id }) => id === step.pattern);
  const tool = toolFor(state.procedure, step, about.pass);
  if (!pattern) return null;
  return {
    fasteners: new Set(planOf(state.procedure, step).calls.map(({ fastener }) => fastener)),
    called: about.fastener,
    label: pattern.fastener,
    scale: tool.range,
    unit: tool.range.max.unit,
    takesClicks: tool.type === 'setting' && about.pass !== RUNNING_ROUND,
  };
}
