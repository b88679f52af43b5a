/**
 * The one gate between what a camera saw and what is done: the more follows from a gesture, the surer it must be. No
 * gesture names a value and none signs: there is no such answer. Pure.
 */
import type { Gesture, GestureKind } from './gesture.ts';

export type Answer = 'affirm' | 'negative' | 'next' | 'back' | 'stand by';

/** What a gesture says, whatever is asked. The mechanic's own right is onwards, as in a line of text. */
export const ANSWERS: Readonly<Record<GestureKind, Answer>> = {
  nod: 'affirm',
  shake: 'negative',
  'wave right': 'next',
  'wave left': 'back',
  cover: 'stand by',
};

/**
 * What follows if it was seen wrongly. `pause`: work stands still until somebody goes on. `move`: one step on or back,
 * which the other direction undoes. `answer`: an answer stands in the record. `value`: a value counts, or a part is
 * passed or failed for good. `own word`: that wants a word or a tap, however sure the gesture is.
 */
export type Consequence = 'pause' | 'move' | 'answer' | 'value' | 'own word';

/**
 * Confidence that a gesture must have at least; see `Gesture.confidence`. No wave, nod or shake is told that is less sure
 * than a move asks.
 */
const LEAST: Readonly<Record<Exclude<Consequence, 'own word'>, number>> = {
  pause: 0.25,
  move: 0.76,
  answer: 0.8,
  value: 0.9,
};

/** How much surer each gesture of one person must be than is asked of anybody: the share of what is left to 1, 0 to 1. */
export type Strictness = Readonly<Partial<Record<GestureKind, number>>>;

export type Passage =
  | { readonly kind: 'passed' }
  /** Not sure enough for what follows; what would have been. */
  | { readonly kind: 'unsure'; readonly wanted: number }
  | { readonly kind: 'own word' };

/**
 * Whether a gesture is sure enough for what follows from it. Where it is not, nothing is guessed: it is asked again.
 * @param strictness may only ask for more than the gate does, never for less
 */
export function passGate(
  { kind, confidence }: Pick<Gesture, 'kind' | 'confidence'>,
  consequence: Consequence,
  strictness: Strictness = {},
): Passage {
  if (consequence === 'own word') return { kind: 'own word' };
  const least = LEAST[consequence];
  const wanted = least + (1 - least) * Math.min(1, Math.max(0, strictness[kind] ?? 0));
  return confidence >= wanted ? { kind: 'passed' } : { kind: 'unsure', wanted };
}
