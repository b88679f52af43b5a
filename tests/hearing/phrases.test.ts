import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkPhrases } from '../../src/hearing/phrases.ts';

const vocabulary = new Set(['confirm', 'stud', 'one', 'two']);
const words = fc.constantFrom('confirm', 'stud', 'one', 'two', 'flange', 'zyx');
const phrases = fc.array(fc.array(words, { minLength: 1, maxLength: 4 }).map((list) => list.join(' ')));

test('a phrase is sayable just when the model has all its words, and the missing ones are named once', () => {
  fc.assert(
    fc.property(phrases, (list) => {
      const { sayable, missing } = checkPhrases(list, vocabulary);
      const known = (phrase: string) => phrase.split(' ').every((word) => vocabulary.has(word));
      expect(new Set(sayable)).toEqual(new Set(list.filter(known)));
      const lacking = list.flatMap((phrase) => phrase.split(' ')).filter((word) => !vocabulary.has(word));
      expect([...missing].sort()).toEqual([...new Set(lacking)].sort());
    }),
  );
});

test('the order and repetition of phrases make no other list', () => {
  fc.assert(
    fc.property(phrases, (list) => {
      expect(checkPhrases([...list, ...list].reverse(), vocabulary).sayable).toEqual(
        checkPhrases(list, vocabulary).sayable,
      );
    }),
  );
});

test('capitals and spaces are as the model spells: lower case, one space; empty phrases are none', () => {
  expect(checkPhrases([' Stud  ONE ', '', '  '], vocabulary)).toEqual({ sayable: ['stud one'], missing: [] });
});
