import type { Step, TightenStep } from '../procedure/procedure.ts';
import { isReadCall, planOf, toolFor, type Call, type ReadCall } from './calls.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody, Evidence } from './event.ts';
import { callOf, findingOf } from './finding.ts';
import type { Meaning, SaidReading, UnderstoodReading, WorkingMeaning } from './intent.ts';
import { currentPoint } from './points.ts';
import type { Refusal } from './refusal.ts';
import { pointRefusal } from './settle.ts';
import { settingOf } from './setting.ts';
import { confirmed } from './confirmed.ts';
import {
  callAfter,
  confirmsByGoingOn,
  correctable,
  currentCall,
  isSettled,
  lastConfirmed,
  type Reading,
  type SessionState,
} from './state.ts';
import { stepDone } from './steps.ts';
import { callRefusal } from './seals.ts';
import { witnessIn } from './people.ts';
import { asksValue, awaitsWitness, takeWitness, wantsWitness } from './witness.ts';

/** A value for the fastener that is called: read off the tool, or clicked at what the tool was set to. */
type Value = Extract<Meaning, { kind: 'reading' | 'click' }>;

/** Why nothing else comes before the answer to a read-back. */
export const unanswered = (state: SessionState, pending: Reading): Refusal => ({
  code: awaitsWitness(state, pending) ? 'witness first' : asksValue(state, pending) ? 'in doubt' : 'confirm first',
  fastener: pending.fastener,
});

/** A reading was read back: it is confirmed, rejected, said anew or dropped before anything else happens. */
export function whilePending(state: SessionState, pending: Reading, meaning: WorkingMeaning): Decision {
  if (awaitsWitness(state, pending)) return whileAwaitingWitness(state, pending, meaning);
  const confirmFirst = refuse(unanswered(state, pending));
  const goesOn = confirmsByGoingOn(state, pending);
  switch (meaning.kind) {
    case 'affirm':
      return asksValue(state, pending) ? confirmFirst : accept(...confirmation(state, pending));
    case 'negative':
      return accept({ kind: 'reading rejected', of: pending.seq });
    case 'disregard':
      return accept({ kind: 'reading disregarded', of: pending.seq });
    case 'next':
      return goesOn ? accept(...confirmation(state, pending)) : confirmFirst;
    case 'correction':
      return isOf(pending, meaning.reading) ? replaced(state, pending, meaning) : confirmFirst;
    case 'reading':
      if (meaning.reading.fastener === pending.fastener) return replaced(state, pending, meaning);
      if (goesOn) return goOnWith(state, pending, meaning);
      return isOf(pending, meaning.reading) ? replaced(state, pending, meaning) : confirmFirst;
    case 'click':
      return goesOn ? goOnWith(state, pending, meaning) : confirmFirst;
    case 'witness':
    case 'witness says':
    case 'answer':
    case 'report':
    case 'leave open':
    case 'turned':
    case 'held':
    case 'set down':
    case 'observed':
    case 'back':
      return confirmFirst;
  }
}

/**
 * The value is neither shown nor spoken, so it cannot be confirmed: the witness reads first. The mechanic may still take it
 * back, or say another one by "correction"; a bare value could be anybody's.
 */
function whileAwaitingWitness(state: SessionState, pending: Reading, meaning: WorkingMeaning): Decision {
  switch (meaning.kind) {
    case 'witness':
      return takeWitness(state, pending, meaning.reading);
    case 'negative':
      return accept({ kind: 'reading rejected', of: pending.seq });
    case 'disregard':
      return accept({ kind: 'reading disregarded', of: pending.seq });
    case 'correction':
      if (isOf(pending, meaning.reading)) return replaced(state, pending, meaning);
      return refuse({ code: 'witness first', fastener: pending.fastener });
    case 'affirm':
    case 'next':
    case 'reading':
    case 'click':
    case 'witness says':
    case 'answer':
    case 'report':
    case 'leave open':
    case 'turned':
    case 'held':
    case 'set down':
    case 'observed':
    case 'back':
      return refuse({ code: 'witness first', fastener: pending.fastener });
  }
}

const isOf = (reading: Reading, { fastener }: SaidReading): boolean =>
  fastener === null || fastener === reading.fastener;

/** The value of the next fastener confirms the reading before it, where the step is worked that way. */
function goOnWith(state: SessionState, pending: Reading, value: Value): Decision {
  const step = stepOf(state, pending);
  const following = callAfter(state, pending);
  const after = confirmed(state, pending.seq);
  // What is ordered about the fastener that follows is asked about first.
  if (!following || currentPoint(after)) return refuse({ code: 'confirm first', fastener: pending.fastener });
  // The running torque that is confirmed here may be that of the very nut that follows.
  const taken = takeValue(after, step, following, value);
  return taken.kind === 'accepted' ? accept(...confirmation(state, pending), ...taken.events) : taken;
}

/** Captures a value for a call, as it was said: its verdict is found out afterwards and changes nothing in it. */
export function takeValue(state: SessionState, step: TightenStep, call: Call, value: Value): Decision {
  if (!isReadCall(call)) return refuse({ code: 'no reading here' });
  const unusable = callRefusal(state, step, call);
  if (unusable) return refuse(unusable);
  if (wantsWitness(state, step.id) && witnessIn(state) === null) return refuse({ code: 'no second person' });
  if (value.kind === 'click' && call.pass.kind === 'running torque')
    return refuse({ code: 'running torque is read', fastener: call.fastener });
  if (value.kind === 'click' && toolFor(state.procedure, step, call.pass.index).type !== 'setting')
    return refuse({ code: 'not a setting tool' });
  const misplaced = wrongFastener(state, step, call, value.kind === 'click' ? value.fastener : value.reading.fastener);
  if (misplaced) return refuse(misplaced);
  return accept(captured(state, step, call, value.kind === 'click' ? null : value, null));
}

function wrongFastener(state: SessionState, step: TightenStep, call: Call, offered: number | null): Refusal | null {
  if (offered === null || offered === call.fastener) return null;
  const exists = planOf(state.procedure, step).calls.some(({ fastener }) => fastener === offered);
  return { code: exists ? 'out of order' : 'no such fastener', offered, expected: call.fastener };
}

/** A value as it was said, or, where none was, the click of the tool at its setting. */
function captured(
  state: SessionState,
  step: TightenStep,
  call: ReadCall,
  said: UnderstoodReading | null,
  corrects: number | null,
): EventBody {
  const { range } = toolFor(state.procedure, step, call.pass.index);
  // A reading is in the unit of the scale it was read off, whatever unit the manual uses.
  const read = said && { value: said.reading.value, unit: range.max.unit };
  const reading = read ?? settingOf(state, step, call)?.value;
  if (!reading) throw new Error(`Step "${step.id}" has no setting that its tool could have clicked at.`);
  const evidence: Evidence = said ? 'read' : 'click';
  const at = { step: step.id, pass: call.pass.index, fastener: call.fastener };
  const { verdict, basis } = findingOf(state, step, call, reading);
  const doubts = said?.doubts ?? [];
  return {
    kind: 'reading captured',
    ...at,
    evidence,
    reading,
    verdict,
    basis,
    corrects,
    ...(doubts.length > 0 ? { doubts } : {}),
  };
}

/** Another reading of the same fastener in the same pass, in place of an earlier one. */
function replaced(state: SessionState, old: Reading, said: UnderstoodReading): Decision {
  const step = stepOf(state, old);
  return accept(captured(state, step, callOf(state, step, old), said, old.seq));
}

/**
 * Corrects the reading that was confirmed last, in whichever step it was. It stands until its correction is confirmed.
 * Where the newest reading was rejected or dropped, its fastener is called again, and the correction is its new value.
 */
export function correctLast(state: SessionState, step: Step, said: UnderstoodReading): Decision {
  const last = correctable(state);
  if (!last) return anew(state, step, said);
  const { fastener } = said.reading;
  if (fastener !== null && fastener !== last.fastener)
    return refuse({ code: 'not the last reading', offered: fastener, last: last.fastener });
  return replaced(state, last, said);
}

function anew(state: SessionState, step: Step, said: UnderstoodReading): Decision {
  const point = currentPoint(state);
  if (point) return refuse(pointRefusal(state, point));
  const call = currentCall(state);
  return state.readings.length > 0 && step.kind === 'tighten' && call
    ? takeValue(state, step, call, { ...said, kind: 'reading' })
    : refuse({ code: 'nothing to correct' });
}

/**
 * Drops what was stated last in the step that is under way, a confirmed reading or a deviation: its fastener is open again.
 */
export function disregardLast(state: SessionState, step: Step): Decision {
  const newest = state.readings.at(-1)?.status;
  // The value in question is gone already: "disregard" is not about the one before it.
  if (newest === 'rejected' || newest === 'disputed') return refuse({ code: 'nothing to correct' });
  const last = lastConfirmed(state);
  const reading = last?.step === step.id ? last : null;
  const deviation = state.deviations.findLast((each) => each.step === step.id && each.status === 'stated') ?? null;
  if (deviation && deviation.seq > (reading?.seq ?? -1))
    return accept({ kind: 'deviation disregarded', of: deviation.seq });
  return reading ? accept({ kind: 'reading disregarded', of: reading.seq }) : refuse({ code: 'nothing to correct' });
}

/** The confirmation of a reading and what follows from it: the step is done, taken back, or goes on. */
function confirmation(state: SessionState, reading: Reading): readonly EventBody[] {
  const confirmed: EventBody = { kind: 'reading confirmed', of: reading.seq };
  const step = stepOf(state, reading);
  const isOpen = reading.verdict !== 'in';
  // A correction may take away what had let the step be done.
  if (state.doneSteps.has(step.id))
    return isOpen ? [confirmed, { kind: 'step taken back', step: step.id }] : [confirmed];
  const others = planOf(state.procedure, step).calls.filter(
    (call) =>
      !(call.pass.index === reading.pass && call.fastener === reading.fastener) &&
      !isSettled(state, step.id, call.pass, call.fastener),
  );
  return [confirmed, ...(others.length === 0 && !isOpen ? stepDone(state, step) : [])];
}

function stepOf(state: SessionState, { seq, step: id }: Reading): TightenStep {
  const step = state.procedure.steps.find((candidate) => candidate.id === id);
  if (step?.kind !== 'tighten') throw new Error(`Reading ${seq} is about no tightening step of this procedure.`);
  return step;
}
