import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { isWellFormed, type Intent, type WorkingMeaning } from './intent.ts';
import { correctLast, disregardLast, takeValue, whilePending } from './readings.ts';
import { currentCall, currentStep, openCondition, openWarning, pendingReading, type SessionState } from './state.ts';
import { answer, answerCondition, goBack, goOn, turnedOn } from './steps.ts';

export type { Decision } from './decision.ts';

/**
 * What follows from an intent: the events that happen, or the reason why none does.
 * Pure: the same state and intent always give the same decision.
 * It never throws for a state that came about through decisions.
 */
export function decide(state: SessionState, { meaning }: Pick<Intent, 'meaning'>): Decision {
  const step = currentStep(state);
  if (state.phase === 'closed' || step === null) return refuse({ code: 'session closed' });
  if (meaning.kind === 'reopen') return accept({ kind: 'reopened' });
  if (meaning.kind === 'say again') return accept({ kind: 'repeat asked' });
  if (meaning.kind === 'unclear') return refuse({ code: 'unclear', doubt: meaning.doubt, readings: meaning.readings });
  if (state.phase === 'standing by') {
    return meaning.kind === 'continue' ? accept({ kind: 'continued' }) : refuse({ code: 'standing by' });
  }
  if (meaning.kind === 'stand by') return accept({ kind: 'stood by' });
  if (meaning.kind === 'continue') return refuse({ code: 'not standing by' });
  const pending = pendingReading(state);
  if (meaning.kind === 'silence')
    return pending ? accept({ kind: 'timed out', of: pending.seq }) : refuse({ code: 'nothing to confirm' });
  if (meaning.kind === 'question') {
    // Nothing comes between a read-back and its answer but why it is wanted.
    return pending && meaning.question.about !== 'why'
      ? refuse({ code: 'confirm first', fastener: pending.fastener })
      : accept({ kind: 'asked', question: meaning.question });
  }
  const warning = openWarning(state);
  if (warning) {
    // Only by its own word: a "next" too many must not run through a warning.
    return meaning.kind === 'affirm'
      ? accept({ kind: 'warning acknowledged', step: step.id, index: warning.index })
      : refuse({ code: 'warning first' });
  }
  if (
    (meaning.kind === 'reading' || meaning.kind === 'correction' || meaning.kind === 'witness') &&
    !isWellFormed(meaning.reading)
  )
    return refuse({ code: 'unclear', doubt: 'not sure', readings: [meaning.reading] });
  if (pending) return whilePending(state, pending, meaning);
  const condition = openCondition(state);
  return condition ? whileAsked(state, step, condition.id, meaning) : whileFree(state, step, meaning);
}

/** A question about the unit is open: whether the step applies must be known before it is worked. */
function whileAsked(state: SessionState, step: Step, condition: string, meaning: WorkingMeaning): Decision {
  switch (meaning.kind) {
    case 'witness':
      return refuse({ code: 'nothing to witness' });
    case 'affirm':
    case 'negative':
      return answerCondition(state, condition, meaning.kind === 'affirm');
    case 'correction':
    case 'disregard':
    case 'back':
      return whileFree(state, step, meaning);
    case 'next':
    case 'turned':
    case 'reading':
    case 'click':
    case 'answer':
      return refuse({ code: 'condition first' });
  }
}

function whileFree(state: SessionState, step: Step, meaning: WorkingMeaning): Decision {
  switch (meaning.kind) {
    case 'correction':
      return correctLast(state, step, meaning);
    case 'disregard':
      return disregardLast(state, step);
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
    case 'next':
      return goOn(state, step);
    case 'turned':
      return turnedOn(state, step);
    case 'answer':
      return answer(state, step, meaning.outcome);
    case 'affirm':
    case 'negative':
      return answer(state, step, meaning.kind);
  }
}
