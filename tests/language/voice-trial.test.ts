import { describe, expect, test } from 'vitest';
import { readNumber } from '../../src/language/numbers/index.ts';
import { judgeIn } from '../../src/language/completeness.ts';
import { stateIn } from '../../src/language/named-situations.ts';
import { NUMBER_PHRASES, recogniserPhrases } from '../../src/language/phrases.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand, type Understanding } from '../../src/language/understand.ts';
import { isHeardAs, pronunciationsShown, trialJudge, trialPhrases, TRIALS } from '../../src/language/voice-trial.ts';
import { vocabularyOfModel } from './vocabulary-of-model.ts';

describe('the phrases of a trial', () => {
  test('hold every digit once and the point', () => {
    const words = TRIALS.flatMap((phrase) => phrase.split(' '));
    const digits = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
    for (const digit of digits) expect(words.filter((word) => word === digit).length).toBeGreaterThanOrEqual(1);
    expect(words).toContain('point');
  });
  test('are each one number, or a word', () => {
    expect(TRIALS.map((phrase) => readNumber(phrase.split(' ')).map(({ digits }) => digits))).toEqual([
      ['125'],
      ['407'],
      ['386'],
      ['9.5'],
      [],
    ]);
  });
  test('are not what the recogniser is offered: that is all numbers, so that a wrong one can be heard', () => {
    expect(trialPhrases()).toEqual(expect.arrayContaining([...NUMBER_PHRASES]));
    expect(trialPhrases()).not.toContain('one two five');
  });
  test('are all in words of the model', () => {
    const vocabulary = vocabularyOfModel();
    const words = trialPhrases().flatMap((phrase) => phrase.split(' '));
    expect(words.filter((word) => !vocabulary.has(word))).toEqual([]);
  });
});

test.each([
  ['one two five', 'one two five', true],
  ['one two five', 'one hundred and twenty five', true],
  ['one two five', 'one two nine', false],
  ['one two five', 'one two', false],
  ['nine point five', 'niner point five', true],
  ['nine point five', 'nine five', false],
  ['three eight six', 'tree ait six', true],
  ['four zero seven', 'fower zero seven', true],
  ['nine point five', 'nine point fife', true],
  ['one two five', 'one two tree', false],
  ['affirm', 'affirm', true],
  ['affirm', 'firm', false],
  ['affirm', '', false],
])('asked for "%s", "%s" is right: %s', (asked, heard, expected) => {
  expect(isHeardAs(asked, heard.split(' ').filter(Boolean))).toBe(expected);
});

describe('how somebody pronounces figures', () => {
  const trial = (heard: string, isRight: boolean) => ({ heard, isRight });
  test('is known from what was heard rightly', () =>
    expect(
      pronunciationsShown([trial('tree ait six', true), trial('one two five', true), trial('nine point fife', false)]),
    ).toEqual(['tree', 'ait']));
  test('is offered to that person from then on, beside the usual words', () => {
    const situation = situationOf(stateIn('reading'));
    const [usual, offered] = [recogniserPhrases(situation), recogniserPhrases(situation, ['tree'])];
    expect(usual.filter((phrase) => phrase.includes('tree'))).toEqual([]);
    expect(offered).toEqual(expect.arrayContaining([...usual, 'tree', 'tree five', 'two tree']));
  });
  test('means what the usual word means, and is heard twice as it is', () => {
    const situation = situationOf(stateIn('reading'));
    const judge = judgeIn(situation);
    for (const [said, usual] of [
      ['two tree point fife', 'two three point five'],
      ['tree', 'three'],
      ['stud fower two tree', 'stud four two three'],
    ] as const) {
      const [one, other] = [said, usual].map((text) => {
        const words = text.split(' ');
        return {
          completeness: judge.completeness(words),
          twice: judge.isHeardTwice(words),
          meant: understand(heardSurely(words), situation),
        };
      });
      expect({ ...one, meant: null }).toEqual({ ...other, meant: null });
      expect(valueIn(one?.meant)).toEqual(valueIn(other?.meant));
    }
  });
});

const heardSurely = (words: readonly string[]) => words.map((word) => ({ word, confidence: 1 }));
const valueIn = (understood: Understanding | undefined): unknown =>
  understood?.kind === 'meant' && understood.meaning.kind === 'reading'
    ? {
        fastener: understood.meaning.reading.fastener,
        value: understood.meaning.reading.value,
        doubts: understood.meaning.doubts?.length,
      }
    : understood?.kind;

describe('the end of a trial', () => {
  test.each([
    ['', 'unfinished'],
    ['one two', 'complete, may go on'],
    ['nine point', 'complete, may go on'],
    ['affirm', 'complete and closed'],
    ['affirm one', 'nothing'],
    ['the house', 'nothing'],
  ])('“%s” is %s: a pause within a number is waited for', (text, completeness) =>
    expect(trialJudge.completeness(text.split(' ').filter(Boolean))).toBe(completeness),
  );
});
