import type { EventBody } from '../session/event.ts';
import { pendingReading, type SessionState } from '../session/state.ts';
import { isKept } from '../session/witness.ts';
import type { ToneKind } from '../speaking/types.ts';

/**
 * Which signal sounds for what was just written. The screen says the same in words: what was heard and logged stands in its
 * two lines, a question and a stop large above them.
 * @param state after the events
 */
export function toneFor(state: SessionState, events: readonly EventBody[]): ToneKind {
  const has = (...kinds: readonly EventBody['kind'][]): boolean => events.some(({ kind }) => kinds.includes(kind));
  if (has('help called')) return 'help';
  if (events.some((event) => event.kind === 'step witnessed' && !event.agrees)) return 'stop';
  if (has('refused', 'disputed', 'deviation reported', 'reason given', 'value observed')) return 'question';
  if (has('reading captured', 'witnessed')) {
    const pending = pendingReading(state);
    // As long as it is kept from its witness, no sound may tell what the value is like.
    const isBad = pending?.verdict === 'over' || pending?.verdict === 'nut worn';
    return pending && isBad && !isKept(state, pending) ? 'stop' : 'question';
  }
  return has('reading confirmed', 'reason confirmed', 'step witnessed', 'value confirmed', 'disposed', 'signed')
    ? 'logged'
    : 'heard';
}
