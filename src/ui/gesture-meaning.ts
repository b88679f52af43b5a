import type { Answer, Consequence } from '../gesture/gate.ts';
import type { Situation } from '../language/situation.ts';
import { openReason } from '../session/reasons.ts';
import { awaitsHold, heldStep } from '../session/hold.ts';
import type { Meaning } from '../session/intent.ts';
import { isOutside, pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { openWarning, pendingReading, wantsOwnWord, type SessionState } from '../session/state.ts';

/** What a gesture asks for at a moment, and what follows from it. */
export interface Asked {
  readonly meaning: Meaning;
  readonly consequence: Consequence;
}

/**
 * What an answer before the camera means now; null where it is no answer of this moment: people nod at each other all day.
 * It never means more than the same word would. A nod at a weight says that it is held, and in a hold it wants the next
 * call: no hand is free for anything else. Setting down wants a word: a nod may have been for somebody else.
 */
export function gestureMeaning(state: SessionState, { sayings }: Situation, answer: Answer): Asked | null {
  const may = (kind: Meaning['kind']): boolean => sayings.some(({ meaning }) => meaning.kind === kind);
  const move = (kind: 'next' | 'back' | 'continue' | 'held'): Asked => ({ meaning: { kind }, consequence: 'move' });
  switch (answer) {
    case 'stand by':
      return may('stand by') ? { meaning: { kind: 'stand by' }, consequence: 'pause' } : null;
    case 'back':
      return may('back') ? move('back') : null;
    case 'next':
      if (may('continue')) return move('continue');
      // Where going on confirms, it would confirm a value.
      return may('next') && !pendingReading(state) ? move('next') : null;
    case 'negative':
      return may('negative') ? { meaning: { kind: 'negative' }, consequence: consequenceOfNo(state) } : null;
    case 'affirm':
      if (may('affirm')) return { meaning: { kind: 'affirm' }, consequence: consequenceOfYes(state) };
      if (awaitsHold(state) && may('held')) return move('held');
      return heldStep(state) && may('next') ? move('next') : null;
  }
}

/** A value outside its window or in doubt, and a reason that is to be read first, want a word. */
function consequenceOfYes(state: SessionState): Consequence {
  if (state.breakOf !== null) return 'value';
  if (openReason(state)) return 'own word';
  if (openWarning(state)) return 'answer';
  const value = pendingValue(state);
  if (value) return isOutside(value) ? 'own word' : 'value';
  const reading = pendingReading(state);
  if (reading) return wantsOwnWord(reading) ? 'own word' : 'value';
  return currentPoint(state) ? 'value' : 'answer';
}

/** A value that is not taken is asked for again; a criterion that is not met fails its seal for good. */
const consequenceOfNo = (state: SessionState): Consequence => (currentPoint(state) ? 'value' : 'answer');
