import type { Situation } from '../language/situation.ts';
import { openReason } from '../session/reasons.ts';
import { isClosing } from '../session/closing.ts';
import { isOutside, pendingValue } from '../session/observed.ts';
import { awaitsHold } from '../session/hold.ts';
import { currentPoint } from '../session/points.ts';
import type { Meaning } from '../session/intent.ts';
import {
  currentStep,
  openCondition,
  openWarning,
  pendingReading,
  wantsOwnWord,
  type SessionState,
} from '../session/state.ts';
import { awaitsStepWitness } from '../session/step-witness.ts';
import { awaitsWitness } from '../session/witness.ts';

/**
 * What one pedal means: it goes on where work stands by, affirms where that takes the work on, and else takes the next
 * step. At a weight it says that it is held: no hand is free for anything else. What a foot must not answer wants a word
 * or a tap: there it only has the question said again.
 */
export function forwardMeaning(state: SessionState, { sayings }: Situation): Meaning {
  const may = (kind: Meaning['kind']): boolean => sayings.some(({ meaning }) => meaning.kind === kind);
  if (may('continue')) return { kind: 'continue' };
  if (wantsWord(state)) return { kind: 'say again' };
  return { kind: may('affirm') ? 'affirm' : awaitsHold(state) ? 'held' : 'next' };
}

/** Points that somebody looks at or decides about: more than that a hand has done something. */
const WANTS_EYES: ReadonlySet<NonNullable<ReturnType<typeof currentPoint>>['kind']> = new Set([
  'criterion',
  'seal',
  'held',
  'tool',
  'closure',
  'consumable',
  'ordered',
]);

/** Whether the point that is asked is one that somebody looks at or decides about. */
export function wantsEyes(state: SessionState): boolean {
  const point = currentPoint(state);
  return point !== null && WANTS_EYES.has(point.kind);
}

/**
 * Whether neither foot nor nod may say yes: a reading outside its window or in doubt, a break, a reason, another person's
 * word, a fact about the unit, a check that "affirm" does not pass.
 */
export function wantsWord(state: SessionState): boolean {
  if (isClosing(state) || state.breakOf !== null || openReason(state) || awaitsStepWitness(state)) return true;
  if (openWarning(state)) return false;
  const value = pendingValue(state);
  if (value) return isOutside(value);
  const pending = pendingReading(state);
  // What awaits its witness is refused alike, in or out: a pedal must not tell.
  if (pending) return wantsOwnWord(pending) && !awaitsWitness(state, pending);
  if (currentPoint(state)) return wantsEyes(state);
  const step = currentStep(state);
  const isPassedByAffirm =
    step?.kind !== 'check' || step.outcomes.some(({ id, then }) => id === 'affirm' && then === 'go on');
  return openCondition(state) !== null || !isPassedByAffirm;
}
