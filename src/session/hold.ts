/**
 * Both hands under a weight: from the mechanic's word that they hold it to the word that it is set down. Nothing else is
 * worked meanwhile, and what is said is short.
 */
import type { Step, StepOf } from '../procedure/procedure.ts';
import { startParts } from '../procedure/release.ts';
import { pauseBetween } from './break.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody, SessionEvent } from './event.ts';
import type { Instant, Meaning } from './intent.ts';
import { answerGiven } from './openings.ts';
import { currentPoint } from './points.ts';
import { currentStep, type SessionState } from './state.ts';
import { stepDone } from './steps.ts';

/** A weight that is held. */
export interface Hold {
  readonly step: string;
  /** When it was taken (RFC 3339). */
  readonly since: string;
  /** How many of the step's calls were said. */
  readonly called: number;
}

/** The step whose weight is held now; null where nothing is held. */
export function heldStep(state: SessionState): StepOf<'hold'> | null {
  const step = currentStep(state);
  return state.hold !== null && step?.kind === 'hold' ? step : null;
}

/** Whether the mechanic is to say that they hold it. */
export const awaitsHold = (state: SessionState): boolean =>
  state.hold === null && currentStep(state)?.kind === 'hold' && state.witnessAsked === null;

/** Whether somebody has or takes the weight now: at a hold, while the last fasteners are freed, and until these are started again. */
export function isUnderLoad(state: SessionState): boolean {
  const step = currentStep(state);
  if (step?.kind === 'hold') return true;
  if (step?.kind === 'loosen') return answerGiven(state, step.id, { kind: 'held', pattern: step.pattern }) === 'held';
  const point = currentPoint(state);
  if (step === null || point?.kind !== 'started' || point.part === null) return false;
  return startParts(state.procedure, step.id, point.pattern)[point.part]?.held === true;
}

/** "Held": the mechanic has the weight. The first call follows at once. */
export function takeHold(step: Step): Decision {
  if (step.kind !== 'hold') return refuse({ code: 'nothing to hold' });
  const first: readonly EventBody[] = step.calls.length > 0 ? [{ kind: 'hold call', step: step.id, index: 0 }] : [];
  return accept({ kind: 'hold begun', step: step.id }, ...first);
}

/** "Help": the second person is called. It is never refused while work goes on: a false one costs nothing. */
export const callHelp = (state: SessionState): Decision =>
  accept({ kind: 'help called', step: currentStep(state)?.id ?? null });

/** The weight is held: it is carried on, or set down. Everything else waits until no hand is under it. */
export function whileHolding(state: SessionState, step: StepOf<'hold'>, meaning: Meaning, at: Instant): Decision {
  const called = state.hold?.called ?? 0;
  switch (meaning.kind) {
    case 'next':
    case 'time passed':
      if (called < step.calls.length) return accept({ kind: 'hold call', step: step.id, index: called });
      return meaning.kind === 'next' ? refuse({ code: 'set down first' }) : accept();
    case 'set down': {
      // It may come down at any time; the step is done only where it was carried to its last call.
      const ended: EventBody = { kind: 'hold ended', step: step.id, seconds: heldFor(state, at.utc) };
      return accept(ended, ...(called < step.calls.length ? [] : stepDone({ ...state, hold: null }, step)));
    }
    default:
      return refuse({ code: 'holding' });
  }
}

/** How long the weight is held, in whole seconds; 0 where nothing is, or where a clock was set back. */
export const heldFor = ({ hold }: SessionState, now: string): number =>
  Math.floor(pauseBetween(hold?.since ?? null, now) / 1000);

type HoldEvent = Extract<EventBody, { kind: 'hold begun' | 'hold call' | 'hold ended' | 'help called' }>;

/** The state after one more event of a hold. */
export function afterHold(state: SessionState, body: HoldEvent, { at }: Pick<SessionEvent, 'at'>): SessionState {
  switch (body.kind) {
    case 'hold begun':
      return { ...state, ...NOT_HELD, hold: { step: body.step, since: at.utc, called: 0 } };
    case 'hold call':
      return { ...state, hold: state.hold && { ...state.hold, called: body.index + 1 } };
    case 'hold ended':
      return { ...state, ...NOT_HELD };
    case 'help called':
      return { ...state, helpCalled: true };
  }
}

/** Nothing is held, and nobody calls. */
export const NOT_HELD: Pick<SessionState, 'hold' | 'helpCalled'> = { hold: null, helpCalled: false };

/** How long it is quiet before the next call of a hold comes by itself, in milliseconds: time for a step. Common practice, no source. */
export const CALL_PAUSE = 4000;
/** The pause before the time is told, in milliseconds. */
const BREATH = 500;

/** What the program has said of a hold by its clock, and how long nothing was said. */
export interface Quiet {
  /** Milliseconds since the last word of the program. */
  readonly quietFor: number;
  /** The seconds that were told last; 0 before any were. */
  readonly told: number;
}

/** What is due while a weight is held: its next call, or the time, told in whole intervals of the step. Null where nothing is. */
export function dueWhileHeld(
  state: SessionState,
  now: string,
  { quietFor, told }: Quiet,
): { readonly kind: 'call' } | { readonly kind: 'time'; readonly seconds: number } | null {
  const step = heldStep(state);
  if (!step) return null;
  const seconds = Math.floor(heldFor(state, now) / step.everySeconds) * step.everySeconds;
  if (seconds > told && quietFor >= BREATH) return { kind: 'time', seconds };
  const isCallLeft = (state.hold?.called ?? 0) < step.calls.length;
  return isCallLeft && quietFor >= CALL_PAUSE ? { kind: 'call' } : null;
}
