/** What is shown of a number that may still go on. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { LiveSession } from '../../src/ui/live-session.ts';
import { affirm, next } from '../session/play.ts';
import { GoodBook, HeldBook, idle, job, kinds, open, pass, settle, spoken, stopClock, typed } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

/** Where the first bolt is called, and values are confirmed in this way. */
const atBolt = (confirm = 'each') => ({ ...job, steps: [{ ...job.steps[2], confirm }] });

const nodAt = (from: number) => ({ kind: 'nod', confidence: 0.95, from, to: from + 800 });

describe('a number that may go on', () => {
  test('is shown as it would stand, with what would be said, and neither written nor said', async () => {
    const book = new GoodBook();
    const { live, trace } = await open(book, {}, atBolt());
    const before = live.state();
    live.showProvisional(spoken('one two', performance.now()));
    expect(live.provisional()?.state?.readings).toMatchObject([{ fastener: 1, reading: { value: '12' } }]);
    expect(live.provisional()?.says.join(' ')).toContain('one two');
    await idle();
    expect([book.appends, trace, live.state() === before]).toEqual([[], [], true]);
  });
  test('is taken back where more is said, and gives way to the whole', async () => {
    const { live, said } = await open(new GoodBook(), {}, atBolt());
    const from = performance.now();
    live.showProvisional(spoken('one', from));
    live.showProvisional(null);
    expect(live.provisional()).toBeNull();
    live.showProvisional(spoken('one two', from));
    pass(600);
    await live.hear(spoken('one two', from), 'voice');
    expect(live.provisional()).toBeNull();
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured']);
    expect(said()).toContain('one two');
  });
  test('gives way to whatever else is written meanwhile', async () => {
    const { live } = await open(new GoodBook(), {}, atBolt());
    live.showProvisional(spoken('one two', performance.now()));
    settle();
    await live.act({ kind: 'stand by' }, 'touch');
    expect(live.provisional()).toBeNull();
  });
  test('shows the question that would be asked', async () => {
    const { live } = await open(new GoodBook(), {}, atBolt());
    live.showProvisional(spoken('one two', performance.now(), 0.6));
    expect(live.provisional()?.state).toBeNull();
    expect(live.provisional()?.says.join(' ')).toMatch(/say again/i);
  });
});

describe('nothing is shown early', () => {
  test('of a command: who goes on speaking would have gone on a step', async () => {
    const { live } = await open(new GoodBook());
    live.showProvisional(spoken('next', performance.now()));
    expect(live.provisional()).toBeNull();
  });
  test('of a value that a second person must not see', async () => {
    const { live } = await open(new GoodBook(), {}, atBolt('witness each'));
    live.showProvisional(spoken('one two', performance.now()));
    live.showProvisional(spoken('one two', performance.now(), 0.6));
    expect(live.provisional()).toBeNull();
  });
  test('of what began before the last change, and of other talk', async () => {
    const { live } = await open(new GoodBook(), {}, atBolt());
    live.showProvisional(spoken('one two', performance.now() - 60_000));
    expect(live.provisional()).toBeNull();
    live.showProvisional(spoken('hand me the cloth', performance.now()));
    expect(live.provisional()).toBeNull();
  });
});

describe('while it is shown', () => {
  const shownAt = async (confirm = 'each') => {
    const bench = await open(new GoodBook(), {}, atBolt(confirm));
    const from = performance.now();
    bench.live.showProvisional(spoken('one two', from));
    settle();
    return { ...bench, from };
  };

  test.each<[string, (live: LiveSession) => Promise<void>]>([
    ['a tap', (live) => live.act(next, 'touch')],
    ['a pedal', (live) => live.act(affirm, 'key')],
    ['a typed line', (live) => live.hear(typed('affirm'), 'key')],
    ['a nod', (live) => live.see(nodAt(performance.now()), affirm)],
  ])('%s answers nothing: there is no question yet, and the number is not lost', async (_, input) => {
    const { live, from } = await shownAt();
    await input(live);
    expect(live.heard()?.taken).toBe('too early');
    await live.hear(spoken('one two', from), 'voice');
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured']);
  });
  test('no press confirms the value that a correction is about to replace', async () => {
    const { live, from } = await shownAt();
    await live.hear(spoken('one two', from), 'voice');
    settle();
    const later = performance.now();
    live.showProvisional(spoken('correction one three', later));
    settle();
    await live.act(affirm, 'touch');
    await live.hear(typed('four'), 'key');
    settle();
    await live.act(affirm, 'key');
    await live.hear(spoken('correction one three', later), 'voice');
    expect(live.state().readings.map(({ reading, status }) => [reading.value, status])).toEqual([
      ['12', 'replaced'],
      ['13', 'captured'],
    ]);
  });
  test('nor does a press just after it went: it may have been aimed at what is gone', async () => {
    const { live } = await shownAt();
    live.showProvisional(null);
    await live.act(next, 'touch');
    expect(live.heard()?.taken).toBe('too early');
    settle();
    await live.act(next, 'touch');
    expect(kinds(live.entries()).at(-1)).toBe('refused');
  });
  test('help and stand by are taken all the same', async () => {
    const { live } = await shownAt();
    await live.act({ kind: 'help' }, 'touch');
    expect(kinds(live.entries()).at(-1)).toBe('help called');
  });
  test('what could not be written takes it away', async () => {
    const book = new HeldBook();
    const { live } = await open(book, {}, atBolt());
    const done = live.act({ kind: 'stand by' }, 'touch');
    const write = await book.next();
    live.showProvisional(spoken('one two', performance.now()));
    write.fail(new Error('The disk is full.'));
    await done;
    expect(live.provisional()).toBeNull();
  });
});

test('a value that would confirm the one before it is not shown: that would look settled', async () => {
  const { live } = await open(new GoodBook(), {}, atBolt('by going on'));
  const from = performance.now();
  live.showProvisional(spoken('one two', from));
  expect(live.provisional()?.state).not.toBeNull();
  await live.hear(spoken('one two', from), 'voice');
  settle();
  live.showProvisional(spoken('one two', performance.now()));
  expect(live.provisional()).toBeNull();
});

test('what was shown and taken back leaves the record as if nothing had been', async () => {
  const SAID = ['one two', 'one', 'two four', 'affirm', 'negative', 'correction one two', 'one four', 'cancel that'];
  const LINES = ['12', 'affirm', 'negative', '13', '11.5', 'stand by', 'continue'];
  const turn = fc.record({
    shown: fc.array(fc.constantFrom(...SAID), { maxLength: 3 }),
    line: fc.constantFrom(...LINES),
  });
  await fc.assert(
    fc.asyncProperty(fc.array(turn, { minLength: 1, maxLength: 8 }), async (turns) => {
      const written = async (isShown: boolean): Promise<unknown> => {
        const { live } = await open(new GoodBook(), {}, atBolt());
        for (const { shown, line } of turns) {
          if (isShown) for (const text of shown) live.showProvisional(spoken(text, performance.now()));
          live.showProvisional(null);
          settle();
          await live.hear(typed(line), 'key');
        }
        return live.entries().map(({ body }) => body);
      };
      expect(await written(true)).toEqual(await written(false));
    }),
    { numRuns: 40 },
  );
});
