/** A long break: work is not gone on with before somebody has said that all is as it was left. */
import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import type { EventBody } from './event.ts';
import type { Meaning } from './intent.ts';
import { currentCall, currentStep, isDone, type SessionState } from './state.ts';

const MINUTE = 60_000;
/** In minutes: after this long a hand no longer remembers where the wrench was. Common practice, no source. */
export const LONG_BREAK = 30;

/** How long nothing happened, in milliseconds; 0 where that is unknown, or where a clock was set back meanwhile. */
export function pauseBetween(before: string | null, after: string): number {
  const between = before === null ? 0 : Date.parse(after) - Date.parse(before);
  return Number.isFinite(between) ? Math.max(0, between) : 0;
}

/** The break after which a step asks before it is gone on with, in milliseconds. */
export const askedAfter = (step: Step | null): number => Math.min(LONG_BREAK * MINUTE, restartAfter(step));

/** The break after which a pass of a step is begun again, in milliseconds; endless where the procedure has none. */
function restartAfter(step: Step | null): number {
  const minutes = step?.kind === 'tighten' ? step.restartPassAfterMinutes : undefined;
  return minutes === undefined ? Infinity : minutes * MINUTE;
}

/** The pass that is begun again after a break, or null: it must have begun, and the procedure must say so. */
export function passToRestart(state: SessionState): { readonly step: string; readonly pass: number } | null {
  const step = currentStep(state);
  const pass = currentCall(state)?.pass;
  if (!step || !pass || state.breakOf === null || state.breakOf < restartAfter(step)) return null;
  // A nut that is seated has no running torque to measure again.
  if (pass.kind === 'running torque') return null;
  const isBegun =
    state.readings.some(
      ({ step: id, pass: index, status }) =>
        id === step.id && index === pass.index && (status === 'confirmed' || status === 'captured'),
    ) || pass.order.some((fastener) => isDone(state, { step: step.id, pass: pass.index, fastener }));
  return isBegun ? { step: step.id, pass: pass.index } : null;
}

/**
 * Whether somebody comes back to a fastener after long without having said that they go. Other steps take their time: oil
 * drains for an hour, and nobody has lost their place in it.
 * @param now RFC 3339
 */
export const isBack = (state: SessionState, now: string): boolean =>
  state.phase === 'working' &&
  state.breakOf === null &&
  currentCall(state) !== null &&
  pauseBetween(state.lastAt, now) >= askedAfter(currentStep(state));

/** The question after a break is open: is all as it was left? */
export function whileBreakOpen(state: SessionState, meaning: Meaning): Decision {
  switch (meaning.kind) {
    case 'affirm': {
      const restarted = passToRestart(state);
      const events: readonly EventBody[] = restarted ? [{ kind: 'pass restarted', ...restarted }] : [];
      return accept({ kind: 'break accepted' }, ...events);
    }
    case 'negative':
      return accept({ kind: 'stood by' });
    case 'question':
      return accept({ kind: 'asked', question: meaning.question });
    default:
      return refuse({ code: 'break first' });
  }
}
