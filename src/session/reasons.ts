/** A reason that is wanted: of a reported deviation, or of a value that was left open. Nothing else is worked before it is confirmed. */
import type { Step } from '../procedure/procedure.ts';
import { accept, refuse, type Decision } from './decision.ts';
import { openDeviation } from './deviation.ts';
import type { EventBody } from './event.ts';
import { wellFormed, type Meaning } from './intent.ts';
import type { ObservedValue } from './observed.ts';
import { currentStep, type SessionState } from './state.ts';
import { stepDone } from './steps.ts';

export interface OpenReason {
  /** The event that it is the reason of. */
  readonly of: number;
  readonly status: 'reason wanted' | 'reason given';
  /** As it was dictated or typed; null before that. */
  readonly reason: string | null;
  /** The value that was left open; null where it is of a deviation of a fastener. */
  readonly value: ObservedValue | null;
}

/** The reason that is not confirmed yet; null where none is wanted. A record from before values had any is done with them. */
export function openReason(state: SessionState): OpenReason | null {
  const deviation = openDeviation(state);
  if (deviation) {
    const { seq: of, reason } = deviation;
    return { of, reason, status: reason === null ? 'reason wanted' : 'reason given', value: null };
  }
  const step = currentStep(state);
  const value = state.observed.find((each) => each.leftOpen && !each.isReasonStated && each.step === step?.id);
  if (!value) return null;
  return {
    of: value.seq,
    reason: value.reason,
    status: value.reason === null ? 'reason wanted' : 'reason given',
    value,
  };
}

/** The longest reason that is kept: more than anybody dictates, and a bound for what comes from outside. */
const LONGEST_REASON = 500;

/** A deviation, or a value left open, waits for its reason: said, read back, confirmed. */
export function whileReasonWanted(state: SessionState, step: Step, wanted: OpenReason, meaning: Meaning): Decision {
  const { of, status, value } = wanted;
  switch (meaning.kind) {
    case 'reason': {
      const text = [...wellFormed(meaning.text).trim()].slice(0, LONGEST_REASON).join('');
      return text === '' ? refuse({ code: 'reason first' }) : accept({ kind: 'reason given', of, text });
    }
    case 'affirm':
      if (status !== 'reason given') return refuse({ code: 'reason first' });
      return accept({ kind: 'reason confirmed', of }, ...(value ? stepDone(state, step) : []));
    case 'negative':
      return status === 'reason given' ? accept({ kind: 'reason rejected', of }) : refuse({ code: 'reason first' });
    case 'disregard':
      // The value is read again.
      return accept({ kind: value ? 'value disregarded' : 'deviation disregarded', of });
    default:
      return refuse({ code: 'reason first' });
  }
}

type ReasonEvent = Extract<EventBody, { kind: 'reason given' | 'reason confirmed' | 'reason rejected' }>;

/** The values after one more event about a reason. */
export const valuesWithReason = (observed: readonly ObservedValue[], body: ReasonEvent): readonly ObservedValue[] =>
  observed.map((value) => (value.seq === body.of ? { ...value, ...changeBy(body) } : value));

function changeBy(body: ReasonEvent): Partial<ObservedValue> {
  switch (body.kind) {
    case 'reason given':
      return { reason: body.text };
    case 'reason confirmed':
      return { isReasonStated: true };
    case 'reason rejected':
      return { reason: null };
  }
}
