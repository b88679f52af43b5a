/** What is wanted now, in words: after events, and whenever somebody asks to hear it again. */
import { stepText } from '../procedure/procedure.ts';
import type { Step } from '../procedure/procedure.ts';
import { type Call } from '../session/calls.ts';
import { openReason } from '../session/reasons.ts';
import type { EventBody } from '../session/event.ts';
import { awaitsHold, heldStep } from '../session/hold.ts';
import { pendingValue } from '../session/observed.ts';
import { witnessIn } from '../session/people.ts';
import { currentPoint } from '../session/points.ts';
import {
  currentCall,
  currentStep,
  doesNotApply,
  isDone,
  isUntouched,
  openCondition,
  openWarning,
  orderedByAnswer,
  pendingReading,
  type SessionState,
} from '../session/state.ts';
import { awaitsStepWitness, wantsInspector } from '../session/step-witness.ts';
import { callRefusal } from '../session/seals.ts';
import { toolTroubles } from '../session/tools.ts';
import { prompting } from '../words/prompting.ts';
import { explainLift, explainPlan, explainTool } from './explain.ts';
import { askPoint } from './say-point.ts';
import { readBack } from './read-back.ts';
import { sayCall, sayRoundAndCall } from './say-call.ts';
import { sayBeforeClosing } from './say-closing.ts';
import { sayHazards, sayWarning } from './say-hazards.ts';
import { sayHeld } from './say-hold.ts';
import { readBackValue, sayMeasure } from './say-observed.ts';
import { sayRefusal } from './say-refusal.ts';
import { sayPlain, sentence } from './say.ts';
import { sayDuration, sayStanding } from './standing.ts';

/** After these the whole of what is to be done is said: the step with its cautions, the pass, the fastener. */
export const IN_FULL: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'reopened',
  'warning acknowledged',
  'condition answered',
  'step done',
  'step skipped',
  'step taken back',
  'repeat asked',
  'continued',
  'handed over',
  'break accepted',
]);

/** After these a step may begin: how it is gone about is explained once. */
const BEGINS: ReadonlySet<EventBody['kind']> = new Set([
  'opened',
  'warning acknowledged',
  'condition answered',
  'step done',
  'step skipped',
]);

/** What is wanted now: the open warning, the reading to confirm, the next fastener, or the step. */
export function prompt(state: SessionState, events: readonly EventBody[] = []): readonly string[] {
  const step = currentStep(state);
  if (state.handingOver) return [prompting.takeOver];
  if (state.phase === 'standing by') return [prompting.standingBy];
  if (state.phase === 'closed') return [];
  if (step === null) return sayBeforeClosing(state);
  const held = heldStep(state);
  if (held) return [sayHeld(state, held)];
  if (state.breakOf !== null)
    return [prompting.brokenOff(sayDuration(state.breakOf)), ...sayStanding(state), prompting.isAsLeft];
  const wanted = openReason(state);
  if (wanted) return [wanted.reason === null ? prompting.reason : prompting.isReasonCorrect(wanted.reason)];
  const warning = openWarning(state);
  if (warning) return [sayWarning(warning)];
  const pending = pendingReading(state);
  if (pending) return [readBack(state, pending)];
  const value = pendingValue(state);
  if (value) return [readBackValue(state, value)];
  if (awaitsStepWitness(state)) return sayStepWitness(state, step);
  const condition = openCondition(state);
  if (condition) return [prompting.question(condition.question)];
  const inFull = events.some(({ kind }) => IN_FULL.has(kind));
  const point = currentPoint(state);
  if (point) {
    const asked = sayPlain(askPoint(state, point));
    return inFull && !doesNotApply(state, step) ? sayStep(step, asked) : [asked];
  }
  const call = currentCall(state);
  if (call === null && events.at(-1)?.kind === 'point settled' && step.kind === 'do') return [prompting.allAsked];
  // As the answer is taken, it is said what it has done.
  const ordered = events.some(({ kind }) => kind === 'answered') ? null : orderedByAnswer(state);
  if (call === null)
    return [
      ...(ordered === null ? [] : [ordered]),
      ...sayStep(step),
      ...(step.kind === 'hold' ? explainLift(state.procedure).facts.map(sayPlain) : []),
      ...(step.kind === 'measure' ? [sayMeasure(state, step)] : []),
      ...(awaitsHold(state) ? [prompting.held] : []),
    ];
  const unusable = callRefusal(state, step, call);
  if (unusable) return [...(inFull ? sayStep(step) : []), sayRefusal(state, unusable)];
  if (!inFull)
    return [isNewRound(state, step, call) ? sayRoundAndCall(state, step, call) : sentence(sayCall(state, step, call))];
  const begins = events.some(({ kind }) => BEGINS.has(kind)) && isUntouched(state, step);
  return sayStep(step, ...(begins ? sayPlan(state, step, call) : []), sayRoundAndCall(state, step, call));
}

/** How a step of tightening is gone about, and what is to be minded about its tools. */
function sayPlan(state: SessionState, step: Step, call: Call): readonly string[] {
  if (step.kind !== 'tighten') return [];
  const plan = explainPlan(state.procedure, step);
  return [...(plan ? [plan] : []), ...toolTroubles(state, step, call).map(explainTool)].map((text) =>
    sentence(sayPlain(text)),
  );
}

/** Cautions and notices come before the text of their step, by themselves: it is known when they were said to their end. */
function sayStep(step: Step, ...more: readonly string[]): readonly string[] {
  const hazards = sayHazards(step, 'caution', 'notice');
  return [...(hazards.length > 0 ? [hazards.join(' ')] : []), [stepText(step), ...more].join(' ')];
}

/** The second person is told what to look at, and the two words that count. */
function sayStepWitness(state: SessionState, step: Step): readonly string[] {
  const word = witnessIn(state) === null ? prompting.stepWitnessMustJoin : prompting.stepWitness;
  const asked = wantsInspector(step) ? prompting.inspector : word;
  return step.kind === 'witness' ? sayStep(step, asked) : [`${prompting.lookAt(step.title)} ${asked}`];
}

/** Whether nothing was done or read in the round of a call. */
const isNewRound = (state: SessionState, step: Step, { pass }: Call): boolean =>
  !state.readings.some((reading) => reading.step === step.id && reading.pass === pass.index) &&
  !pass.order.some((fastener) => isDone(state, { step: step.id, pass: pass.index, fastener }));
