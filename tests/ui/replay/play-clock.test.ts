import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layAxis } from '../../../src/ui/replay/axis.ts';
import { atSpeed, entryDue, isPlayedOut, playedTo, playFrom, SPEEDS } from '../../../src/ui/replay/play-clock.ts';

const axis = layAxis(
  ['07:00:00', '07:00:04', '07:00:20', '07:10:20'].map((time) => `2026-03-12T${time}Z`),
  { longest: 30_000, shown: 3000 },
);
const NOW = 5000;

describe('playing back', () => {
  test('in real time shows each entry when it is due', () => {
    const playing = playFrom(axis, 0, 1, NOW);
    expect([0, 3999, 4000, 19_999, 20_000].map((ms) => entryDue(axis, playing, NOW + ms))).toEqual([0, 0, 1, 1, 2]);
  });
  test('at four times the speed shows it after a quarter of the time', () => {
    const playing = playFrom(axis, 0, 4, NOW);
    expect([999, 1000, 4999, 5000].map((ms) => entryDue(axis, playing, NOW + ms))).toEqual([0, 1, 1, 2]);
  });
  test('shortens what is long', () => {
    const playing = playFrom(axis, 2, 1, NOW);
    expect(isPlayedOut(axis, playing, NOW + 2999)).toBe(false);
    expect(entryDue(axis, playing, NOW + 3000)).toBe(3);
    expect(isPlayedOut(axis, playing, NOW + 3000)).toBe(true);
  });
  test('begins at the entry that is shown; at the last one, from the first', () => {
    expect(entryDue(axis, playFrom(axis, 2, 16, NOW), NOW)).toBe(2);
    expect(entryDue(axis, playFrom(axis, 3, 16, NOW), NOW)).toBe(0);
  });
  test('goes on from the same place at another speed', () => {
    const playing = atSpeed(playFrom(axis, 0, 1, NOW), 4, NOW + 4000);
    expect(playedTo(playing, NOW + 4000)).toBe(4000);
    expect(playedTo(playing, NOW + 5000)).toBe(8000);
  });
  test('never goes back, however late it is looked', () =>
    fc.assert(
      fc.property(fc.constantFrom(...SPEEDS), fc.array(fc.nat(60_000)), (speed, looks) => {
        const playing = playFrom(axis, 0, speed, NOW);
        const shown = looks.sort((a, b) => a - b).map((ms) => entryDue(axis, playing, NOW + ms));
        expect(shown).toEqual([...shown].sort((a, b) => a - b));
      }),
    ));
});
