// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { DEFAULT_BINDINGS } from '../../src/gesture/bindings.ts';
import { watchSwitches } from '../../src/gesture/keys.ts';

let signals: (string | null)[] = [];
let stop: () => void;
beforeEach(() => {
  signals = [];
  stop = watchSwitches(
    () => DEFAULT_BINDINGS,
    ({ signal }) => void signals.push(signal),
  );
});
afterEach(() => {
  stop();
  document.body.replaceChildren();
});

/** Presses a key where the focus is; false where the page kept the browser from acting on it. */
function press(key: string, options: KeyboardEventInit = {}, target: Element = document.body): boolean {
  return target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...options }));
}
function focused(html: string): Element {
  document.body.innerHTML = html;
  const target = document.querySelector('[data-focus]');
  if (!target) throw new Error('Nothing is marked as focused.');
  return target;
}

describe('keys', () => {
  test.each([
    ['PageDown', 'forward'],
    ['PageUp', 'backward'],
    ['ArrowRight', 'forward'],
    ['ArrowLeft', 'backward'],
  ])('%s asks to go %s, and does not scroll the page', (key, signal) => {
    expect(press(key)).toBe(false);
    expect(signals).toEqual([signal]);
  });
  test.each(['a', 'Enter', ' ', 'Tab', 'ArrowUp', 'ArrowDown', 'Home', 'Escape', 'F5'])('%s is left alone', (key) => {
    expect(press(key)).toBe(true);
    expect(signals).toEqual([]);
  });
  test.each(['altKey', 'ctrlKey', 'metaKey', 'shiftKey'])('a key with %s is left to the browser', (modifier) => {
    expect(press('ArrowLeft', { [modifier]: true })).toBe(true);
    expect(signals).toEqual([]);
  });
  test('that are held down count once, and still do not scroll', () => {
    press('PageDown');
    expect(press('PageDown', { repeat: true })).toBe(false);
    expect(signals).toEqual(['forward']);
  });
  test('count wherever the focus is', () => {
    press('PageDown', {}, focused('<main><button data-focus>Next</button></main>'));
    press('PageDown', {}, focused('<p data-focus contenteditable="false">Text</p>'));
    expect(signals).toEqual(['forward', 'forward']);
  });
  test.each([
    '<input data-focus>',
    '<textarea data-focus></textarea>',
    '<select data-focus></select>',
    '<p contenteditable><b data-focus>Text</b></p>',
    '<p contenteditable="true" data-focus>Text</p>',
  ])('belong to what is being typed in: %s', (html) => {
    expect(press('ArrowLeft', {}, focused(html))).toBe(true);
    expect(signals).toEqual([]);
  });
  test('come before what listens on the page itself', () => {
    const target = focused('<div data-focus></div>');
    target.addEventListener('keydown', (event) => event.stopPropagation());
    press('PageDown', {}, target);
    expect(signals).toEqual(['forward']);
  });
  test('are not listened for any more when that is stopped', () => {
    stop();
    expect(press('PageDown')).toBe(true);
    expect(signals).toEqual([]);
  });
});
