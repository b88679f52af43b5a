/** The word that hushes the app's own voice. It works only while that voice sounds, and changes nothing in the job. */
import { sayDigits } from './numbers/index.ts';

/**
 * "Stop" is what people call out, the small model knows it from many people, and it is no phrase of any situation: said at
 * another time it does nothing, so that nobody stops the job by it unawares.
 */
export const HUSH_WORDS: readonly string[] = ['stop'];

/** The words of an announcement as they are spoken: digits one by one, in lower case. */
export const spokenWords = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/\d/g, (digit) => ` ${sayDigits(digit).join(' ')} `)
    .split(/[^a-z']+/)
    .filter(Boolean);
