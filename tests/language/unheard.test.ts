import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { LONGEST, opensAt, tells, toRead, unheard, warnsNow, type Telling } from '../../src/language/unheard.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { meaning } from '../session/anything.ts';
import {
  affirm,
  continue_,
  happened,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
} from '../session/play.ts';

const standBy: Meaning = { kind: 'stand by' };
const hazard = (signal: string, text: string) => ({ signal, consequence: 'person', text });
const job = procedureOf([
  step('clean', 'do'),
  step('drain', 'do', { hazards: [hazard('caution', 'The oil is hot.'), hazard('notice', 'Keep the oil.')] }),
  tighten('ring', { hazards: [hazard('warning', 'It is heavy.'), hazard('caution', 'Keep fingers out.')] }),
]);
const atCaution = () => tell(start(job), next);
const atWarning = () => tell(atCaution(), next);

describe('what warns', () => {
  test('is the open warning, or the cautions of the step; a notice is none', () => {
    expect(warnsNow(start(job).state)).toBeNull();
    expect(warnsNow(atCaution().state)).toMatchObject({ signal: 'caution', sentences: ['Caution. The oil is hot.'] });
    expect(warnsNow(atWarning().state)).toMatchObject({ signal: 'warning' });
    expect(warnsNow(tell(atWarning(), affirm).state)).toMatchObject({ sentences: ['Caution. Keep fingers out.'] });
  });
  test('is all in what is said as it comes up', () => {
    for (const play of [atCaution(), atWarning(), tell(atWarning(), affirm), tell(atCaution(), standBy, continue_)]) {
      const warns = warnsNow(play.state);
      expect(warns && tells(warns, announce(play.state, happened(play)))).toBe(true);
    }
  });
  test('is told anew after the work has rested', () => expect(warnsNow(tell(atCaution(), standBy).state)).toBeNull());
});

/** A caution that came up at some moment, and how it was told. */
const telling = (): fc.Arbitrary<Telling> => {
  const warns = warnsNow(atCaution().state);
  if (!warns) throw new Error('Nothing warns.');
  return fc
    .record({ shownAt: fc.nat(1e9), isBeingSaid: fc.boolean(), after: fc.option(fc.nat(2 * LONGEST)) })
    .map(({ shownAt, isBeingSaid, after }) => ({
      warns,
      shownAt,
      isBeingSaid,
      saidAt: after === null ? null : shownAt + after,
    }));
};
const { state } = atCaution();
const habit = fc.constantFrom<Meaning>(next, affirm, { kind: 'held' });
const later = fc.nat(2 * LONGEST);

describe('a word of habit', () => {
  test('goes past it once it was said to its end, and never later than after the longest time', () =>
    fc.assert(
      fc.property(telling(), habit, later, fc.boolean(), (told, word, after, isAtScreen) => {
        const at = told.shownAt + after;
        const isOpen = unheard(state, told, word, at, isAtScreen) === null;
        if ((told.saidAt !== null && at >= told.saidAt) || after >= LONGEST) expect(isOpen).toBe(true);
      }),
    ));
  test('does not while it is being said, but for one with their eyes on it who had time to read it', () =>
    fc.assert(
      fc.property(telling(), habit, later, fc.boolean(), (told, word, after, isAtScreen) => {
        const saying = { ...told, isBeingSaid: true, saidAt: null };
        const first = unheard(state, saying, word, told.shownAt + after, isAtScreen);
        expect(first === null).toBe(after >= (isAtScreen ? toRead(told.warns) : LONGEST));
        if (first) expect(first).toEqual({ signal: 'caution', how: 'being said' });
      }),
    ));
  test('that nothing was said of goes past it when it can have been read, and not sooner', () =>
    fc.assert(
      fc.property(telling(), habit, later, fc.boolean(), (told, word, after, isAtScreen) => {
        const silent = { ...told, isBeingSaid: false, saidAt: null };
        const first = unheard(state, silent, word, told.shownAt + after, isAtScreen);
        expect(first === null).toBe(after >= toRead(told.warns));
        if (first) expect(first.how).toBe('to be read');
      }),
    ));
  test('once it may go on, may go on ever after', () =>
    fc.assert(
      fc.property(telling(), fc.boolean(), (told, isAtScreen) => {
        const opens = opensAt(told, isAtScreen);
        expect(opens).toBeLessThanOrEqual(told.shownAt + LONGEST);
        expect(opensAt({ ...told, isBeingSaid: false }, isAtScreen)).toBeLessThanOrEqual(opens);
      }),
    ));
  test('is free where nothing warns', () => expect(unheard(start(job).state, null, next, 0, false)).toBeNull());
  test('is free to answer a read-back', () => {
    const read = tell(atWarning(), affirm, reading('24.5', 1));
    const warns = warnsNow(read.state);
    if (!warns) throw new Error('Nothing warns.');
    const told = { warns, shownAt: 0, isBeingSaid: true, saidAt: null };
    expect(unheard(read.state, told, affirm, 0, false)).toBeNull();
  });
});

test('whatever else is meant is never held back', () =>
  fc.assert(
    fc.property(telling(), meaning, later, fc.boolean(), (told, word: Meaning, after, isAtScreen) => {
      fc.pre(!['next', 'affirm', 'held'].includes(word.kind));
      expect(unheard(state, told, word, told.shownAt + after, isAtScreen)).toBeNull();
    }),
  ));
