import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import {
  afterSaid,
  inSight,
  isStillAhead,
  LONGEST,
  opensAt,
  outOfSight,
  tells,
  toRead,
  unheard,
  warnsNow,
  type Telling,
} from '../../src/language/unheard.ts';
import { prompt } from '../../src/language/prompt.ts';
import type { Meaning } from '../../src/session/intent.ts';
import { meaning } from '../session/anything.ts';
import {
  affirm,
  back,
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
      read: 0,
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
    const told = { ...inSight(warns, 0), isBeingSaid: true };
    expect(unheard(read.state, told, affirm, 0, false)).toBeNull();
  });
});

describe('what is stepped away from and come back to', () => {
  const warns = warnsNow(atCaution().state);
  if (!warns) throw new Error('Nothing warns.');
  const A_LOOK = 1_000;
  const stretches = fc.array(fc.integer({ min: 0, max: 6_000 }), { maxLength: 12 });
  /** In sight for each of these times, and as long out of it between. */
  const after = (times: readonly number[], at: number): Telling =>
    times.reduce(
      (told, time) => inSight(warns, told.shownAt + 2 * time, outOfSight(told, told.shownAt + time)),
      inSight(warns, at),
    );

  test('is read on where it was left: all times in sight count, less a look each', () =>
    fc.assert(
      fc.property(stretches, fc.nat(1e6), (times, at) => {
        const told = after(times, at);
        const read = times.reduce((sum, time) => sum + Math.max(0, time - A_LOOK), 0);
        expect(opensAt(told, true) - told.shownAt).toBe(toRead(warns) - read);
      }),
    ));
  test('is never read by glimpses, however many', () =>
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: A_LOOK })), (times) => {
        const told = after(times, 0);
        expect(opensAt(told, true)).toBe(told.shownAt + toRead(warns));
      }),
    ));
  test('was said to its end for good', () => {
    const said = afterSaid(inSight(warns, 0), announce(state, happened(atCaution())), 3_000);
    expect(opensAt(inSight(warns, 9_000, outOfSight(said, 4_000)), false)).toBe(3_000);
  });
  test('is told anew once somebody went past it, or the work rested', () => {
    const onWarning = warnsNow(atWarning().state);
    if (!onWarning) throw new Error('Nothing warns.');
    expect(isStillAhead(tell(atCaution(), back).state, warns)).toBe(true);
    expect(isStillAhead(tell(atWarning(), back).state, onWarning)).toBe(true);
    expect(isStillAhead(atWarning().state, warns)).toBe(false);
    expect(isStillAhead(tell(atWarning(), affirm).state, onWarning)).toBe(false);
    expect(isStillAhead(tell(atCaution(), standBy).state, warns)).toBe(false);
  });
});

test('it is said by itself, and nothing that comes after it need be heard', () => {
  const hazards = [hazard('caution', 'Hot.'), hazard('notice', 'Mind the drip.'), hazard('caution', 'Heavy.')];
  const { state } = start(procedureOf([step('drain', 'do', { hazards })]));
  const warns = warnsNow(state);
  if (!warns) throw new Error('Nothing warns.');
  const texts = prompt(state);
  expect(texts).toEqual(['Caution. Hot. Notice. Mind the drip. Caution. Heavy.', 'Text of drain.']);
  const [itself = '', text = ''] = texts;
  const shown = inSight(warns, 0);
  expect(afterSaid(shown, [text], 1_000).saidAt).toBeNull();
  expect(afterSaid(shown, ['Caution. Hot.'], 1_000).saidAt).toBeNull();
  const said = afterSaid(shown, [itself], 2_000);
  expect(said.saidAt).toBe(2_000);
  expect(afterSaid(said, texts, 3_000).saidAt).toBe(2_000);
});

test('whatever else is meant is never held back', () =>
  fc.assert(
    fc.property(telling(), meaning, later, fc.boolean(), (told, word: Meaning, after, isAtScreen) => {
      fc.pre(!['next', 'affirm', 'held'].includes(word.kind));
      expect(unheard(state, told, word, told.shownAt + after, isAtScreen)).toBeNull();
    }),
  ));
