import type { Step } from '../procedure/procedure.ts';
import { checksForTurning, isReadCall, planOf, type Call } from './calls.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { deviationsAfter } from './deviation.ts';
import { statedOnCall } from './deviations.ts';
import type { EventBody } from './event.ts';
import { accountOf, unaccounted } from './account.ts';
import { callRefusal } from './seals.ts';
import { currentCall, hasPoints, openCalls, turnedInRound, type SessionState } from './state.ts';

/** The mechanic says that what was asked is done: a fastener where no value is taken, or the step. */
export function goOn(state: SessionState, step: Step): Decision {
  if (step.kind === 'check') return refuse({ code: 'answer first' });
  if (step.kind === 'hold') return refuse({ code: 'hold first' });
  const call = currentCall(state);
  if (!call) return accept(...stepDone(state, step));
  const unusable = callRefusal(state, step, call);
  if (unusable) return refuse(unusable);
  if (isReadCall(call)) return refuse({ code: 'reading first', fastener: call.fastener });
  return fastenerDone(state, step, call, false);
}

/** Goes past the fastener that is called, once it is stated what is wrong with it. It stays listed as left open to the end. */
export function leaveOpen(state: SessionState, step: Step): Decision {
  const deviation = statedOnCall(state, step).at(-1);
  if (!deviation) return refuse({ code: 'report first' });
  const call = currentCall(state);
  const left: EventBody = { kind: 'left open', of: deviation.seq };
  const deviations = deviationsAfter(state.deviations, left, deviation);
  const isLast = openCalls({ ...state, deviations }).length === 0 && !(call && turnedInRound(state, step, call.pass));
  return accept(left, ...(isLast ? stepDone(state, step) : []));
}

/** In a check for turning: the nut turned before the value was reached, so the round is made once more. */
export function turnedOn(state: SessionState, step: Step): Decision {
  const call = currentCall(state);
  if (!call || !checksForTurning(call.pass)) return refuse({ code: 'no such answer' });
  const unusable = callRefusal(state, step, call);
  return unusable ? refuse(unusable) : fastenerDone(state, step, call, true);
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

/** Goes one step back, as long as no confirmed reading stands in this step or the one before it. Where points of this step are answered, back to the first of them. */
export function goBack(state: SessionState, step: Step): Decision {
  const previous = state.procedure.steps.slice(0, state.at).findLast(({ id }) => !state.skippedSteps.has(id));
  const stands = (id: string): boolean =>
    state.readings.some((reading) => reading.step === id && reading.status === 'confirmed');
  const again = passToWorkAgain(state, step, previous ?? null);
  if (again) return accept(...again);
  if (hasPoints(state, step) && !stands(step.id)) return accept({ kind: 'step taken back', step: step.id });
  if (stands(step.id) || (previous && stands(previous.id))) return refuse({ code: 'readings stand' });
  return previous ? accept({ kind: 'step taken back', step: previous.id }) : refuse({ code: 'first step' });
}

/**
 * Where the second person did not agree, what they looked at is worked again: the last round with values, of this step or
 * of the one before it. Its readings are set aside, none is erased. Null where that is not so.
 */
function passToWorkAgain(state: SessionState, step: Step, previous: Step | null): readonly EventBody[] | null {
  if (state.objected !== step.id) return null;
  const looked = step.kind === 'witness' ? previous : step;
  const pass = looked && planOf(state.procedure, looked).passes.findLast(({ kind }) => kind === 'torque');
  if (looked?.kind !== 'tighten' || !pass) return null;
  const restarted: EventBody = { kind: 'pass restarted', step: looked.id, pass: pass.index };
  return looked === step ? [restarted] : [{ kind: 'step taken back', step: looked.id }, restarted];
}

/**
 * A step is done, and the work comes to the next. Where a second person is to look at it, they are asked first; and before
 * that, where the step ends the work, for all that is not accounted for.
 */
export function stepDone(state: SessionState, step: Step, by?: 'witnessed'): readonly EventBody[] {
  if (by !== 'witnessed' && accountOf(state, step).length > 0) return [];
  if (step.witness && by !== 'witnessed') return [{ kind: 'witness asked', step: step.id }];
  const following = state.procedure.steps.indexOf(step) + 1;
  return [{ kind: 'step done', step: step.id }, ...comeTo(state.procedure.steps.slice(following), state.conditions)];
}

/** The question whether a condition of the unit holds, on which the current step depends, is answered. */
export function answerCondition(state: SessionState, condition: string, is: boolean): Decision {
  const conditions = new Map([...state.conditions, [condition, is]]);
  const answered: EventBody = { kind: 'condition answered', condition, is };
  const { steps } = state.procedure;
  const ahead = comeTo(steps.slice(state.at), conditions);
  // What would be the end of the work waits until all is accounted for.
  const isEnd = ahead.length === steps.length - state.at && unaccounted({ ...state, conditions }).length > 0;
  return accept(answered, ...(isEnd ? [] : ahead));
}

/** Steps that are known not to apply are skipped. */
export function comeTo(ahead: readonly Step[], conditions: SessionState['conditions']): readonly EventBody[] {
  const count = ahead.findIndex(
    ({ applies }) => !applies || (conditions.get(applies.condition) ?? applies.is) === applies.is,
  );
  return (count < 0 ? ahead : ahead.slice(0, count)).flatMap(({ id, applies }): readonly EventBody[] =>
    applies ? [{ kind: 'step skipped', step: id, condition: applies.condition, is: !applies.is }] : [],
  );
}
