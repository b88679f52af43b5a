import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  NUMBER_WORDS,
  readNumber,
  readNumbers,
  sayDigits,
  sayNumber,
  waysToSay,
} from '../../../src/language/numbers/index.ts';

const wordsOf = (text: string) => text.split(' ');
const digitsRead = (text: string) => readNumber(wordsOf(text)).map(({ digits }) => digits);

const corpus = readFileSync(new URL('./corpus.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => {
    const [said = '', readings = ''] = line.split(' = ');
    return { said, readings: readings === '-' ? [] : readings.split(' ') };
  });

describe('the corpus of how people talk', () => {
  test('has at least 200 different entries', () => {
    expect(new Set(corpus.map(({ said }) => said)).size).toBe(corpus.length);
    expect(corpus.length).toBeGreaterThanOrEqual(200);
  });
  test.each(corpus)('"$said" is $readings', ({ said, readings }) => {
    expect(digitsRead(said).toSorted()).toEqual(readings.toSorted());
  });
});

describe('a reading', () => {
  test('keeps the words as they came', () => {
    expect(readNumber(['Twenty-Four', 'and', 'a', 'half'])).toEqual([
      { digits: '24.5', asSaid: 'Twenty-Four and a half', style: 'fraction' },
    ]);
  });
  test('says when its point was not said', () => {
    expect(readNumber(['twelve', 'fifty']).map(({ digits, style }) => [digits, style])).toEqual([
      ['1250', 'grouped'],
      ['12.50', 'unsaid-point'],
    ]);
  });
  test('says when its scale was not said', () => {
    const styles = new Map(readNumber(wordsOf('a hundred and a half')).map(({ digits, style }) => [digits, style]));
    expect(styles).toEqual(new Map([['100.5', 'fraction'], ['150', 'unsaid-scale']])); // prettier-ignore
  });
  test('of no words is none', () => expect(readNumber([])).toEqual([]));
  test('does not depend on case, hyphens or how the words are split', () => {
    const mixed = fc.record({ said: fc.constantFrom(...corpus.map(({ said }) => said)), seams: fc.infiniteStream(fc.constantFrom('-', ' ', '  ')), upper: fc.boolean() }); // prettier-ignore
    fc.assert(
      fc.property(mixed, ({ said, seams, upper }) => {
        const joined = wordsOf(said).reduce((text, word) => `${text}${seams.next().value}${word}`);
        const asOne = readNumber([upper ? joined.toUpperCase() : joined]).map(({ digits }) => digits);
        expect(asOne).toEqual(digitsRead(said));
      }),
    );
  });
});

describe('a fastener and a value', () => {
  const heard = (text: string) =>
    readNumbers(wordsOf(text))
      .map((each) => (each.kind === 'value' ? each.value.digits : `${each.fastener.digits}: ${each.value.digits}`))
      .toSorted();
  test.each([
    ['four two four point five', ['424.5', '4: 24.5', '42: 4.5']],
    ['four twenty four point five', ['424.5', '4: 24.5', '420: 4.5']],
    ['one thirty five', ['135', '1.35', '1: 35', '130: 5']],
    ['ten one hundred and thirty five', ['10: 135']],
    ['one two hundred', ['1: 200']],
    ['twelve one thirty five', ['12: 135', '12: 1.35', '121: 35']],
    ['seven fifty', ['750', '7.50', '7: 50']],
    ['twenty five', ['25', '20: 5']],
    ['twenty five hundred', ['2500', '20: 500']],
    ['five four thousand', ['54000', '5: 4000']],
    ['three double two', ['322', '3: 22']],
    ['three two and a half', ['32.5', '3: 2.5']],
    ['nine hundred and ninety nine five', ['999: 5', '990: 95']],
    ['a hundred and a half five', []],
    ['four', ['4']],
    ['zero four', ['04']],
    ['four point five', ['4.5']],
    ['stud four', []],
  ])('"%s" is %j', (said, ways) => expect(heard(said)).toEqual(ways.toSorted()));

  test('every fastener number said in digits before every value is among the readings, whatever the numbers', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 99_999 }), (fastener, tenths) => {
        const value = `${Math.floor(tenths / 10)}.${tenths % 10}`;
        for (const style of ['digits', 'aviation', 'natural'] as const) {
          expect(heard([...sayDigits(`${fastener}`), ...sayNumber(value, style)].join(' '))).toContain(
            `${fastener}: ${value}`,
          );
        }
      }),
    );
  });
});

/** The digit words of the tests' own table, not of the grammar. */
const DIGIT_SAYINGS = ['zero oh', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine niner'].map(
  wordsOf,
);

describe('digit by digit', () => {
  const sayings = DIGIT_SAYINGS.flatMap((words, figure) =>
    words.flatMap((word) => [
      { words: [word], figures: `${figure}` },
      { words: ['double', word], figures: `${figure}`.repeat(2) },
      { words: ['triple', word], figures: `${figure}`.repeat(3) },
    ]),
  );
  const someDigits = fc.array(fc.constantFrom(...sayings), { minLength: 1, maxLength: 8 });

  test('has exactly one reading: the digits that were said', () => {
    fc.assert(
      fc.property(someDigits, fc.option(someDigits), (before, after) => {
        const parts = after ? [...before, { words: ['point'], figures: '.' }, ...after] : before;
        const words = parts.flatMap((part) => part.words);
        fc.pre(words.some((word) => !['oh', 'double', 'triple', 'point'].includes(word)));
        expect(readNumber(words).map(({ digits, style }) => [digits, style])).toEqual([
          [parts.map(({ figures }) => figures).join(''), 'digits'],
        ]);
      }),
    );
  });
});

/** Figures other than zero that each word brings, in the tests' own table. */
const BRINGS = new Map<string, string>([
  ...DIGIT_SAYINGS.flatMap((words, figure) => words.map((word) => [word, figure === 0 ? '' : `${figure}`] as const)),
  ...wordsOf('ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen').map(
    (word, index) => [word, index === 0 ? '1' : `1${index}`] as const,
  ),
  ...wordsOf('twenty thirty forty fifty sixty seventy eighty ninety').map(
    (word, index) => [word, `${index + 2}`] as const,
  ),
  ['a', '1'],
]);

describe('any words at all', () => {
  const spoken = fc.array(fc.constantFrom(...NUMBER_WORDS, 'triple', 'to', 'stud'), { maxLength: 12 });
  const plausible = fc.array(fc.constantFrom(...NUMBER_WORDS.filter((word) => !/half|quarter|double/.test(word))), {
    minLength: 1,
    maxLength: 5,
  });

  test('give unsigned decimal text, each once, or nothing', () => {
    fc.assert(
      fc.property(
        fc.oneof(spoken, fc.array(fc.string()), fc.array(fc.constantFrom('__proto__', 'constructor', '-', ''))),
        (words) => {
          const digits = readNumber(words).map((reading) => reading.digits);
          expect(new Set(digits).size).toBe(digits.length);
          const styles = readNumber(words).map(({ style }) => style);
          expect(styles.length > 0 && styles.every((style) => style.startsWith('unsaid'))).toBe(false);
          for (const text of digits) expect(text).toMatch(/^\d+(\.\d+)?$/);
          readNumbers(words);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('never give a digit that nobody said', () => {
    let numbers = 0;
    fc.assert(
      fc.property(plausible, (words) => {
        const said = words.map((word) => BRINGS.get(word) ?? '').join('');
        for (const { digits } of readNumber(words)) {
          numbers += 1;
          expect(digits.replaceAll(/[0.]/g, '')).toBe(said);
        }
      }),
      { numRuns: 20_000 },
    );
    expect(numbers).toBeGreaterThan(1000);
  });

  test('may be very many', () => {
    for (const word of NUMBER_WORDS) {
      expect(readNumber(Array<string>(5000).fill(word)).length).toBeLessThanOrEqual(1);
      expect(readNumbers(Array<string>(500).fill(word)).length).toBeLessThanOrEqual(6);
    }
  });
});

describe('every way to say a number', () => {
  test('reads back as that number, and is marked when it means another too', () => {
    const decimals = fc.oneof(
      fc.integer({ min: 0, max: 9_999 }).map((whole) => `${whole}`),
      fc
        .tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 0, max: 99 }))
        .map(([whole, part]) => `${whole}.${part}`),
    );
    fc.assert(
      fc.property(decimals, (decimal) => {
        const ways = waysToSay(decimal);
        expect(ways.some(({ alone }) => alone)).toBe(true);
        for (const { words, style, alone } of ways) {
          const readings = readNumber(words);
          expect(readings).toContainEqual({ digits: decimal, asSaid: words.join(' '), style });
          expect(readings.length === 1).toBe(alone);
        }
      }),
      { numRuns: 200 },
    );
  });

  test('finds every unambiguous and ambiguous way of the corpus', () => {
    const offered = corpus.filter(({ said }) =>
      wordsOf(said.toLowerCase()).every((word) => NUMBER_WORDS.includes(word)),
    );
    for (const { said, readings } of offered) {
      for (const decimal of readings.filter(({ length }) => length <= 9)) {
        expect(waysToSay(decimal).map(({ words }) => words.join(' '))).toContain(said.toLowerCase());
      }
    }
  });
});
