/**
 * Numbers that sound like another number. This never corrects anything: it tells the doubt logic what to ask about, and
 * it knows nothing of targets.
 */
import { PRONUNCIATIONS } from './pronunciations.ts';
import { plainWords, readNumber, type SpokenNumber } from './read.ts';
import { plainWaysToSay } from './say.ts';

/** Why two numbers sound alike. */
export type SoundAlike =
  /** thirteen and thirty … nineteen and ninety. */
  | 'teen-ty'
  /** four and forty … nine and ninety: "four zero" heard as "forty zero". */
  | 'unit-ty'
  /** Two digits or two teens: five and nine, eighteen and fifteen. */
  | 'near-words'
  /** One of two equal digits lost or added: "eight eight four" and "eight four". */
  | 'doubled-digit'
  /** The point lost or added. */
  | 'point'
  /** "and a half" lost or added. */
  | 'half';

/** A number that may have been meant, and why. */
export interface NearNumber {
  readonly number: SpokenNumber;
  readonly because: SoundAlike;
}

/**
 * Words taken for one another, either way round.
 * - teen-ty: a hospital safety page.
 * - From memory: five and nine, six and sixty (and so seven, eight, nine), the lost point, "and a half".
 * - Measured with the small model on people it was not trained on: one and nine, thirteen and fifteen, eighteen and
 *   fifteen, four and forty, a doubled digit lost.
 */
const TAKEN_FOR: readonly (readonly [string, string, SoundAlike])[] = [
  ['thirteen', 'thirty', 'teen-ty'],
  ['fourteen', 'forty', 'teen-ty'],
  ['fifteen', 'fifty', 'teen-ty'],
  ['sixteen', 'sixty', 'teen-ty'],
  ['seventeen', 'seventy', 'teen-ty'],
  ['eighteen', 'eighty', 'teen-ty'],
  ['nineteen', 'ninety', 'teen-ty'],
  ['four', 'forty', 'unit-ty'],
  ['six', 'sixty', 'unit-ty'],
  ['seven', 'seventy', 'unit-ty'],
  ['eight', 'eighty', 'unit-ty'],
  ['nine', 'ninety', 'unit-ty'],
  ['five', 'nine', 'near-words'],
  ['one', 'nine', 'near-words'],
  ['thirteen', 'fifteen', 'near-words'],
  ['eighteen', 'fifteen', 'near-words'],
];
const DIGIT_WORDS = new Set(['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']);
/** Other words for the same: one of each is enough to compare sounds. */
const SAME_AS: ReadonlyMap<string, string> = new Map([
  ['niner', 'nine'],
  ['oh', 'zero'],
  ['decimal', 'point'],
  ...PRONUNCIATIONS,
]);

/** Plain words: "niner" is "nine", "double two" is "two two". */
function comparable(words: readonly string[]): readonly string[] {
  const plain = plainWords(words).map((word) => SAME_AS.get(word) ?? word);
  return plain.flatMap((word, at) => (word === 'double' ? (plain[at + 1] ?? word) : word));
}

interface Mishearing {
  readonly words: readonly string[];
  readonly because: SoundAlike;
}

/** The word sequences that are one mishearing away from these. */
function mishearings(words: readonly string[]): readonly Mishearing[] {
  const changed: Mishearing[] = [];
  const change = (from: number, count: number, to: readonly string[], because: SoundAlike): void => {
    changed.push({ words: words.toSpliced(from, count, ...to), because });
  };
  words.forEach((word, at) => {
    for (const [one, other, because] of TAKEN_FOR) {
      if (word === one) change(at, 1, [other], because);
      if (word === other) change(at, 1, [one], because);
    }
    if (DIGIT_WORDS.has(word)) change(at, 0, [word], 'doubled-digit');
    if (DIGIT_WORDS.has(word) && words[at + 1] === word) change(at, 1, [], 'doubled-digit');
    if (word === 'point') change(at, 1, [], 'point');
    else if (at > 0) change(at, 0, ['point'], 'point');
  });
  if (words.slice(-3).join(' ') === 'and a half') change(words.length - 3, 3, [], 'half');
  else change(words.length, 0, ['and', 'a', 'half'], 'half');
  return changed;
}

/**
 * The other numbers that may have been meant when these words were heard, each once. Also for words that are no number
 * as they stand: "forty zero" gives 40, so that the question can be "did you say four zero?".
 */
export function nearReadings(words: readonly string[]): readonly NearNumber[] {
  const heard = comparable(words);
  const own = new Set(readNumber(heard).map(({ digits }) => valueText(digits)));
  const near = new Map<string, NearNumber>();
  for (const { words: meant, because } of mishearings(heard)) {
    for (const number of readNumber(meant)) {
      const value = valueText(number.digits);
      if (own.has(value) || near.has(value) || isFarFetched(number)) continue;
      near.set(value, { number, because });
    }
  }
  return [...near.values()];
}

/**
 * The numbers that sound like this one in any of the ways people say it, each once: '15' gives 50, 19 and others.
 * Numbers with the same value ('24.5' and '24.50') are not near: they are the same.
 * @param decimal unsigned decimal text
 * @throws RangeError when `decimal` is not such text
 */
export function soundsLike(decimal: string): readonly NearNumber[] {
  const own = valueText(decimal);
  const near = new Map<string, NearNumber>();
  for (const { words, style } of plainWaysToSay(decimal)) {
    if (style === 'unsaid-point' || style === 'unsaid-scale') continue;
    for (const other of nearReadings(words)) {
      const value = valueText(other.number.digits);
      if (value !== own && !near.has(value)) near.set(value, other);
    }
  }
  return [...near.values()];
}

/** Whether one number is one mishearing away from the other. Symmetric; false for two texts of the same value. */
export function nearSounding(one: string, other: string): boolean {
  const value = valueText(other);
  return soundsLike(one).some(({ number }) => valueText(number.digits) === value);
}

const isFarFetched = ({ style }: SpokenNumber): boolean => style === 'unsaid-point' || style === 'unsaid-scale';

/** One text for each value: no zeros before, none after the point. */
function valueText(decimal: string): string {
  const [whole = '', part = ''] = decimal.split('.');
  const shortWhole = whole.replace(/^0+(?=\d)/, '');
  const shortPart = part.replace(/0+$/, '');
  return shortPart === '' ? shortWhole : `${shortWhole}.${shortPart}`;
}
