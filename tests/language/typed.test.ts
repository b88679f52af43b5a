import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { typedWords } from '../../src/language/typed.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { reading } from '../session/play.ts';
import { typed, several, otherUnit, ring, ringOf } from './meant.ts';

describe('a typed line', () => {
  test.each([
    ['4 24.5', 'number 4 at 24.5'],
    ['stud 4 24.5', 'stud number 4 at 24.5'],
    ['4 at 24.5', '4 at 24.5'],
    ['4, 24.5', 'number 4 at 24.5'],
    ['  Correction   24.5 ', 'correction 24.5'],
    ['24.5 Nm', '24.5 newton metres'],
    ['4 217 in-lb', 'number 4 at 217 inch pounds'],
    ['18 ft lb', '18 foot pounds'],
    ['Say again', 'say again'],
    ['', ''],
  ])('"%s" is "%s"', (line, words) => expect(typedWords(line).join(' ')).toBe(words));

  test.each<[string, Meaning | null]>([
    ['24.50', reading('24.50')],
    ['25', reading('25')],
    ['4 24.5', reading('24.5', 4)],
    ['24.5 Nm', reading('24.5')],
    ['217 in-lb', otherUnit],
    ['one five', several([null, '15'], [1, '5'])],
    ['stand by', { kind: 'stand by' }],
    ['stud nine, 12', reading('12', 9)],
    ['nine 12.5', reading('12.5', 9)],
    ['stud 9, one two', reading('12', 9)],
    ['9 one two point five newton metres', reading('12.5', 9)],
    ['ten, 24.5', reading('24.5', 10)],
  ])('is understood like speech, but figures are never cut: "%s"', (line, meaning) =>
    expect(typed(ring(), line)).toEqual(meaning),
  );
  test.each<[string, Meaning]>([
    ['one 5', several([null, '15'], [1, '5'])],
    ['1 five', several([null, '15'], [1, '5'])],
    ['two 5', several([null, '25'], [2, '5'])],
    ['twenty 4', several([null, '24'], [20, '4'])],
    ['one two 5', several([null, '125'], [1, '25'], [12, '5'])],
    ['stud one two 5', several([1, '25'], [12, '5'])],
    ['stud one 5', reading('5', 1)],
    ['one at 5', reading('5', 1)],
  ])('half in words and half in figures is asked about where it could be otherwise: "%s"', (line, meaning) =>
    expect(typed(ring({}, { patterns: [ringOf(24)] }), line)).toEqual(meaning),
  );
  test.each([
    '8,5',
    '4,24.5',
    '4 24.5 3',
    '24.5 3',
    'four point 5',
    '4 point five',
    'stud 4 point five',
    'four 24.5 3',
    '4 24.5 three',
    '-5',
    'nine -5',
    '+5',
    '024',
    '1e1',
    '.5',
    '24.5 kg',
    '9'.repeat(2000),
    `nine ${'9'.repeat(2000)}`,
  ])('that could be misread is not understood: "%s"', (line) => expect(typed(ring(), line)).toBeNull());
  test('any value on the scale is that value', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 500, max: 6000 }),
        fc.option(fc.integer({ min: 1, max: 10 })),
        (hundredths, fastener) => {
          const value = `${hundredths / 100}`;
          const line = fastener === null ? value : `${fastener} ${value}`;
          expect(typed(ring(), line)).toEqual(reading(value, fastener));
        },
      ),
    );
  });
  test('whatever it is, it is understood or not, and never breaks', () => {
    fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (line) => void typed(ring(), line)));
  });
});
