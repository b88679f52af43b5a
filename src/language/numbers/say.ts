/** From numbers to words. What is said here reads back as the same number and as no other. */
import { SAYINGS, type ReadingStyle, type SayStyle } from './grammar.ts';
import { buildMachine, eachWords } from './machine.ts';
import { readingMachine, readNumber } from './read.ts';

export interface SayOptions {
  /** AIM and ICAO say "niner". Default: 'niner' in aviation style, else 'nine'. */
  readonly nine?: 'nine' | 'niner';
  /** AIM says "point", ICAO "decimal". Default: 'point'. */
  readonly point?: 'point' | 'decimal';
  /** "one hundred and five" (true, the default) or "one hundred five". Natural style only. */
  readonly and?: boolean;
}

const machinesFor = (style: SayStyle) => SAYINGS[style].map((form) => buildMachine([{ tag: style, form }]));
const machines = {
  digits: machinesFor('digits'),
  aviation: machinesFor('aviation'),
  natural: machinesFor('natural'),
};

/**
 * Digit by digit: '135.5' is "one three five point five". Zeros before and after are said.
 * @param decimal unsigned decimal text such as '024' or '24.50'
 * @throws RangeError when `decimal` is not such text, or is longer than 1000 characters
 */
export function sayDigits(decimal: string, options: SayOptions = {}): string[] {
  return sayNumber(decimal, 'digits', options);
}

/**
 * The words for a number.
 * - `digits`: digit by digit.
 * - `aviation`: AIM 4-2-8 and ICAO Annex 10: whole hundreds and thousands as such ("four thousand five hundred", "one
 *   three thousand five hundred"), every other number digit by digit.
 * - `natural`: "one hundred and thirty five point five", to 99 999.
 *
 * A number for which a style has no words (zeros before it, above its range) is said digit by digit.
 * @param decimal unsigned decimal text such as '024' or '24.50'
 * @throws RangeError when `decimal` is not such text, or is longer than 1000 characters
 */
export function sayNumber(decimal: string, style: SayStyle, options: SayOptions = {}): string[] {
  requireDecimal(decimal);
  const unwanted = unwantedWords(style, options);
  const mayUse = (word: string): boolean => !unwanted.has(word);
  for (const machine of machines[style]) {
    let said: readonly string[] = [];
    eachWords(machine, decimal, mayUse, (words) => {
      said = words;
      return 'enough';
    });
    if (said.length > 0) return [...said];
  }
  throw new RangeError(`There are no words for '${decimal}' in ${style} style.`);
}

function requireDecimal(text: string, longest = LONGEST_SAID): void {
  if (!/^\d+(\.\d+)?$/.test(text)) {
    throw new RangeError(
      `'${text}' is not a number to say: write digits with at most one point between them, as in 24.50.`,
    );
  }
  if (text.length > longest) {
    throw new RangeError(`A number of ${text.length} characters is too long to say here: at most ${longest}.`);
  }
}

const LONGEST_SAID = 1000;
/** The ways grow as a power of the length: each zero is "zero" or "oh", each pair may be "double". */
const LONGEST_WITH_ALL_WAYS = 9;

function unwantedWords(style: SayStyle, options: SayOptions): ReadonlySet<string> {
  const nine = options.nine ?? (style === 'aviation' ? 'niner' : 'nine');
  const point = options.point ?? 'point';
  const unwanted = new Set(['a', nine === 'nine' ? 'niner' : 'nine', point === 'point' ? 'decimal' : 'point']);
  if (options.and === false) unwanted.add('and');
  return unwanted;
}

/** One way to say a number. */
export interface WayToSay {
  readonly words: readonly string[];
  readonly style: ReadingStyle;
  /** Whether these words mean this number only. */
  readonly alone: boolean;
}

/**
 * Every way people say a number, ambiguous ones too, from the words the recogniser is offered: '135' is "one three five",
 * "one hundred and thirty five", "a hundred thirty five", "one thirty five" and more.
 * @param decimal unsigned decimal text
 * @param mayUse keeps out words that are not wanted, such as "double" or "niner"
 * @throws RangeError when `decimal` is not such text, or is longer than 9 characters
 */
export function waysToSay(decimal: string, mayUse: (word: string) => boolean = () => true): readonly WayToSay[] {
  requireDecimal(decimal, LONGEST_WITH_ALL_WAYS);
  return collectWays(decimal, mayUse);
}

/** The ways made of one word for each digit and one for the point: few, however long the number is. */
export function plainWaysToSay(decimal: string): readonly WayToSay[] {
  requireDecimal(decimal);
  return collectWays(decimal, (word) => !['oh', 'niner', 'decimal', 'double'].includes(word));
}

function collectWays(decimal: string, mayUse: (word: string) => boolean): readonly WayToSay[] {
  const ways = new Map<string, WayToSay>();
  eachWords(readingMachine, decimal, mayUse, (words, style) => {
    const key = words.join(' ');
    if (!ways.has(key)) ways.set(key, { words, style, alone: readNumber(words).length === 1 });
    return 'more';
  });
  return [...ways.values()];
}

/**
 * A number and then its digits, the cure for teen and ty: '15' is "fifteen, that is one five". When both would be the
 * same words they are said once. The comma is for the voice: this is text to speak.
 * @throws RangeError when `decimal` is not unsigned decimal text
 */
export function spellOut(decimal: string, options: SayOptions = {}): string {
  const number = sayNumber(decimal, 'natural', options).join(' ');
  const digits = sayDigits(decimal, options).join(' ');
  return number === digits ? digits : `${number}, that is ${digits}`;
}
