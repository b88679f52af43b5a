/** A word and a gesture of one answer count once: many people nod when they say “affirm”. Pure. */
import type { Meaning } from '../session/intent.ts';

/** An answer that a person gave. */
export interface Act {
  readonly meaning: Meaning['kind'];
  readonly by: 'word' | 'gesture';
  /** Milliseconds on the clock of the page. */
  readonly from: number;
  readonly to: number;
}

/** Somebody who says a word and nods after it has begun to nod by then, in milliseconds after the word. */
const TOGETHER = 1000;

/**
 * Whether an act is the other half of one that was taken: the same meaning, once as a word and once as a gesture, at the
 * same time or one right after the other. Two words, or two gestures, are two answers.
 */
export const isSameAct = (taken: Act, act: Act): boolean =>
  taken.meaning === act.meaning && taken.by !== act.by && isTogether(taken, act);

/**
 * Whether a word says no to what a nod of the same moment has affirmed, or a shake of the head to what a word has. One of
 * the two was taken wrongly, or was meant for somebody else: the more careful holds.
 */
export const isAgainst = (taken: Act, act: Act): boolean =>
  taken.meaning === 'affirm' && act.meaning === 'negative' && taken.by !== act.by && isTogether(taken, act);

const isTogether = (one: Act, other: Act): boolean =>
  other.from - one.to <= TOGETHER && one.from - other.to <= TOGETHER;
