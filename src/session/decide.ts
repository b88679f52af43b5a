import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { isWellFormed, type Intent, type WorkingMeaning } from './intent.ts';
import { whileBreakOpen } from './break.ts';
import { openDeviation } from './deviation.ts';
import { report, whileReasonWanted } from './deviations.ts';
import { callHelp, heldStep, takeHold, whileHolding } from './hold.ts';
import { handOver, joinOrLeave, takeOver } from './people.ts';
import { correctLast, disregardLast, takeValue, whilePending } from './readings.ts';
import { currentCall, currentStep, openCondition, openWarning, pendingReading, type SessionState } from './state.ts';
import { awaitsStepWitness, takeStepWitness } from './step-witness.ts';
import { answer, answerCondition, goBack, goOn, leaveOpen, turnedOn } from './steps.ts';

export type { Decision } from './decision.ts';

/**
 * What follows from an intent: the events that happen, or the reason why none does.
 * Pure: the same state and intent always give the same decision.
 * It never throws for a state that came about through decisions.
 */
export function decide(state: SessionState, { meaning, at }: Pick<Intent, 'meaning' | 'at'>): Decision {
  const step = currentStep(state);
  if (state.phase === 'closed' || step === null) return refuse({ code: 'session closed' });
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
  if (meaning.kind === 'silence')
    return pending ? accept({ kind: 'timed out', of: pending.seq }) : refuse({ code: 'nothing to confirm' });
  if (meaning.kind === 'question') {
    // Nothing comes between a read-back and its answer but why it is wanted.
    return pending && meaning.question.about !== 'why'
      ? refuse({ code: 'confirm first', fastener: pending.fastener })
      : accept({ kind: 'asked', question: meaning.question });
  }
  if (meaning.kind === 'hand over') return handOver(state);
  const deviation = openDeviation(state);
  if (deviation) return whileReasonWanted(deviation, meaning);
  if (meaning.kind === 'reason') return refuse({ code: 'no reason wanted' });
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
  if (meaning.kind === 'witness says') return takeStepWitness(state, meaning.agrees);
  if (awaitsStepWitness(state)) return whileStepWitnessed(state, step, meaning);
  const condition = openCondition(state);
  return condition ? whileAsked(state, step, condition.id, meaning) : whileFree(state, step, meaning);
}

type FreeMeaning = Exclude<WorkingMeaning, { kind: 'witness says' }>;

/** The second person is to look: the mechanic can take back what was done, and not go on. */
function whileStepWitnessed(state: SessionState, step: Step, meaning: FreeMeaning): Decision {
  switch (meaning.kind) {
    case 'correction':
    case 'disregard':
    case 'back':
      return whileFree(state, step, meaning);
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
      return refuse({ code: 'step witness first' });
  }
}

/** A question about the unit is open: whether the step applies must be known before it is worked. */
function whileAsked(state: SessionState, step: Step, condition: string, meaning: FreeMeaning): Decision {
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
    case 'report':
    case 'leave open':
    case 'held':
    case 'set down':
      return refuse({ code: 'condition first' });
  }
}

function whileFree(state: SessionState, step: Step, meaning: FreeMeaning): Decision {
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
    case 'held':
      return takeHold(step);
    case 'set down':
      return refuse({ code: step.kind === 'hold' ? 'hold first' : 'not holding' });
    case 'report':
      return report(state, step, meaning.what);
    case 'leave open':
      return leaveOpen(state, step);
    case 'answer':
      return answer(state, step, meaning.outcome);
    case 'affirm':
    case 'negative':
      return answer(state, step, meaning.kind);
  }
}
