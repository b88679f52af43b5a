/** What an utterance comes to if it is all: shown before it is certain that nothing follows, and neither written nor said. */
import { ahead } from '../session/ahead.ts';
import { decide } from '../session/decide.ts';
import type { EventBody } from '../session/event.ts';
import type { Instant, Meaning } from '../session/intent.ts';
import { currentStep, type SessionState } from '../session/state.ts';
import { wantsWitness } from '../session/witness.ts';
import { announce } from './announce.ts';

export interface Provisional {
  /** The session as it would be with the value waiting to be confirmed; null where it would be asked about or refused. */
  readonly state: SessionState | null;
  /** What would be said. */
  readonly says: readonly string[];
}

/** What is read back, or asked about, before it counts: only that can be shown early and be taken back without harm. */
export const isReadBack = ({ kind }: Meaning): boolean =>
  kind === 'reading' || kind === 'correction' || kind === 'observed' || kind === 'unclear';

/**
 * @returns null for what is not read back, for a value that would confirm the one before it, and where values are kept from
 * sight until a second person has read
 */
export function provisionalOf(state: SessionState, meaning: Meaning, at: Instant): Provisional | null {
  const step = currentStep(state);
  if (!isReadBack(meaning) || state.phase === 'closed' || (step && wantsWitness(state, step.id))) return null;
  const decision = decide(state, { meaning, at });
  if (decision.kind === 'refused')
    return { state: null, says: announce(state, [{ kind: 'refused', meaning, reason: decision.reason }]) };
  const [event, ...others] = decision.events;
  if (!event || others.length > 0 || !WAITS.has(event.kind)) return null;
  const after = ahead(state, decision.events, at);
  return { state: after, says: announce(after, decision.events) };
}

/** What waits for its answer, and has settled nothing. */
const WAITS: ReadonlySet<EventBody['kind']> = new Set(['reading captured', 'value observed']);
