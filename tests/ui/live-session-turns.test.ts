/** Inputs wait for one another, and none is carried out on what was not yet on screen when it was made. */
import { createRoot } from 'solid-js';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Meaning, Source } from '../../src/session/intent.ts';
import { createLiveSession, type LiveSession } from '../../src/ui/live-session.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { affirm, next } from '../session/play.ts';
import { GoodBook, HeldBook, idle, kinds, open, pass, settle, spoken, stopClock, typed } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

describe('inputs', () => {
  test('wait for one another: the second is decided on what the first led to', async () => {
    const book = new HeldBook();
    const { live } = await open(book);
    const both = [live.hear(typed('next'), 'key'), live.hear(typed('affirm'), 'key')];
    const first = await book.next();
    await idle();
    expect(book.asked).toHaveLength(1);
    expect(kinds(first.entries)).toEqual(['step done']);
    first.settle();
    const second = await book.next();
    expect(kinds(second.entries)).toEqual(['warning acknowledged']);
    expect(second.entries[0]?.prev).toBe(first.entries[0]?.hash);
    second.settle();
    await Promise.all(both);
    expect(kinds(live.entries())).toEqual(['opened', 'step done', 'warning acknowledged']);
  });
  test.each<[string, readonly Meaning[], string]>([
    ['a double tap', [next, next], 'next'],
    ['two different taps', [next, affirm], 'affirm'],
  ])('that were made before the change are not carried out on what came of it: %s', async (_, taps, text) => {
    const book = new HeldBook();
    const { live } = await open(book);
    const all = taps.map((meaning) => live.act(meaning, 'touch'));
    const write = await book.next();
    write.settle();
    await Promise.all(all);
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
    expect(book.asked).toHaveLength(1);
    expect(live.heard()).toEqual({ text, taken: 'too early' });
  });
  test('that were made long after the first, but before it was on disk, are too early as well', async () => {
    const book = new HeldBook();
    const { live } = await open(book);
    const first = live.act(next, 'touch');
    const write = await book.next();
    pass(10_000);
    const second = live.act(affirm, 'key');
    write.settle();
    await Promise.all([first, second]);
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
  });
  test('count that waited for one that changed nothing', async () => {
    const { live } = await open(new GoodBook());
    await Promise.all([live.hear(typed('hand me the cloth'), 'key'), live.act(next, 'touch')]);
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
  });
  test('that came before it was said to its end are shown as such and do nothing', async () => {
    const book = new GoodBook();
    const { live, trace } = await open(book);
    live.tooEarly(affirm);
    await idle();
    expect(live.heard()).toEqual({ text: 'affirm', taken: 'not said yet' });
    expect([book.appends, trace]).toEqual([[], []]);
    await live.act(next, 'key');
    expect(live.heard(), 'a later press is taken').toEqual({ text: 'next', taken: 'taken' });
  });
});

describe('right after a change', () => {
  /** A session at its warning, which came up this moment. */
  async function atWarning(): Promise<LiveSession> {
    const { live } = await open(new GoodBook());
    await live.act(next, 'touch');
    return live;
  }
  const acknowledged = ({ entries }: LiveSession): boolean => entries().at(-1)?.body.kind === 'warning acknowledged';

  test.each<Source>(['touch', 'key'])(
    'a %s is dropped until the change can have been seen, and then counts',
    async (by) => {
      const live = await atWarning();
      await live.act(affirm, by);
      expect(live.heard()?.taken).toBe('too early');
      pass(SETTLE - 1);
      await live.act(affirm, by);
      expect(acknowledged(live)).toBe(false);
      pass(1);
      await live.act(affirm, by);
      expect(acknowledged(live)).toBe(true);
    },
  );
  test('the time runs from when it was shown, not from when it was asked for', async () => {
    const book = new HeldBook();
    const { live } = await open(book);
    const done = live.act(next, 'touch');
    const write = await book.next();
    settle();
    write.settle();
    await done;
    await live.act(affirm, 'touch');
    expect(book.asked).toHaveLength(1);
    expect(live.heard()).toEqual({ text: 'affirm', taken: 'too early' });
  });
  test('the opening of the page is one: what was tapped on the screen before does not count', async () => {
    const { kept } = await open(new GoodBook());
    const book = new GoodBook();
    const live = createRoot(() =>
      createLiveSession(kept, { book, say: () => Promise.resolve(true), tone: () => undefined }),
    );
    await live.act(next, 'touch');
    expect(book.appends).toEqual([]);
    await live.act({ kind: 'reopen' }, 'program');
    expect(book.appends.map(kinds)).toEqual([['reopened']]);
  });
  test('speech is dropped that began before it, however late it is understood', async () => {
    const live = await atWarning();
    const change = performance.now();
    pass(5000);
    await live.hear(spoken('affirm', change - 1), 'voice');
    expect(live.heard()).toEqual({ text: 'affirm', taken: 'too early' });
    expect(acknowledged(live)).toBe(false);
    await live.hear(spoken('affirm', change), 'voice');
    expect(live.heard()).toEqual({ text: 'affirm', taken: 'taken' });
    expect(acknowledged(live)).toBe(true);
  });
  test('speech is dropped that was heard while the change was being written', async () => {
    const book = new HeldBook();
    const { live } = await open(book);
    const done = live.act(next, 'touch');
    const write = await book.next();
    pass(50);
    const said = live.hear(spoken('affirm', performance.now()), 'voice');
    pass(50);
    write.settle();
    await Promise.all([done, said]);
    expect(acknowledged(live)).toBe(false);
    expect(live.ignored()).toBe(0);
  });
  test('a typed line counts at once: nobody types by accident', async () => {
    const live = await atWarning();
    await live.hear(typed('affirm'), 'key');
    expect(acknowledged(live)).toBe(true);
  });
});
