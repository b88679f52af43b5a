import type { Meaning } from '../session/intent.ts';
import { decoysFor } from './decoys.ts';
import { grammarOf } from './grammar.ts';
import { ANY_DIGIT, samplesOf } from './grammar-samples.ts';
import { NUMBER_WORDS, pronounced } from './numbers/index.ts';
import type { Saying } from './sayings.ts';
import type { Situation } from './situation.ts';

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Every digit after every other and around the point: no digit string is likelier than another, whatever the target. */
const DIGIT_STRINGS = DIGITS.flatMap((first) => [
  `${first} point ${first}`,
  ...DIGITS.map((second) => `${first} ${second}`),
]);

/** What the recogniser is offered for numbers, whenever one may be said. */
export const NUMBER_PHRASES: readonly string[] = [...NUMBER_WORDS, ...DIGIT_STRINGS];

/**
 * The recogniser's phrase list for a situation: its sayings, the words and digit pairs of numbers, and samples of each
 * form of the grammar. The recogniser learns which word may follow which from it, so the number part spans every value
 * and leans to none.
 * @param spoken pronunciations of figures by which its people were heard at their microphone check
 */
export function recogniserPhrases(situation: Situation, spoken: readonly string[] = []): readonly string[] {
  const { sayings, rules } = grammarOf(situation);
  const numbers = rules.length > 0 ? NUMBER_PHRASES : [];
  const samples = samplesOf(rules.flatMap(({ forms }) => forms)).flatMap((sample) =>
    DIGITS.map((digit) => sample.replaceAll(ANY_DIGIT, digit)),
  );
  const said = sayings.filter(({ written }) => !written).map(({ words }) => words);
  const phrases = [...new Set([...said, ...pronounced([...numbers, ...samples], spoken)])];
  return [...phrases, ...decoysFor(phrases).map(({ word }) => word)];
}

/**
 * Of the words a model lacks, those without which something cannot be said at all here: a phrase that has another
 * wording in the model is not missed.
 */
export function missedWords(situation: Situation, lacking: readonly string[]): readonly string[] {
  const lacks = (words: string): boolean => words.split(' ').some((word) => lacking.includes(word));
  const isSayable = ({ meaning }: Saying): boolean =>
    situation.sayings.some((other) => sameMeaning(other.meaning, meaning) && !lacks(other.words));
  const missed = situation.sayings
    .filter((saying) => !saying.written && !isSayable(saying))
    .flatMap(({ words }) => words.split(' '));
  const numbers = situation.reading ? [...DIGITS, 'point'] : [];
  return [...new Set([...missed, ...numbers])].filter((word) => lacking.includes(word));
}

const sameMeaning = (a: Meaning, b: Meaning): boolean => JSON.stringify(a) === JSON.stringify(b);
