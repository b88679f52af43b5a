/** From numbers to words. What is said here reads back as the same number and as no other. */
import { SAYINGS, type SayStyle } from './grammar.ts';
import { buildMachine, eachWords } from './machine.ts';

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
 * @throws RangeError when `decimal` is not such text
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
 * @throws RangeError when `decimal` is not such text
 */
export function sayNumber(decimal: string, style: SayStyle, options: SayOptions = {}): string[] {
  if (!isDecimal(decimal)) {
    throw new RangeError(
      `Cannot say '${decimal}' as a number: write digits with at most one point between them, as in 24.50.`,
    );
  }
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

/** Unsigned decimal text: digits, and at most one point between them. */
export function isDecimal(text: string): boolean {
  return /^\d+(\.\d+)?$/.test(text);
}

function unwantedWords(style: SayStyle, options: SayOptions): ReadonlySet<string> {
  const nine = options.nine ?? (style === 'aviation' ? 'niner' : 'nine');
  const point = options.point ?? 'point';
  const unwanted = new Set(['a', nine === 'nine' ? 'niner' : 'nine', point === 'point' ? 'decimal' : 'point']);
  if (options.and === false) unwanted.add('and');
  return unwanted;
}

/**
 * A number and its digits, for a number that is easily misheard: '15' is "fifteen, that is one five" (DOE and hospital
 * practice for teen and ty). When both would be the same words they are said once.
 * @throws RangeError when `decimal` is not unsigned decimal text
 */
export function spellOut(decimal: string, options: SayOptions = {}): string {
  const number = sayNumber(decimal, 'natural', options).join(' ');
  const digits = sayDigits(decimal, options).join(' ');
  return number === digits ? digits : `${number}, that is ${digits}`;
}
