// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Touched } from '../../src/gesture/touch.ts';
import { watchTouch } from '../../src/gesture/touch-pad.ts';
import { TOUCH_THRESHOLDS } from '../../src/gesture/touch-thresholds.ts';

let pad: HTMLElement;
let touched: Touched[];
let stop: () => void;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['performance', 'setTimeout', 'clearTimeout'] });
  touched = [];
  // This page has no pointers to hold: the test is the browser.
  pad = Object.assign(document.createElement('div'), { setPointerCapture: () => undefined });
  stop = watchTouch(pad, TOUCH_THRESHOLDS, 4, (each) => void touched.push(each));
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

function pointer(type: string, pointerId = 1): void {
  pad.dispatchEvent(
    Object.assign(new Event(type, { cancelable: true }), {
      pointerId,
      buttons: 1,
      clientX: 40,
      clientY: 40,
      width: 40,
      height: 40,
    }),
  );
}
const kinds = (): readonly string[] => touched.map((each) => (each.kind === 'rejected' ? each.why : each.kind));

test('a contact that goes down and up is a tap, and once: the browser lets go of it after that', () => {
  pointer('pointerdown');
  vi.advanceTimersByTime(100);
  pointer('pointerup');
  pointer('lostpointercapture');
  vi.advanceTimersByTime(2000);
  expect(kinds()).toEqual(['tap']);
});

test('one whose coming up was not told is none, and the next one is not held back by it', () => {
  pointer('pointerdown', 1);
  vi.advanceTimersByTime(100);
  pointer('lostpointercapture', 1);
  vi.advanceTimersByTime(2000);
  expect(kinds()).toEqual(['taken by the system']);
  pointer('pointerdown', 2);
  vi.advanceTimersByTime(100);
  pointer('pointerup', 2);
  vi.advanceTimersByTime(2000);
  expect(kinds()).toEqual(['taken by the system', 'tap']);
});
