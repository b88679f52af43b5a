import type { Answer, Consequence } from '../gesture/gate.ts';
import type { Situation } from '../language/situation.ts';
import { awaitsHold, heldStep } from '../session/hold.ts';
import type { Meaning } from '../session/intent.ts';
import { pendingValue } from '../session/observed.ts';
import { currentPoint } from '../session/points.ts';
import { openWarning, pendingReading, type SessionState } from '../session/state.ts';
import { wantsEyes, wantsWord } from './forward.ts';

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
  const move = (kind: 'next' | 'continue'): Asked => ({ meaning: { kind }, consequence: 'move' });
  switch (answer) {
    case 'stand by':
      return may('stand by') ? { meaning: { kind: 'stand by' }, consequence: 'pause' } : null;
    case 'back':
      // Where the second person did not agree, it sets the readings of a pass aside.
      return may('back')
        ? { meaning: { kind: 'back' }, consequence: state.objected === null ? 'move' : 'value' }
        : null;
    case 'next':
      if (may('continue')) return move('continue');
      // Where going on confirms, it would confirm a value.
      return may('next') && !pendingReading(state) ? move('next') : null;
    case 'negative':
      return may('negative') ? { meaning: { kind: 'negative' }, consequence: consequenceOfNo(state) } : null;
    case 'affirm':
      if (may('affirm')) return { meaning: { kind: 'affirm' }, consequence: consequenceOfYes(state) };
      // In a hold nothing goes back.
      if (awaitsHold(state) && may('held')) return { meaning: { kind: 'held' }, consequence: 'value' };
      return heldStep(state) && may('next') ? { meaning: { kind: 'next' }, consequence: 'answer' } : null;
  }
}

/** What a pedal may not answer wants a word here too. */
function consequenceOfYes(state: SessionState): Consequence {
  if (openWarning(state)) return 'answer';
  if (wantsWord(state)) return 'own word';
  return pendingValue(state) || pendingReading(state) || currentPoint(state) ? 'value' : 'answer';
}

/** A value that is not taken is asked for again; a criterion that is not met fails its seal for good. */
function consequenceOfNo(state: SessionState): Consequence {
  if (wantsEyes(state)) return 'own word';
  return currentPoint(state) ? 'value' : 'answer';
}
