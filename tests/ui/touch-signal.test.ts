/** What a touch on the two halves asks for. */
import { expect, test } from 'vitest';
import type { Touched } from '../../src/gesture/touch.ts';
import { LEAST_SURE, signalOfTouch } from '../../src/ui/touch-signal.ts';
import { touchedWords } from '../../src/ui/touch-words.ts';

const WIDTH = 200;
const touched = (kind: 'tap' | 'long press' | 'swipe left' | 'swipe right', x: number, sureness = 1): Touched => ({
  kind,
  x,
  y: 50,
  from: 0,
  to: 100,
  sureness,
});

test.each([
  ['a tap on the left goes back', touched('tap', 20), 'backward'],
  ['a tap on the right goes on', touched('tap', 180), 'forward'],
  ['a long press on the left has it said again', touched('long press', 20), 'say again'],
  ['a long press on the right stands by', touched('long press', 180), 'stand by'],
  ['a swipe goes where it points, wherever it begins', touched('swipe right', 20), 'forward'],
  ['a swipe back', touched('swipe left', 180), 'backward'],
  ['the middle is neither half', touched('tap', WIDTH / 2 + 1), null],
  ['what is not sure is not taken', touched('tap', 20, LEAST_SURE - 0.01), null],
] as const)('%s', (_, touch, signal) => expect(signalOfTouch(touch, WIDTH)).toBe(signal));

test('what was rejected asks for nothing, and says why', () => {
  const palm: Touched = { kind: 'rejected', why: 'palm', x: 20, y: 50, from: 0, to: 100 };
  expect(signalOfTouch(palm, WIDTH)).toBeNull();
  expect(touchedWords(palm)).toMatch(/palm.*Not taken/);
  expect(touchedWords(touched('tap', 20, 0.05))).toMatch(/5 % sure: not taken/);
});
