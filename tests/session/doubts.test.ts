/** What a doubt does to a reading: nothing to its value, and it takes an explicit word to confirm it. */
import { describe, expect, test } from 'vitest';
import type { Meaning, ReadingDoubt } from '../../src/session/intent.ts';
import { wantsOwnWord } from '../../src/session/state.ts';
import {
  affirm,
  disregard,
  doubted,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  start,
  tell,
  tighten,
} from './play.ts';

const between = doubted('24.25', 'between marks');
const ring = start(procedureOf([tighten('ring', { confirm: 'by going on' })]));

test('a reading in doubt is captured as it was said, with its doubts', () =>
  expect(happened(tell(ring, between))).toMatchObject([
    { reading: { value: '24.25', unit: 'N·m' }, verdict: 'in', doubts: ['between marks'] },
  ]));
test('it wants its own word, and so does one outside its window', () => {
  expect(tell(ring, between).state.readings.map(wantsOwnWord)).toEqual([true]);
  expect(tell(ring, reading('27')).state.readings.map(wantsOwnWord)).toEqual([true]);
  expect(tell(ring, reading('24')).state.readings.map(wantsOwnWord)).toEqual([false]);
});
test('going on does not confirm it; a word does', () => {
  const play = tell(ring, between);
  for (const meaning of [next, reading('24', 3)])
    expect(refused(tell(play, meaning))).toEqual({ code: 'confirm first', fastener: 1 });
  expect(kinds(tell(play, affirm))).toEqual(['reading confirmed']);
});
test('another value takes its place and its doubts with it', () => {
  const play = tell(ring, between, reading('24'));
  expect(readings(play)).toEqual(['1: 24.25 replaced', '1: 24 captured']);
  expect(kinds(tell(play, next))).toEqual(['reading confirmed']);
});
test('a correction in doubt wants its own word as well', () => {
  const correction: Meaning = { kind: 'correction', reading: { fastener: null, value: '24.25' }, doubts: ['not sure'] };
  expect(refused(tell(ring, reading('24'), correction, next))).toEqual({ code: 'in doubt', fastener: 1 });
});

describe('where its value is asked for', () => {
  const inDoubt = { code: 'in doubt', fastener: 1 };

  test.each<ReadingDoubt>(['off the scale', 'not sure', 'sounds like another'])('no word confirms it: %s', (doubt) => {
    const play = tell(ring, doubted('24', doubt));
    const fresh: Meaning = { kind: 'fresh consumable', consumable: 'oil', batch: '7', expires: '', quantity: '' };
    for (const meaning of [affirm, next, reading('24', 3), fresh])
      expect(refused(tell(play, meaning))).toEqual(inDoubt);
    expect(refused(tell(play, { kind: 'question', question: { about: 'left' } }))).toEqual(inDoubt);
    for (const meaning of [negative, disregard]) expect(readings(tell(play, meaning))).not.toContain('1: 24 captured');
  });
  test.each<ReadingDoubt>(['between marks', 'out by ten', 'digits swapped', 'digit count', 'too soon'])(
    'but not where the question offers affirm: %s',
    (doubt) => expect(kinds(tell(ring, doubted('24', doubt), affirm))).toEqual(['reading confirmed']),
  );
  test('the value that the tool shows answers, and is confirmed as any other', () => {
    const play = tell(ring, doubted('99', 'off the scale'), affirm, reading('24'), affirm);
    expect(readings(play)).toEqual(['1: 99 replaced', '1: 24 confirmed']);
  });
  test.each<ReadingDoubt>(['not sure', 'sounds like another'])(
    'the same value again answers whether it was heard rightly: %s',
    (doubt) =>
      expect(kinds(tell(ring, doubted('24', doubt), doubted('24', doubt), affirm))).toEqual(['reading confirmed']),
  );
  test('what is off the scale stays so, however often it is said', () => {
    const off = doubted('99', 'off the scale');
    const play = tell(ring, off, off, affirm, off);
    expect(refused(tell(play, affirm))).toEqual(inDoubt);
    expect(readings(play)).toEqual(['1: 99 replaced', '1: 99 replaced', '1: 99 captured']);
  });
  test('neither does it with a witness who reads the same', () => {
    const witnessed = tell(
      start(procedureOf([tighten('ring', { confirm: 'witness each' })])),
      doubted('99', 'off the scale'),
      { kind: 'witness', reading: { fastener: null, value: '99' } },
    );
    expect(refused(tell(witnessed, affirm))).toEqual(inDoubt);
  });
});
