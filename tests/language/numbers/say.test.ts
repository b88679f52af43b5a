import { describe, expect, test } from 'vitest';
import {
  readNumber,
  sayDigits,
  sayNumber,
  spellOut,
  waysToSay,
  type SayOptions,
  type SayStyle,
} from '../../../src/language/numbers/index.ts';

const said = (decimal: string, style: SayStyle, options?: SayOptions) => sayNumber(decimal, style, options).join(' ');
const digitsRead = (words: readonly string[]) => readNumber(words).map(({ digits }) => digits);

describe('aviation style, AIM 4-2-8', () => {
  test.each([
    ['500', 'five hundred'],
    ['4500', 'four thousand five hundred'],
    ['10000', 'one zero thousand'],
    ['13500', 'one three thousand five hundred'],
    ['10', 'one zero'],
    ['122.1', 'one two two point one'],
    ['0920', 'zero niner two zero'],
  ])('%s is "%s"', (decimal, words) => expect(said(decimal, 'aviation')).toBe(words));

  test('ICAO says "decimal" for the point', () => {
    expect(said('122.1', 'aviation', { point: 'decimal' })).toBe('one two two decimal one');
  });
});

test('a serial number is said in separate digits, FAA 7110.65 2-4-17', () => {
  expect(said('11495', 'digits', { nine: 'niner' })).toBe('one one four niner five');
});

describe('whole hundreds and thousands, ICAO Annex 10 §5.2.1.4 as restated', () => {
  test.each([
    ['800', 'eight hundred'],
    ['3400', 'three thousand four hundred'],
    ['12000', 'one two thousand'],
  ])('%s is "%s"', (decimal, words) => expect(said(decimal, 'aviation')).toBe(words));
});

describe('natural style', () => {
  test.each([
    ['0', 'zero'],
    ['15', 'fifteen'],
    ['24.5', 'twenty four point five'],
    ['24.50', 'twenty four point five zero'],
    ['0.05', 'zero point zero five'],
    ['100', 'one hundred'],
    ['135.5', 'one hundred and thirty five point five'],
    ['1500', 'one thousand five hundred'],
    ['2005', 'two thousand and five'],
    ['9999', 'nine thousand nine hundred and ninety nine'],
  ])('%s is "%s"', (decimal, words) => expect(said(decimal, 'natural')).toBe(words));

  test('can leave out "and"', () => {
    expect(said('2135', 'natural', { and: false })).toBe('two thousand one hundred thirty five');
  });
});

test.each(['024', '000', '123456', '00.5'])('%s has no natural words and is said digit by digit', (decimal) => {
  expect(sayNumber(decimal, 'natural')).toEqual(sayDigits(decimal));
});

test.each(['', '.', '1.', '.5', '-1', '1e3', '11,495', '1.2.3', '١٢'])('%j is refused with the mend', (text) => {
  expect(() => sayNumber(text, 'natural')).toThrow(/write digits .* 24\.50/);
});

test('a number too long to say, or to say in every way, is refused', () => {
  expect(() => sayDigits('1'.repeat(1001))).toThrow(/1001 characters is too long .* 1000/);
  expect(sayDigits('1'.repeat(1000))).toHaveLength(1000);
  expect(() => waysToSay('0000000000')).toThrow(/10 characters is too long .* 9/);
});

describe('a number that is easily misheard is spelt out', () => {
  test('fifteen, as a hospital safety page words it', () => expect(spellOut('15')).toBe('fifteen, that is one five'));
  test('a single digit is said once', () => expect(spellOut('5')).toBe('five'));
});

describe('what is said reads back as the same number and no other', () => {
  const everyTenth = Array.from({ length: 100_000 }, (_, tenths) => `${Math.floor(tenths / 10)}.${tenths % 10}`);
  const ways: readonly (readonly [SayStyle, SayOptions])[] = [
    ['digits', {}],
    ['digits', { nine: 'niner', point: 'decimal' }],
    ['aviation', {}],
    ['natural', {}],
    ['natural', { and: false }],
  ];
  test.each(ways)('every tenth from 0 to 9 999.9 in %s style, %j', (style, options) => {
    const wrong = everyTenth.filter((decimal) => !isOnly(decimal, sayNumber(decimal, style, options)));
    expect(wrong).toEqual([]);
  });
  test.each(ways)('every whole number from 0 to 99 999 in %s style, %j', (style, options) => {
    const wrong = everyTenth.map((_, whole) => `${whole}`).filter((n) => !isOnly(n, sayNumber(n, style, options)));
    expect(wrong).toEqual([]);
  });
  function isOnly(decimal: string, words: readonly string[]): boolean {
    const read = digitsRead(words);
    return read.length === 1 && read[0] === decimal;
  }
});
