/** From words to numbers: every reading the words allow, none preferred. */
import { POINT_WORDS, READINGS, type ReadingStyle } from './grammar.ts';
import { buildMachine, eachFigures } from './machine.ts';

/** A number as it was said. The figures are exact decimal text, never a float: zeros before and after are kept. */
export interface SpokenNumber {
  /** Decimal text such as '135.5', '024' or '24.50'. "point five" is '0.5'. Never signed. */
  readonly digits: string;
  /** The words as they came, joined by a space. */
  readonly asSaid: string;
  /** How the words make the number. */
  readonly style: ReadingStyle;
}

/** One number, or the number of a fastener followed by a value. */
export type SpokenNumbers =
  | { readonly kind: 'value'; readonly value: SpokenNumber }
  | { readonly kind: 'fastener-and-value'; readonly fastener: SpokenNumber; readonly value: SpokenNumber };

/** Shared with the sayer, which walks it the other way. */
export const readingMachine = buildMachine(READINGS.map(({ style, form }) => ({ tag: style, form })));

/**
 * Every number that exactly these words can mean. [] means that they are no number; more than one means that they are
 * ambiguous and the speaker must be asked, unless what is known beforehand (the range of the tool, the numbers of the
 * pattern; never the target) leaves one. Hyphens and case do not matter.
 */
export function readNumber(words: readonly string[]): readonly SpokenNumber[] {
  const plain = plainWords(words);
  const asSaid = words.join(' ');
  const readings = new Map<string, SpokenNumber>();
  eachFigures(readingMachine, plain, (digits, style) => {
    if (!readings.has(digits)) readings.set(digits, { digits, asSaid, style });
  });
  return [...readings.values()];
}

/**
 * Every way to hear exactly these words as a value, or as a fastener number and then a value. All cuts are tried, because
 * a pause is not in the words: "four two four point five" is 424.5, or fastener 4 and 24.5, or fastener 42 and 4.5. The
 * caller keeps what the pattern and the tool's range allow and asks when more than one is left.
 *
 * A fastener number is a whole number from 1 to 999 without zeros before it, said without a fraction. The value after it
 * does not begin with its point: nobody hears "four two four, point five".
 */
export function readNumbers(words: readonly string[]): readonly SpokenNumbers[] {
  const plain = plainWords(words);
  const single = readNumber(plain).map((value): SpokenNumbers => ({ kind: 'value', value }));
  const cuts = plain.flatMap((first, at): SpokenNumbers[] => {
    if (at === 0 || at > LONGEST_FASTENER_NUMBER || POINT_WORDS.includes(first)) return [];
    const fasteners = readNumber(plain.slice(0, at)).filter(isFastenerNumber);
    if (fasteners.length === 0) return [];
    const values = readNumber(plain.slice(at));
    return fasteners.flatMap((fastener) =>
      values.map((value): SpokenNumbers => ({ kind: 'fastener-and-value', fastener, value })),
    );
  });
  return [...single, ...cuts];
}

/** In words: "nine hundred and ninety nine". */
const LONGEST_FASTENER_NUMBER = 5;

function isFastenerNumber({ digits, style }: SpokenNumber): boolean {
  return /^[1-9]\d{0,2}$/.test(digits) && style !== 'unsaid-scale';
}

/** Lower case, hyphens and spaces opened up: ['Twenty-four'] is ['twenty', 'four']. */
export function plainWords(words: readonly string[]): readonly string[] {
  return words
    .join(' ')
    .toLowerCase()
    .split(/[\s-]+/)
    .filter((word) => word !== '');
}
