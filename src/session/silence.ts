/** How long the program waits for the word that confirms a reading. Silence is never consent. */
import { pendingValue } from './observed.ts';
import { confirmsByGoingOn, pendingReading, type SessionState } from './state.ts';

/** How often a reading is asked about again. After that it waits, as long as it takes. */
export const MOST_ASKED_AGAIN = 3;
/** In seconds: long enough to put a wrench down. */
export const SILENCE = 8;

/**
 * After how many milliseconds without any input the silence is an input itself, of the source `program`: the reading that
 * waits is read back once more. Null where nothing waits, where the mechanic is at the next fastener already, and where it
 * was asked often enough.
 */
export function silenceAfter(state: SessionState): number | null {
  const pending = pendingReading(state);
  const isWorking = state.phase === 'working';
  if (
    (!pending && !pendingValue(state)) ||
    !isWorking ||
    state.breakOf !== null ||
    (pending !== null && confirmsByGoingOn(state, pending)) ||
    state.silences >= MOST_ASKED_AGAIN
  )
    return null;
  return SILENCE * 1000;
}
