/** What a doubt does to a reading: nothing to its value, and it takes an explicit word to confirm it. */
import { expect, test } from 'vitest';
import type { Meaning } from '../../src/session/intent.ts';
import { wantsOwnWord } from '../../src/session/state.ts';
import {
  affirm,
  happened,
  kinds,
  next,
  procedureOf,
  reading,
  readings,
  refused,
  start,
  tell,
  tighten,
} from './play.ts';

const doubted = (value: string): Meaning => ({
  kind: 'reading',
  reading: { fastener: null, value },
  doubts: ['between marks'],
});
const ring = start(procedureOf([tighten('ring', { confirm: 'by going on' })]));

test('a reading in doubt is captured as it was said, with its doubts', () =>
  expect(happened(tell(ring, doubted('24.25')))).toMatchObject([
    { reading: { value: '24.25', unit: 'N·m' }, verdict: 'in', doubts: ['between marks'] },
  ]));
test('it wants its own word, and so does one outside its window', () => {
  expect(tell(ring, doubted('24.25')).state.readings.map(wantsOwnWord)).toEqual([true]);
  expect(tell(ring, reading('27')).state.readings.map(wantsOwnWord)).toEqual([true]);
  expect(tell(ring, reading('24')).state.readings.map(wantsOwnWord)).toEqual([false]);
});
test('going on does not confirm it; a word does', () => {
  const play = tell(ring, doubted('24.25'));
  for (const meaning of [next, reading('24', 3)])
    expect(refused(tell(play, meaning))).toEqual({ code: 'confirm first', fastener: 1 });
  expect(kinds(tell(play, affirm))).toEqual(['reading confirmed']);
});
test('another value takes its place and its doubts with it', () => {
  const play = tell(ring, doubted('24.25'), reading('24'));
  expect(readings(play)).toEqual(['1: 24.25 replaced', '1: 24 captured']);
  expect(kinds(tell(play, next))).toEqual(['reading confirmed']);
});
test('a correction in doubt wants its own word as well', () => {
  const correction: Meaning = { kind: 'correction', reading: { fastener: null, value: '24.25' }, doubts: ['not sure'] };
  expect(refused(tell(ring, reading('24'), correction, next))).toEqual({ code: 'confirm first', fastener: 1 });
});
