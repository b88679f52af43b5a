import { describe, expect, test } from 'vitest';
import { readNumber } from '../../src/language/numbers/index.ts';
import { NUMBER_PHRASES } from '../../src/language/phrases.ts';
import { isHeardAs, trialJudge, trialPhrases, TRIALS } from '../../src/language/voice-trial.ts';
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
  ['affirm', 'affirm', true],
  ['affirm', 'firm', false],
  ['affirm', '', false],
])('asked for "%s", "%s" is right: %s', (asked, heard, expected) => {
  expect(isHeardAs(asked, heard.split(' ').filter(Boolean))).toBe(expected);
});

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
