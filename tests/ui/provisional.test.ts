/** What is shown of a number that may still go on. */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { GoodBook, idle, job, kinds, open, pass, settle, spoken, stopClock, typed } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

/** Where the first bolt is called, and values are confirmed in this way. */
const atBolt = (confirm = 'each') => ({ ...job, steps: [{ ...job.steps[2], confirm }] });

describe('a number that may go on', () => {
  test('is shown as it would stand, with what would be said, and neither written nor said', async () => {
    const book = new GoodBook();
    const { live, trace } = await open(book, {}, atBolt());
    const before = live.state();
    live.showProvisional(spoken('one two', performance.now()));
    expect(live.provisional()?.state.readings).toMatchObject([{ fastener: 1, reading: { value: '12' } }]);
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
    expect(live.provisional()?.state.readings).toEqual([]);
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

test('whatever was shown, the record is the same as if nothing had been', async () => {
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
          await live.hear(typed(line), 'key');
        }
        return live.entries().map(({ body }) => body);
      };
      expect(await written(true)).toEqual(await written(false));
    }),
    { numRuns: 40 },
  );
});
