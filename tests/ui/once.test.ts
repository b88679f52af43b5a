import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isAgainst, isSameAct, type Act } from '../../src/ui/once.ts';

const act = fc.record<Act>({
  meaning: fc.constantFrom('affirm', 'negative', 'next', 'back', 'stand by'),
  by: fc.constantFrom('word', 'gesture'),
  from: fc.integer({ min: 0, max: 5000 }),
  to: fc.integer({ min: 0, max: 5000 }),
});
const word = (from: number, to = from + 400): Act => ({ meaning: 'affirm', by: 'word', from, to });
const nod = (from: number, to = from + 900): Act => ({ meaning: 'affirm', by: 'gesture', from, to });

describe('a word and a gesture of one answer', () => {
  test.each([
    ['at the same time', word(1000), nod(1100)],
    ['the gesture around the word', nod(800), word(1000)],
    ['the nod right after the word', word(1000), nod(2000)],
    ['the word right after the nod', nod(1000), word(2500)],
  ])('count once: %s', (_, taken, next) => expect(isSameAct(taken, next)).toBe(true));
  test('are two answers when they are apart', () => {
    expect(isSameAct(word(1000), nod(2500))).toBe(false);
    expect(isSameAct(nod(1000), word(3000))).toBe(false);
  });
  test('only ever are one where they mean the same, and one is a word and the other a gesture', () => {
    fc.assert(
      fc.property(act, act, (taken, next) => {
        if (taken.meaning !== next.meaning || taken.by === next.by) expect(isSameAct(taken, next)).toBe(false);
      }),
    );
  });
  test('are one whichever was taken first', () => {
    fc.assert(
      fc.property(act, act, (one, other) => {
        expect(isSameAct(one, other)).toBe(isSameAct(other, one));
      }),
    );
  });
});

describe('a “negative” against a nod of the same moment', () => {
  const no = (from: number): Act => ({ ...word(from), meaning: 'negative' });
  test('is against it at the same time and right after, and not later', () => {
    expect(isAgainst(nod(1000), no(1100))).toBe(true);
    expect(isAgainst(nod(1000), no(2500))).toBe(true);
    expect(isAgainst(nod(1000), no(3000))).toBe(false);
  });
  test('so is a shake of the head against an “affirm” of the same moment', () => {
    const shake = (from: number): Act => ({ ...nod(from), meaning: 'negative' });
    expect(isAgainst(word(1000), shake(900))).toBe(true);
    expect(isAgainst(word(1000), shake(2300))).toBe(true);
    expect(isAgainst(word(1000), shake(2500))).toBe(false);
  });
  test('nothing else is: only a no to an affirm, and never a word against a word or a gesture against a gesture', () => {
    fc.assert(
      fc.property(act, act, (taken, next) => {
        const isSo = taken.meaning === 'affirm' && next.meaning === 'negative' && taken.by !== next.by;
        if (!isSo) expect(isAgainst(taken, next)).toBe(false);
      }),
    );
  });
});
