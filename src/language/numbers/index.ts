/** Spoken numbers: words to figures with every reading, and figures to words with exactly one. */
export { PRONUNCIATIONS, pronounced, pronouncedIn } from './pronunciations.ts';
export type { ReadingStyle, SayStyle } from './grammar.ts';
export { nearReadings, nearSounding, soundsLike, type NearNumber, type SoundAlike } from './near-sounding.ts';
export { readNumber, readNumbers, type SpokenNumber, type SpokenNumbers } from './read.ts';
export { sayDigits, sayNumber, spellOut, waysToSay, type SayOptions, type WayToSay } from './say.ts';
export { NUMBER_WORDS, numberWords } from './vocabulary.ts';
