import { describe, expect, test } from 'vitest';
import { passageSureness } from '../../src/gesture/passage-sureness.ts';
import { passageOf, type Profile } from '../../src/gesture/passage.ts';

const COLUMNS = 40;
const RATE = 15;

/** Something of a width and height, with its middle at a part of the view; null while it is not there. */
interface Thing {
  readonly at: (seconds: number) => number | null;
  readonly width: number;
  readonly height: number;
}

/** What is seen of the things, by a watcher that looks at each picture: the surest that it was at any time. */
function seen(...things: readonly Thing[]): { readonly sureness: number; readonly direction: number } {
  let best = { sureness: 0, direction: 0 };
  const profiles: Profile[] = [];
  for (let i = 0; i < 3.5 * RATE; i++) {
    const seconds = i / RATE;
    const parts = Float32Array.from({ length: COLUMNS }, (_, column) => {
      const here = things.flatMap(({ at, width, height }) => {
        const middle = at(seconds);
        return middle !== null && Math.abs((column + 0.5) / COLUMNS - middle) <= width / 2 ? [height] : [];
      });
      return Math.max(0, ...here);
    });
    profiles.push({ time: 1000 * seconds, parts });
    const passage = passageOf(profiles.slice(-25), -Infinity);
    const sureness = passage ? passageSureness(passage) : 0;
    if (passage && sureness > best.sureness) best = { sureness, direction: Math.sign(passage.crossing) };
  }
  return best;
}

const HAND = { width: 0.3, height: 0.7 };
/** From one side to the other and out, in so many seconds for the width. */
const across =
  (seconds: number, from = 1) =>
  (t: number): number =>
    (t - from) / seconds - 0.2;
const mirrored = ({ at, ...thing }: Thing): Thing => ({
  ...thing,
  at: (t) => {
    const middle = at(t);
    return middle === null ? null : 1 - middle;
  },
});

describe('what passes across the view', () => {
  test.each([0.3, 0.45, 0.6])('is a wave in %s s for the width, to the side that it goes to', (seconds) => {
    const hand: Thing = { ...HAND, at: across(seconds) };
    expect(seen(hand)).toEqual({ sureness: expect.closeTo(1, 0) as number, direction: 1 });
    expect(seen(hand).sureness).toBeGreaterThan(0.9);
    expect(seen(mirrored(hand)).direction).toBe(-1);
    expect(seen(mirrored(hand)).sureness).toBeCloseTo(seen(hand).sureness, 1);
  });
  test('is a wave also while somebody stands behind, who was there before', () => {
    expect(seen({ ...HAND, at: across(0.45) }, { at: () => 0.8, width: 0.1, height: 0.1 }).sureness).toBeGreaterThan(
      0.7,
    );
  });
});

describe('no wave is', () => {
  const none: readonly [string, ...Thing[]][] = [
    ['a still view', { ...HAND, at: () => null }],
    ['who walks by', { width: 0.25, height: 0.7, at: across(1.6) }],
    ['what comes across and stays', { ...HAND, at: (t) => Math.min(0.85, across(0.45)(t)) }],
    [
      'what comes far across and goes back',
      { ...HAND, at: (t) => (t < 2 ? Math.min(0.85, across(0.45)(t)) : 0.85 - (t - 2) / 0.45) },
    ],
    ['what comes only halfway', { ...HAND, at: (t) => 0.5 - Math.abs(t - 1.5) / 0.4 }],
    ['what comes two thirds across and goes back at once', { ...HAND, at: (t) => 0.65 - Math.abs(t - 1.5) / 0.4 }],
    [
      'one who stands on the right while a hand comes in from the left',
      { at: () => 0.85, width: 0.15, height: 0.8 },
      { ...HAND, at: (t) => (t < 1 ? null : Math.min(0.1, (t - 1) / 0.3 - 0.2)) },
    ],
    ['light everywhere at once', { at: (t) => (t > 1 && t < 1.3 ? 0.5 : null), width: 1, height: 0.9 }],
  ];
  test.each(none)('%s', (_, ...things) => expect(seen(...things).sureness).toBeLessThan(0.5));
});
