import type { Step, TightenStep } from '../procedure/procedure.ts';
import { judge } from '../tightening/verdict.ts';
import { fromWritten, toWritten, type Written } from '../units/index.ts';
import { planOf, takesReading, toolOf, type Call } from './calls.ts';
import type { EventBody, Evidence } from './event.ts';
import type { Intent, Meaning, SaidReading } from './intent.ts';
import type { Refusal } from './refusal.ts';
import {
  currentCall,
  currentStep,
  isSettled,
  lastConfirmed,
  openCalls,
  openWarning,
  pendingReading,
  type Reading,
  type SessionState,
} from './state.ts';

export type Decision =
  | { readonly kind: 'accepted'; readonly events: readonly EventBody[] }
  | { readonly kind: 'refused'; readonly reason: Refusal };

const accept = (...events: readonly EventBody[]): Decision => ({ kind: 'accepted', events });
const refuse = (reason: Refusal): Decision => ({ kind: 'refused', reason });

/**
 * What follows from an intent: the events that happen, or the reason why none does.
 * Pure: the same state and intent always give the same decision.
 */
export function decide(state: SessionState, { meaning }: Pick<Intent, 'meaning'>): Decision {
  if (meaning.kind === 'say again') return accept({ kind: 'repeat asked' });
  if (meaning.kind === 'unclear') return refuse({ code: 'unclear', readings: meaning.readings });
  if (state.phase === 'closed') return refuse({ code: 'session closed' });
  if (meaning.kind === 'reopen') return accept({ kind: 'reopened' });
  if (state.phase === 'standing by') {
    return meaning.kind === 'continue' ? accept({ kind: 'continued' }) : refuse({ code: 'standing by' });
  }
  if (meaning.kind === 'stand by') return accept({ kind: 'stood by' });
  if (meaning.kind === 'continue') return refuse({ code: 'not standing by' });

  const step = currentStep(state);
  if (step === null) return refuse({ code: 'session closed' });
  const warning = openWarning(state);
  if (warning) {
    const isAcknowledged = meaning.kind === 'affirm' || meaning.kind === 'next';
    return isAcknowledged
      ? accept({ kind: 'warning acknowledged', step: step.id, index: warning.index })
      : refuse({ code: 'warning first' });
  }
  const pending = pendingReading(state);
  return pending ? whilePending(state, pending, meaning) : whileFree(state, step, meaning);
}

/** What may be meant once the words that hold always (say again, stand by, continue, unclear) are dealt with. */
type Working = Exclude<Meaning, { kind: 'say again' | 'stand by' | 'continue' | 'unclear' | 'reopen' }>;

/** A reading was read back: it is confirmed, rejected, said anew or dropped before anything else happens. */
function whilePending(state: SessionState, pending: Reading, meaning: Working): Decision {
  const step = tightenStep(state, pending.step);
  if (!step) return refuse({ code: 'nothing to confirm' });
  // A value outside its window always wants an explicit word, however the step confirms.
  const confirmsByGoingOn = step.confirm === 'by going on' && pending.verdict === 'in';
  switch (meaning.kind) {
    case 'affirm':
      return accept(...confirmation(state, pending));
    case 'negative':
      return accept({ kind: 'reading rejected', of: pending.seq });
    case 'disregard':
      return accept({ kind: 'reading disregarded', of: pending.seq });
    case 'next':
      return confirmsByGoingOn
        ? accept(...confirmation(state, pending))
        : refuse({ code: 'confirm first', fastener: pending.fastener });
    case 'correction':
    case 'reading': {
      const { fastener } = meaning.reading;
      const isSame = fastener === null || fastener === pending.fastener;
      if (meaning.kind === 'correction' || !confirmsByGoingOn) {
        return isSame
          ? accept(replacement(state, step, pending, meaning.reading, 'read'))
          : refuse({ code: 'confirm first', fastener: pending.fastener });
      }
      if (fastener === pending.fastener) return accept(replacement(state, step, pending, meaning.reading, 'read'));
      return goingOn(state, pending, (call) => takeReading(state, step, call, meaning.reading, 'read'));
    }
    case 'click':
      return confirmsByGoingOn
        ? goingOn(state, pending, (call) => takeClick(state, step, call, meaning.fastener))
        : refuse({ code: 'confirm first', fastener: pending.fastener });
    case 'answer':
    case 'back':
      return refuse({ code: 'confirm first', fastener: pending.fastener });
  }
}

/** The next reading confirms the one before it, where the step is worked that way. */
function goingOn(state: SessionState, pending: Reading, take: (call: Call) => Decision): Decision {
  const following = openCalls(state).find(
    (call) => !(call.pass.index === pending.pass && call.fastener === pending.fastener),
  );
  if (!following) return refuse({ code: 'confirm first', fastener: pending.fastener });
  const taken = take(following);
  return taken.kind === 'accepted' ? accept(...confirmation(state, pending), ...taken.events) : taken;
}

function whileFree(state: SessionState, step: Step, meaning: Working): Decision {
  switch (meaning.kind) {
    case 'correction':
      return correctLast(state, meaning.reading);
    case 'disregard': {
      const last = lastConfirmed(state);
      return last && last.step === step.id
        ? accept({ kind: 'reading disregarded', of: last.seq })
        : refuse({ code: 'nothing to correct' });
    }
    case 'back':
      return goBack(state, step);
    case 'reading':
    case 'click': {
      const call = currentCall(state);
      if (step.kind !== 'tighten' || !call || call.pass.target === null) return refuse({ code: 'no reading here' });
      return meaning.kind === 'click'
        ? takeClick(state, step, call, meaning.fastener)
        : takeReading(state, step, call, meaning.reading, 'read');
    }
    case 'next':
      return goOn(state, step);
    case 'answer':
      return step.kind === 'check' ? answer(state, step, meaning.outcome) : refuse({ code: 'nothing to confirm' });
    case 'affirm':
    case 'negative':
      return step.kind === 'check' ? answer(state, step, meaning.kind) : refuse({ code: 'nothing to confirm' });
  }
}

function goOn(state: SessionState, step: Step): Decision {
  if (step.kind === 'check') return refuse({ code: 'answer first' });
  if (step.kind !== 'tighten' && step.kind !== 'loosen') return accept(...stepDone(state, step));
  const call = currentCall(state);
  if (!call) return accept(...stepDone(state, step));
  if (takesReading(call.pass)) return refuse({ code: 'reading first', fastener: call.fastener });
  const done: EventBody = { kind: 'fastener done', step: step.id, pass: call.pass.index, fastener: call.fastener };
  return accept(done, ...(openCalls(state).length === 1 ? stepDone(state, step) : []));
}

function answer(state: SessionState, step: Extract<Step, { kind: 'check' }>, outcomeId: string): Decision {
  const outcome = step.outcomes.find(({ id }) => id === outcomeId);
  if (!outcome) return refuse({ code: 'no such answer' });
  const answered: EventBody = { kind: 'answered', step: step.id, outcome: outcome.id };
  return accept(answered, ...(outcome.then === 'go on' ? stepDone(state, step) : []));
}

function goBack(state: SessionState, step: Step): Decision {
  const touched = state.readings.some((reading) => reading.step === step.id && reading.status === 'confirmed');
  if (touched) return refuse({ code: 'readings stand' });
  const previous = state.procedure.steps[state.at - 1];
  if (!previous) return refuse({ code: 'first step' });
  if (state.readings.some((reading) => reading.step === previous.id && reading.status === 'confirmed'))
    return refuse({ code: 'readings stand' });
  return accept({ kind: 'step taken back', step: previous.id });
}

function stepDone(state: SessionState, step: Step): readonly EventBody[] {
  const isLast = state.procedure.steps.at(-1)?.id === step.id;
  return [{ kind: 'step done', step: step.id }, ...(isLast ? [{ kind: 'closed' } as const] : [])];
}

function takeReading(
  state: SessionState,
  step: TightenStep,
  call: Call,
  said: SaidReading,
  evidence: Evidence,
): Decision {
  const misplaced = wrongFastener(state, step, call, said.fastener);
  if (misplaced) return refuse(misplaced);
  // A reading is in the unit of the scale it was read off, whatever unit the manual uses.
  const { unit } = toolOf(state.procedure, step).range.max;
  const reading = { value: said.value, unit };
  return accept(captured(step, call, reading, evidence, null));
}

function takeClick(state: SessionState, step: TightenStep, call: Call, fastener: number | null): Decision {
  if (toolOf(state.procedure, step).type !== 'setting') return refuse({ code: 'not a setting tool' });
  if (call.pass.target === null) return refuse({ code: 'no reading here' });
  const misplaced = wrongFastener(state, step, call, fastener);
  if (misplaced) return refuse(misplaced);
  return accept(captured(step, call, toWritten(call.pass.target), 'click', null));
}

function wrongFastener(state: SessionState, step: TightenStep, call: Call, offered: number | null): Refusal | null {
  if (offered === null || offered === call.fastener) return null;
  const exists = planOf(state.procedure, step).calls.some(({ fastener }) => fastener === offered);
  return { code: exists ? 'out of order' : 'no such fastener', offered, expected: call.fastener };
}

function replacement(
  state: SessionState,
  step: TightenStep,
  old: Reading,
  said: SaidReading,
  evidence: Evidence,
): EventBody {
  const call = callOf(state, step, old);
  return captured(step, call, { value: said.value, unit: old.reading.unit }, evidence, old.seq);
}

function correctLast(state: SessionState, said: SaidReading): Decision {
  const last = lastConfirmed(state);
  const step = last && tightenStep(state, last.step);
  if (!last || !step) return refuse({ code: 'nothing to correct' });
  if (said.fastener !== null && said.fastener !== last.fastener)
    return refuse({ code: 'out of order', offered: said.fastener, expected: last.fastener });
  return accept(replacement(state, step, last, said, 'read'));
}

function captured(
  step: TightenStep,
  call: Call,
  reading: Written<'torque'>,
  evidence: Evidence,
  corrects: number | null,
): EventBody {
  if (call.pass.window === null) throw new Error(`Pass ${call.pass.index} of ${step.id} takes no reading.`);
  const verdict = judge(fromWritten('torque', reading), call.pass.window, step.judging);
  return {
    kind: 'reading captured',
    step: step.id,
    pass: call.pass.index,
    fastener: call.fastener,
    evidence,
    reading,
    verdict: verdict.outcome,
    corrects,
  };
}

/** The confirmation of a reading and what follows from it: the step is done, taken back, or goes on. */
function confirmation(state: SessionState, reading: Reading): readonly EventBody[] {
  const confirmed: EventBody = { kind: 'reading confirmed', of: reading.seq };
  const step = tightenStep(state, reading.step);
  if (!step) return [confirmed];
  const isOpen = reading.verdict !== 'in';
  const wasDone = state.doneSteps.has(step.id);
  // A correction may take away what had let the step be done.
  if (wasDone) return isOpen ? [confirmed, { kind: 'step taken back', step: step.id }] : [confirmed];
  const others = planOf(state.procedure, step).calls.filter(
    (call) =>
      !(call.pass.index === reading.pass && call.fastener === reading.fastener) &&
      !isSettled(state, step.id, call.pass, call.fastener),
  );
  return [confirmed, ...(others.length === 0 && !isOpen ? stepDone(state, step) : [])];
}

function callOf(state: SessionState, step: TightenStep, reading: Reading): Call {
  const call = planOf(state.procedure, step).calls.find(
    ({ pass, fastener }) => pass.index === reading.pass && fastener === reading.fastener,
  );
  if (!call) throw new Error(`Reading ${reading.seq} is about no call of ${step.id}.`);
  return call;
}

function tightenStep(state: SessionState, id: string): TightenStep | null {
  const step = state.procedure.steps.find((candidate) => candidate.id === id);
  return step?.kind === 'tighten' ? step : null;
}
