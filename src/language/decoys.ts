/**
 * Words that are no command, as data. A recogniser hears only the words it is told of, so a word that sounds like a
 * command becomes that command unless it is told of too.
 */
import type { Meaning } from '../session/intent.ts';
import { prompting } from '../words/prompting.ts';
import type { Saying } from './sayings.ts';

/** A word of other talk that sounds like a command. It is offered beside it, and hearing it means nothing. */
export interface Decoy {
  readonly word: string;
  /** The word of a command that would be heard instead. */
  readonly near: string;
  readonly because: string;
}

/** All are in the vocabulary of the small model. Numbers have none: a decoy for a digit would cost readings. */
export const DECOYS: readonly Decoy[] = [
  { word: 'text', near: 'next', because: 'differs in its first sound only' },
  { word: 'firm', near: 'affirm', because: 'the same without its weak beginning' },
  { word: 'confirm', near: 'affirm', because: 'ends alike, and asks for what "affirm" answers' },
  { word: 'native', near: 'negative', because: 'the same beginning and end' },
  { word: 'pack', near: 'back', because: 'differs in its first sound only' },
  { word: 'burned', near: 'turned', because: 'differs in its first sound only' },
  { word: 'correct', near: 'correction', because: 'its beginning; "correct" and a value would else be a correction' },
  { word: 'connection', near: 'correction', because: 'the same beginning and end' },
  { word: 'head', near: 'held', because: 'differs in one weak sound only' },
  { word: 'quick', near: 'click', because: 'differs in its second sound only' },
];

/** The decoys of these phrases: a decoy is told only beside what it protects, and never where it has a meaning. */
export function decoysFor(phrases: readonly string[]): readonly Decoy[] {
  const words = new Set(phrases.flatMap((phrase) => phrase.split(' ')));
  return DECOYS.filter(({ word, near }) => words.has(near) && !words.has(word));
}

/**
 * What the small model hears for a saying, measured on synthetic voices: beside the numbers, "by" becomes "five" on three
 * of four. Nothing else begins with "stand", and standing by is undone by a word.
 */
export const MISHEARD: ReadonlyMap<string, string> = new Map([['stand five', 'stand by']]);

/**
 * Said for yes or no in other talk, and never taken for either. ROGER is "I received all of it" and never an answer to a
 * yes/no question (ICAO Doc 9432); WILCO promises an action. "No" is how the small model mishears "nine", "yes" and
 * "okay" are said to anybody near, and "correct" is the beginning of "correction".
 */
export const NOT_ANSWERS: ReadonlySet<string> = new Set([
  ...['yes', 'yeah', 'yep', 'yes correct', 'no', 'nope', 'okay', 'ok', 'all right', 'right', 'wrong', 'correct'],
  ...["that's correct", 'that is correct', 'not correct', 'roger', 'wilco', 'confirm', 'confirmed', 'copy', 'check'],
]);

/** The question that is asked again where an answer was wanted and none of the words above is one; null elsewhere. */
export function answerWanted(sayings: readonly Saying[]): string | null {
  const wants = (kind: Meaning['kind']): boolean => sayings.some(({ meaning }) => meaning.kind === kind);
  if (!wants('affirm')) return null;
  return wants('negative') ? prompting.affirmOrNegative : prompting.affirm;
}
