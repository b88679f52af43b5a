/** The word that hushes the app's own voice. It works only while that voice sounds, and changes nothing in the job. */
import { sayDigits } from './numbers/index.ts';

/**
 * "Stop" is what people call out, the small model knows it from many people, and it is no phrase of any situation: said at
 * another time it does nothing, so that nobody stops the job by it unawares.
 */
export const HUSH_WORDS: readonly string[] = ['stop'];

/** Whether a typed line is that word. */
export const isHush = (words: readonly string[]): boolean =>
  words.length === 1 && words.every((word) => HUSH_WORDS.includes(word));

/** While a weight is held it calls the second person, and hushes the voice that speaks over it. */
export const CALL_WORD = 'help';
/** "Held", "hold": the model takes one for the other, and the app's own voice calls nobody. */
const LIKE_CALL = /^h[eo]l/;

/**
 * The words that are listened for while the app says others.
 * @param isCallWanted a weight is held, and there is a second person to call
 */
export const hushWords = (own: readonly string[], isCallWanted: boolean): readonly string[] => [
  ...HUSH_WORDS,
  ...(isCallWanted && !own.some((word) => LIKE_CALL.test(word)) ? [CALL_WORD] : []),
];

/** The words of an announcement as they are spoken: digits one by one, in lower case. */
export const spokenWords = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/\d/g, (digit) => ` ${sayDigits(digit).join(' ')} `)
    .split(/[^a-z']+/)
    .filter(Boolean);
