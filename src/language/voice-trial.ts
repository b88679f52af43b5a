/** What a person is asked to say to see how they are heard: every digit once, the point, and the word that confirms. */
import { decoysFor } from './decoys.ts';
import type { Completeness } from './completeness.ts';
import { NUMBER_WORDS, PRONUNCIATIONS, pronounced, pronouncedIn, readNumber } from './numbers/index.ts';
import { NUMBER_PHRASES } from './phrases.ts';

/** Invented values of no procedure. */
export const TRIALS = ['one two five', 'four zero seven', 'three eight six', 'nine point five', 'affirm'] as const;

/**
 * What the recogniser is offered meanwhile: all numbers, as in the job, not the few that are asked for, and in the usual
 * words as well as in those of radiotelephony.
 */
export function trialPhrases(): readonly string[] {
  const phrases = [...pronounced(NUMBER_PHRASES, [...PRONUNCIATIONS.keys()]), 'affirm', 'negative'];
  return [...phrases, ...decoysFor(phrases).map(({ word }) => word)];
}

/** The pronunciations by which somebody was heard rightly: from then on they are offered to that person. */
export const pronunciationsShown = (
  trials: readonly { readonly heard: string; readonly isRight: boolean }[],
): readonly string[] => pronouncedIn(trials.filter(({ isRight }) => isRight).flatMap(({ heard }) => heard.split(' ')));

const NUMBERS: ReadonlySet<string> = new Set([...NUMBER_WORDS, ...PRONUNCIATIONS.keys(), 'point']);

/** Numbers wait for more as they do in the job, so that a pause within one is no fault of the voice. Each is heard once. */
export const trialJudge = {
  completeness: (words: readonly string[]): Completeness => {
    if (words.length === 0) return 'unfinished';
    if (words.every((word) => NUMBERS.has(word))) return 'complete, may go on';
    return words.length === 1 && (words[0] === 'affirm' || words[0] === 'negative') ? 'complete and closed' : 'nothing';
  },
  isHeardTwice: (): boolean => false,
};

/** Whether the words heard are those asked for: the same word, or the same number, in whichever words it was said. */
export function isHeardAs(asked: string, heard: readonly string[]): boolean {
  if (heard.join(' ') === asked) return true;
  const [wanted] = readNumber(asked.split(' '));
  const numbers = readNumber(heard);
  return wanted !== undefined && numbers.length === 1 && numbers[0]?.digits === wanted.digits;
}
