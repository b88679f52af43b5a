/** The words the recogniser must know to hear numbers, taken from the grammar itself. */
import { either, offeredWords } from './form.ts';
import { READINGS, type ReadingStyle } from './grammar.ts';

/**
 * The recogniser's words for numbers said in these styles, by default in all. No homophones ("to", "for"), no spellings
 * that are text only ("wun"). A phrase list for digits alone is much smaller, and heard better: `numberWords(['digits'])`.
 */
export function numberWords(styles: readonly ReadingStyle[] = READINGS.map(({ style }) => style)): readonly string[] {
  return offeredWords(either(...READINGS.filter(({ style }) => styles.includes(style)).map(({ form }) => form)));
}

/** Every word of the number language that the recogniser is offered. */
export const NUMBER_WORDS: readonly string[] = numberWords();
