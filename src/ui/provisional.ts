/** What an utterance comes to if it is all: shown before it is certain that nothing follows, and neither written nor said. */
import { announce } from '../language/announce.ts';
import { decide } from '../session/decide.ts';
import type { EventBody } from '../session/event.ts';
import { fold } from '../session/fold.ts';
import type { Instant, Meaning } from '../session/intent.ts';
import { currentStep, type SessionState } from '../session/state.ts';
import { wantsWitness } from '../session/witness.ts';

export interface Provisional {
  /** The session as it would be. */
  readonly state: SessionState;
  /** What would be said. */
  readonly says: readonly string[];
}

/** What is read back, or asked about, before it counts: only that can be shown early and be taken back without harm. */
export const isReadBack = ({ kind }: Meaning): boolean =>
  kind === 'reading' || kind === 'correction' || kind === 'observed' || kind === 'unclear';

/** @returns null for what is not read back, and where values are kept from sight until a second person has read */
export function provisionalOf(state: SessionState, meaning: Meaning, at: Instant): Provisional | null {
  const step = currentStep(state);
  if (!isReadBack(meaning) || state.phase === 'closed' || (step && wantsWitness(state, step.id))) return null;
  const decision = decide(state, { meaning, at });
  const events: readonly EventBody[] =
    decision.kind === 'accepted' ? decision.events : [{ kind: 'refused', meaning, reason: decision.reason }];
  const person = state.people.mechanic;
  const after = events.reduce<SessionState>(
    (each, body, i) => fold(each, { seq: AHEAD + i, at, source: 'voice', person, heard: null, body }),
    state,
  );
  return { state: after, says: announce(after, events) };
}

/** Numbers that no entry has yet. */
const AHEAD = Number.MAX_SAFE_INTEGER - 1000;
