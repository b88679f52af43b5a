import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreementOf } from '../../src/language/agreement.ts';
import { situationOf } from '../../src/language/situation.ts';
import { stateIn } from '../../src/language/named-situations.ts';
import { understand } from '../../src/language/understand.ts';

const agreement = (listed: string, free: string): string => agreementOf(listed.split(' '), free);

describe('a number heard twice, with and without the list of phrases', () => {
  test.each([
    ['two four point five', 'two four point five'],
    ['two four point five', 'to for point five'],
    ['two four decimal five', 'two four point five'],
    ['stud four two four', 'stood four two four'],
    ['five zero', 'five oh'],
  ])('is the same: "%s", "%s"', (listed, free) => expect(agreement(listed, free)).toBe('same'));
  test.each([
    ['four eight', 'four four eight'],
    ['eight eight eight', 'tight eight eight'],
    ['one two', 'one two five'],
    ['five one', 'nine one'],
    ['five', ''],
  ])('is alike, with a word lost or changed: "%s", "%s"', (listed, free) =>
    expect(agreement(listed, free)).toBe('alike'),
  );
  test.each([
    ['one zero', 'when he rode'],
    ['three five', 'three people arrived on the fifth'],
    ['two five', 'i have two and she has five of them'],
  ])('was other talk: "%s", "%s"', (listed, free) => expect(agreement(listed, free)).toBe('other talk'));
  test('is the same as itself, whatever it is', () => {
    const figures = fc.array(fc.constantFrom('zero', 'one', 'two', 'nine', 'point', 'twenty'), { minLength: 1 });
    fc.assert(fc.property(figures, (words) => agreementOf(words, words.join(' ')) === 'same'));
  });
  test('without any of its figures was never the same', () => {
    const figures = fc.array(fc.constantFrom('one', 'two', 'nine'), { minLength: 1 });
    const others = fc.array(fc.constantFrom('the', 'house', 'three', 'six'), { minLength: 1 });
    fc.assert(fc.property(figures, others, (words, free) => agreementOf(words, free.join(' ')) === 'other talk'));
  });
});

describe('a reading that was heard twice', () => {
  const at = situationOf(stateIn('reading'));
  const understood = (text: string, again: string) =>
    understand(
      text.split(' ').map((word) => ({ word, confidence: 1 })),
      at,
      { again },
    );
  const once = (text: string) =>
    understand(
      text.split(' ').map((word) => ({ word, confidence: 1 })),
      at,
    );
  test('is taken where both agree, and never taken for the other one', () =>
    expect(understood('two four point five', 'two four point five')).toEqual(once('two four point five')));
  test('is asked about where a digit may have been lost', () =>
    expect(understood('four eight', 'four four eight')).toMatchObject({
      kind: 'meant',
      meaning: { kind: 'unclear', doubt: 'not sure', readings: [{ fastener: null, value: '48' }] },
    }));
  test('is passed over where it was other talk', () =>
    expect(understood('one zero', 'when he rode')).toEqual({ kind: 'nothing' }));
  test('a command is heard once: what it is without the list has no part in it', () =>
    expect(understood('remaining', 'the meaning')).toEqual(once('remaining')));
});
