import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubtsAbout, FASTEST, inHaste, type DoubtContext } from '../../src/language/doubt.ts';
import { readNumber, sayNumber } from '../../src/language/numbers/index.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { torque } from '../../src/units/index.ts';

const nm = (value: number) => torque(value, 'N·m');
const room = { scale: { min: nm(5), max: nm(60) }, unit: 'N·m' } as const;
const window = { min: nm(23), max: nm(26) };
const sure: DoubtContext = { room, resolution: nm(0.5), confidence: 1 };
const doubts = (value: string, context: Partial<DoubtContext> = {}): readonly string[] =>
  doubtsAbout(value, { ...sure, ...context }).map(({ doubt }) =>
    doubt.kind === 'sounds like another' ? `${doubt.kind}: ${doubt.because}` : doubt.kind,
  );

describe('a reading is doubted', () => {
  test('not at all where it was heard surely, on a mark of the scale', () => {
    expect(doubts('24.5')).toEqual([]);
    expect(doubts('24.50')).toEqual([]);
    expect(doubts('24.5', { window })).toEqual([]);
    expect(doubts('24.5', { words: ['two', 'four', 'point', 'five'] })).toEqual([]);
  });
  test('off the scale', () => {
    expect(doubts('2')).toEqual(['off the scale']);
    expect(doubts('245', { window })).toEqual(['off the scale']);
    expect(doubts('5')).toEqual([]);
    expect(doubts('60')).toEqual([]);
  });
  test('between the marks of the tool', () => {
    expect(doubts('24.25')).toEqual(['between marks']);
    expect(doubts('24.25', { resolution: nm(0.25) })).toEqual([]);
    const { resolution: _, ...without } = sure;
    expect(doubtsAbout('24.25', without)).toEqual([]);
  });
  test('on every mark of a fine scale not at all: no dust of binary fractions', () => {
    for (let tenths = 50; tenths <= 600; tenths++)
      expect(doubts(`${tenths / 10}`, { resolution: nm(0.1) })).toEqual([]);
  });
  test('where fifteen was said and fifty could be meant, as in 15 and 50, but not digit by digit', () => {
    expect(doubts('15', { words: ['fifteen'] })).toEqual(['sounds like another: teen-ty']);
    expect(doubts('50', { words: ['fifty'] })).toEqual(['sounds like another: teen-ty']);
    expect(doubts('15', { words: ['one', 'five'] })).toEqual([]);
    expect(doubts('6', { words: ['six'] })).toEqual(['sounds like another: unit-ty']);
    expect(doubts('19', { words: ['nineteen'] })).toEqual([]); // 90 is off this scale
  });
  test('where it was said sooner than a wrench can be moved, whatever else is doubted, and never in its value', () => {
    const reading = { fastener: null, value: '24.5' };
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000 }), fc.boolean(), (since, isDoubted) => {
        const said: Meaning = { kind: 'reading', reading, ...(isDoubted ? { doubts: ['between marks'] } : {}) };
        const doubts = [...(isDoubted ? ['between marks'] : []), ...(since < FASTEST ? ['too soon'] : [])];
        expect(inHaste(said, since)).toEqual({ kind: 'reading', reading, ...(doubts.length > 0 ? { doubts } : {}) });
      }),
    );
    for (const kind of ['correction', 'witness'] as const)
      expect(inHaste({ kind, reading }, 0)).toEqual({ kind, reading });
  });
  test('where digits sound alike and were not quite sure', () => {
    const words = ['two', 'five'];
    expect(doubts('25', { words })).toEqual([]);
    expect(doubts('25', { words, confidence: 0.9 })).toEqual(['sounds like another: near-words']); // two nine
    expect(doubts('25', { confidence: 0.9 })).toHaveLength(1);
    expect(doubts('55', { words: ['five', 'five'], confidence: 0.9 })).toEqual(['sounds like another: doubled-digit']);
  });
  test('where it was not heard surely', () => {
    expect(doubts('24.5', { words: ['two', 'four', 'point', 'five'], confidence: 0.69 })).toContain('not sure');
    expect(doubts('24.5', { words: ['two', 'four', 'point', 'five'], confidence: 0.7 })).not.toContain('not sure');
  });
  test('beside the window, where a slip would put it inside', () => {
    // ISMP: 8 units became 80 through dictation, hence the check of ten times and a tenth.
    const low = { window: { min: nm(5.5), max: nm(6.5) } };
    expect(doubts('60', low)).toEqual(['out by ten']);
    expect(doubts('5.5', { window: { min: nm(54), max: nm(56) } })).toEqual(['out by ten']);
    expect(doubts('42.5', { window })).toEqual(['digits swapped']);
    expect(doubts('52', { window })).toEqual(['digits swapped']);
    expect(doubts('9', { window })).toEqual(['digit count']);
    expect(doubts('30', { window })).toEqual([]);
  });
  test('against a window in another unit', () =>
    // 217 lbf·in is 24.5 N·m.
    expect(doubts('42.5', { window: { min: torque(204, 'lbf·in'), max: torque(230, 'lbf·in') } })).toEqual([
      'digits swapped',
    ]));
});

const anyValue = fc.integer({ min: 0, max: 99_999 }).map((hundredths) => `${hundredths / 100}`);
const anyContext = fc.record({
  room: fc.constant(room),
  resolution: fc.constantFrom(nm(0.1), nm(0.5), nm(1)),
  confidence: fc.double({ min: 0, max: 1, noNaN: true }),
  window: fc
    .tuple(fc.integer({ min: 5, max: 60 }), fc.nat(5))
    .map(([min, width]) => ({ min: nm(min), max: nm(min + width) })),
});

describe('the question of a doubt', () => {
  test('holds the value that was said and no other number, whatever the window', () => {
    fc.assert(
      fc.property(anyValue, anyContext, fc.constantFrom('digits', 'natural'), (value, context, style) => {
        for (const { question } of doubtsAbout(value, { ...context, words: sayNumber(value, style) })) {
          const [said = '', ...rest] = question.split('. ');
          expect(readNumber(said.split(' ')).map(({ digits }) => digits)).toEqual([value]);
          const words = rest
            .join(' ')
            .toLowerCase()
            .split(/[^a-z]+/)
            .filter(Boolean);
          expect(words.filter((word) => word !== 'a' && readNumber([word]).length > 0)).toEqual([]);
        }
      }),
    );
  });
  test('is a sentence, then a question or what to do', () => {
    fc.assert(
      fc.property(anyValue, anyContext, (value, context) => {
        for (const { question } of doubtsAbout(value, context)) expect(question).toMatch(/^\p{Lu}.*\. \p{Lu}.*[.?]$/u);
      }),
    );
  });
  test('does not depend on where in the window a value would fit: only on whether it does', () => {
    const questions = (value: string, min: number, max: number): readonly string[] =>
      doubtsAbout(value, { ...sure, window: { min: nm(min), max: nm(max) } }).map(({ question }) => question);
    expect(questions('42.5', 23, 26)).toEqual(questions('42.5', 24, 24.5));
  });
});
