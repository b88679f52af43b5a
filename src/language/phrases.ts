import { NUMBER_WORDS } from './numbers/index.ts';
import type { Meaning } from '../session/intent.ts';
import type { Saying, Situation } from './situation.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/** Every digit after every other and around the point: no digit string is likelier than another, whatever the target. */
const DIGIT_PAIRS = DIGITS.flatMap((first) => [
  ...DIGITS.map((second) => `${first} ${second}`),
  `${first} point`,
  `point ${first}`,
]);

/**
 * The recogniser's phrase list for a situation. The recogniser learns which word may follow which from it, so the
 * number part spans every value and leans to none.
 */
export function recogniserPhrases(situation: Situation): readonly string[] {
  const phrases = situation.sayings.map(({ words }) => words);
  const room = situation.reading ?? situation.correction;
  if (room === null) return phrases;
  const { label, unit, takesClicks } = room;
  const unitWords = TORQUE_UNIT_SPOKEN[unit][0];
  return [
    ...phrases,
    ...NUMBER_WORDS,
    ...DIGIT_PAIRS,
    ...['number', label].flatMap((name) => DIGITS.map((digit) => `${name} ${digit} at ${digit}`)),
    ...DIGITS.map((digit) => `${digit} ${unitWords}`),
    ...(situation.correction ? DIGITS.map((digit) => `correction ${digit}`) : []),
    ...(takesClicks ? ['click', ...DIGITS.map((digit) => `${digit} click`)] : []),
  ];
}

/**
 * Of the words a model lacks, those without which something cannot be said at all here: a phrase that has another
 * wording in the model is not missed.
 */
export function missedWords(situation: Situation, lacking: readonly string[]): readonly string[] {
  const lacks = (words: string): boolean => words.split(' ').some((word) => lacking.includes(word));
  const isSayable = ({ meaning }: Saying): boolean =>
    situation.sayings.some((other) => sameMeaning(other.meaning, meaning) && !lacks(other.words));
  const missed = situation.sayings.filter((saying) => !isSayable(saying)).flatMap(({ words }) => words.split(' '));
  const numbers = situation.reading ? [...DIGITS, 'point'] : [];
  return [...new Set([...missed, ...numbers])].filter((word) => lacking.includes(word));
}

const sameMeaning = (a: Meaning, b: Meaning): boolean => JSON.stringify(a) === JSON.stringify(b);
