import type { Step } from '../procedure/procedure.ts';
import { ahead } from './ahead.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { beforeClosing, isClosing, whileClosing } from './closing.ts';
import type { EventBody } from './event.ts';
import { isWellFormed, type Instant, type Intent, type WorkingMeaning } from './intent.ts';
import { goOnMeasuring, leaveValueOpen, observe, outsideValue, pendingValue, whileValuePending } from './observed.ts';
import { whileBreakOpen } from './break.ts';
import { report } from './deviations.ts';
import { callHelp, heldStep, takeHold, whileHolding } from './hold.ts';
import { handOver, joinOrLeave, takeOver } from './people.ts';
import { correctLast, disregardLast, takeValue, unanswered, whilePending } from './readings.ts';
import {
  currentCall,
  currentStep,
  openCondition,
  openWarning,
  onItsDay,
  pendingReading,
  type SessionState,
} from './state.ts';
import { openReason, whileReasonWanted } from './reasons.ts';
import { awaitsStepWitness, takeInspection, takeStepWitness, wantsInspector } from './step-witness.ts';
import { currentPoint } from './points.ts';
import type { Point } from './point.ts';
import { answerCheck, pointRefusal, settlePoint } from './settle.ts';
import { fetchConsumable } from './stock.ts';
import { answerCondition, goBack, goOn, leaveOpen, turnedOn } from './steps.ts';

export type { Decision } from './decision.ts';

/**
 * What follows from an intent: the events that happen, or the reason why none does.
 * Pure: the same state and intent always give the same decision.
 * It never throws for a state that came about through decisions.
 */
export function decide(state: SessionState, intent: Pick<Intent, 'meaning' | 'at'>): Decision {
  const decision = decideOpenly(state, intent);
  return decision.kind === 'accepted' && closes(state, decision.events, intent.at)
    ? accept(...decision.events, { kind: 'closed' })
    : decision;
}

/** After these the last step may be done, and nothing left to decide about or to sign. */
const MAY_CLOSE: ReadonlySet<EventBody['kind']> = new Set(['step done', 'step skipped', 'disposed', 'signed']);

/** Whether the record is closed after these events. Looked up where it is so: in the state after them. */
function closes(state: SessionState, events: readonly EventBody[], at: Instant): boolean {
  if (!events.some(({ kind }) => MAY_CLOSE.has(kind))) return false;
  const after = ahead(state, events, at);
  return isClosing(after) && beforeClosing(after) === null;
}

function decideOpenly(before: SessionState, { meaning, at }: Pick<Intent, 'meaning' | 'at'>): Decision {
  const state = onItsDay(before, at);
  if (state.phase === 'closed') return refuse({ code: 'session closed' });
  if (meaning.kind === 'reopen') return accept({ kind: 'reopened' });
  if (meaning.kind === 'say again') return accept({ kind: 'repeat asked' });
  if (meaning.kind === 'unclear') return refuse({ code: 'unclear', doubt: meaning.doubt, readings: meaning.readings });
  if (meaning.kind === 'second person') return joinOrLeave(state, meaning.name);
  if (meaning.kind === 'take over') return takeOver(state, meaning.name);
  if (meaning.kind === 'help') return callHelp(state);
  const held = heldStep(state);
  if (held) return whileHolding(state, held, meaning, at);
  // The clock ran on over the end of a hold.
  if (meaning.kind === 'time passed') return accept();
  if (state.phase === 'standing by') {
    return meaning.kind === 'continue' ? accept({ kind: 'continued' }) : refuse({ code: 'standing by' });
  }
  if (meaning.kind === 'stand by') return accept({ kind: 'stood by' });
  if (meaning.kind === 'continue') return refuse({ code: 'not standing by' });
  if (state.breakOf !== null) return whileBreakOpen(state, meaning);
  const pending = pendingReading(state);
  const value = pendingValue(state);
  if (meaning.kind === 'silence') {
    const of = (pending ?? value)?.seq;
    return of === undefined ? refuse({ code: 'nothing to confirm' }) : accept({ kind: 'timed out', of });
  }
  if (meaning.kind === 'question') {
    // Nothing comes between a read-back and its answer but why it is wanted.
    if (meaning.question.about !== 'why') {
      if (pending) return refuse(unanswered(state, pending));
      if (value) return refuse({ code: 'value unconfirmed' });
    }
    return accept({ kind: 'asked', question: meaning.question });
  }
  if (meaning.kind === 'hand over') return handOver(state);
  const step = currentStep(state);
  if (step === null) return whileClosing(state, meaning);
  if (meaning.kind === 'dispose') return refuse({ code: 'nothing to decide' });
  if (meaning.kind === 'sign') return refuse({ code: 'nothing to sign' });
  const wanted = openReason(state);
  if (wanted) return whileReasonWanted(state, step, wanted, meaning);
  if (meaning.kind === 'reason') return refuse({ code: 'no reason wanted' });
  const warning = openWarning(state);
  if (warning) {
    // Only by its own word: a "next" too many must not run through a warning.
    return meaning.kind === 'affirm'
      ? accept({ kind: 'warning acknowledged', step: step.id, index: warning.index })
      : refuse({ code: 'warning first' });
  }
  if (meaning.kind === 'fresh consumable') {
    if (pending) return refuse(unanswered(state, pending));
    return value ? refuse({ code: 'value unconfirmed' }) : fetchConsumable(state, meaning);
  }
  if (
    (meaning.kind === 'reading' || meaning.kind === 'correction' || meaning.kind === 'witness') &&
    !isWellFormed(meaning.reading)
  )
    return refuse({ code: 'unclear', doubt: 'not sure', readings: [meaning.reading] });
  if (meaning.kind === 'inspects') return takeInspection(state, meaning);
  if (value) return whileValuePending(state, value, meaning, at);
  if (pending) return whilePending(state, pending, meaning);
  if (meaning.kind === 'witness says') return takeStepWitness(state, meaning.agrees);
  if (awaitsStepWitness(state)) return whileStepWitnessed(state, step, meaning, at);
  const condition = openCondition(state);
  if (condition) return whileAsked(state, step, condition.id, meaning, at);
  const point = currentPoint(state);
  return point ? whilePointOpen(state, step, point, meaning, at) : whileFree(state, step, meaning, at);
}

type FreeMeaning = Exclude<WorkingMeaning, { kind: 'witness says' }>;

/** The second person is to look: the mechanic can take back what was done, and not go on. */
function whileStepWitnessed(state: SessionState, step: Step, meaning: FreeMeaning, at: Instant): Decision {
  switch (meaning.kind) {
    case 'correction':
    case 'disregard':
    case 'back':
      return whileFree(state, step, meaning, at);
    case 'witness':
    case 'affirm':
    case 'negative':
    case 'next':
    case 'turned':
    case 'reading':
    case 'click':
    case 'answer':
    case 'report':
    case 'leave open':
    case 'held':
    case 'set down':
    case 'observed':
      return refuse({ code: wantsInspector(step) ? 'inspector first' : 'step witness first' });
  }
}

/** A question about the unit is open: whether the step applies must be known before it is worked. */
function whileAsked(state: SessionState, step: Step, condition: string, meaning: FreeMeaning, at: Instant): Decision {
  switch (meaning.kind) {
    case 'witness':
      return refuse({ code: 'nothing to witness' });
    case 'affirm':
    case 'negative':
      return answerCondition(state, condition, meaning.kind === 'affirm');
    case 'correction':
    case 'disregard':
    case 'back':
      return whileFree(state, step, meaning, at);
    case 'next':
    case 'turned':
    case 'reading':
    case 'click':
    case 'answer':
    case 'report':
    case 'leave open':
    case 'held':
    case 'set down':
    case 'observed':
      return refuse({ code: 'condition first' });
  }
}

/** A point of the step is asked: it is answered before anything else of the step is worked. */
function whilePointOpen(state: SessionState, step: Step, point: Point, meaning: FreeMeaning, at: Instant): Decision {
  switch (meaning.kind) {
    case 'affirm':
    case 'negative':
    case 'held':
    case 'answer':
      return settlePoint(state, step, point, meaning);
    case 'correction':
    case 'disregard':
    case 'back':
    case 'witness':
      return whileFree(state, step, meaning, at);
    case 'next':
    case 'turned':
    case 'reading':
    case 'click':
    case 'set down':
    case 'observed':
      return refuse(pointRefusal(state, point));
    // What is ordered about a fastener may be for somebody else to do.
    case 'report':
    case 'leave open':
      return point.kind === 'ordered' ? whileFree(state, step, meaning, at) : refuse(pointRefusal(state, point));
  }
}

function whileFree(state: SessionState, step: Step, meaning: FreeMeaning, at: Instant): Decision {
  switch (meaning.kind) {
    case 'correction': {
      // The value that was read last, and no fastener that was tightened before it.
      const isOfValue = meaning.reading.fastener === null && state.observed.at(-1)?.step === step.id;
      return step.kind === 'measure' && isOfValue
        ? observe(state, step, meaning.reading.value, at)
        : correctLast(state, step, meaning);
    }
    case 'disregard': {
      const outside = outsideValue(state, step.id);
      return outside ? accept({ kind: 'value disregarded', of: outside.seq }) : disregardLast(state, step);
    }
    case 'back':
      return goBack(state, step);
    case 'reading':
    case 'click': {
      const call = currentCall(state);
      if (step.kind !== 'tighten' || !call) return refuse({ code: 'no reading here' });
      return takeValue(state, step, call, meaning);
    }
    case 'witness':
      return refuse({ code: 'nothing to witness' });
    case 'observed':
      return step.kind === 'measure' ? observe(state, step, meaning.value, at) : refuse({ code: 'no reading here' });
    case 'next':
      return step.kind === 'measure' ? goOnMeasuring(state, step, at) : goOn(state, step);
    case 'turned':
      return turnedOn(state, step);
    case 'held':
      return takeHold(step);
    case 'set down':
      return refuse({ code: step.kind === 'hold' ? 'hold first' : 'not holding' });
    case 'report':
      return report(state, step, meaning.what);
    case 'leave open':
      return step.kind === 'measure' ? leaveValueOpen(state, step) : leaveOpen(state, step);
    case 'answer':
      return answerCheck(state, step, meaning.outcome);
    case 'affirm':
    case 'negative':
      return answerCheck(state, step, meaning.kind);
  }
}
