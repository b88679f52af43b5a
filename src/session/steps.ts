import type { Step } from '../procedure/procedure.ts';
import { checksForTurning, isTorqueCall, type Call } from './calls.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import { currentCall, openCalls, turnedInRound, type SessionState } from './state.ts';

/** The mechanic says that what was asked is done: a fastener where no value is taken, or the step. */
export function goOn(state: SessionState, step: Step): Decision {
  if (step.kind === 'check') return refuse({ code: 'answer first' });
  const call = currentCall(state);
  if (!call) return accept(...stepDone(state, step));
  if (isTorqueCall(call)) return refuse({ code: 'reading first', fastener: call.fastener });
  return fastenerDone(state, step, call, false);
}

/** In a check for turning: the nut turned before the value was reached, so the round is made once more. */
export function turnedOn(state: SessionState, step: Step): Decision {
  const call = currentCall(state);
  if (!call || !checksForTurning(call.pass)) return refuse({ code: 'no such answer' });
  return fastenerDone(state, step, call, true);
}

function fastenerDone(state: SessionState, step: Step, call: Call, turned: boolean): Decision {
  const done: EventBody = {
    kind: 'fastener done',
    step: step.id,
    pass: call.pass.index,
    fastener: call.fastener,
    ...(turned ? { turned } : {}),
  };
  const isLast = openCalls(state).length === 1 && !turned && !turnedInRound(state, step, call.pass);
  return accept(done, ...(isLast ? stepDone(state, step) : []));
}

export function answer(state: SessionState, step: Step, outcomeId: string): Decision {
  if (step.kind !== 'check') return refuse({ code: 'nothing to confirm' });
  const outcome = step.outcomes.find(({ id }) => id === outcomeId);
  if (!outcome) return refuse({ code: 'no such answer' });
  const answered: EventBody = { kind: 'answered', step: step.id, outcome: outcome.id };
  return accept(answered, ...(outcome.then === 'go on' ? stepDone(state, step) : []));
}

/** Goes one step back, as long as no confirmed reading stands in this step or the one before it. */
export function goBack(state: SessionState, step: Step): Decision {
  const previous = state.procedure.steps[state.at - 1];
  const stands = (id: string): boolean =>
    state.readings.some((reading) => reading.step === id && reading.status === 'confirmed');
  if (stands(step.id) || (previous && stands(previous.id))) return refuse({ code: 'readings stand' });
  return previous ? accept({ kind: 'step taken back', step: previous.id }) : refuse({ code: 'first step' });
}

/** A step is done; with the last one the session is closed. */
export function stepDone(state: SessionState, step: Step): readonly EventBody[] {
  const isLast = state.procedure.steps.at(-1)?.id === step.id;
  return [{ kind: 'step done', step: step.id }, ...(isLast ? [{ kind: 'closed' } as const] : [])];
}
