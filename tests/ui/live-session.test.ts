/** The law of the loop: what comes in is written first, and only then shown and said. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { verify } from '../../src/record/entry.ts';
import type { Fittings, LiveSession } from '../../src/ui/live-session.ts';
import { affirm, continue_, next } from '../session/play.ts';
import {
  GoodBook,
  HeldBook,
  idle,
  job,
  kinds,
  NOT_LOGGED,
  NOTHING_LOGGED,
  open,
  pass,
  settle,
  spoken,
  stopClock,
  typed,
  type Bench,
} from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

describe('what is not yet on disk', () => {
  test('is not shown, does not sound, and is not said', async () => {
    const book = new HeldBook();
    const { live, trace, said } = await open(book);
    const before = [live.state(), live.entries()];
    const done = live.act(next, 'touch');
    const write = await book.next();
    pass(60_000);
    await idle();
    expect(trace).toEqual([]);
    expect([live.state(), live.entries()]).toEqual(before);

    write.settle();
    await done;
    expect(trace).toEqual(['shown: 2', 'tone: heard', 'said']);
    expect(said()).toBe('Warning. It is heavy. Say affirm.');
    expect(live.entries().slice(1)).toEqual(write.entries);
  });
  test('is all that one input led to: it goes to the disk together', async () => {
    const book = new GoodBook();
    const { live, trace } = await open(book, {}, { ...job, steps: job.steps.slice(-1) });
    await live.act(affirm, 'touch');
    expect(book.appends.map(kinds)).toEqual([['answered', 'step done', 'closed']]);
    expect(verify(live.entries())).toMatchObject({ kind: 'intact', entries: 4 });
    expect(trace[0]).toBe('shown: 4');
  });
  test('is a refusal too: that something was asked for in vain is written before it is said', async () => {
    const book = new HeldBook();
    const { live, trace, said } = await open(book);
    const refused = live.act(affirm, 'touch');
    const write = await book.next();
    await idle();
    expect([kinds(write.entries), trace]).toEqual([['refused'], []]);
    write.settle();
    await refused;
    expect(trace).toEqual(['shown: 2', 'tone: question', 'said']);
    expect(said()).toBe('There is nothing to confirm.');
  });
  test('is written with who, through what, and what was heard when', async () => {
    const book = new GoodBook();
    const { live } = await open(book);
    settle();
    const from = performance.now();
    const began = new Date().toISOString();
    pass(400);
    const ended = new Date().toISOString();
    await live.hear(spoken('done', from), 'voice');
    expect(live.entries().at(-1)).toMatchObject({
      seq: 1,
      source: 'voice',
      person: 'Mechanic',
      at: { utc: ended },
      heard: { text: 'done', words: [{ word: 'done', confidence: '0.97' }], spoken: { from: began, to: ended } },
      body: { kind: 'step done', step: 'fit' },
    });
  });
});

describe('what cannot be written', () => {
  /** A session whose disk is full, from the first input on. */
  async function onFullDisk(): Promise<Bench & { readonly book: HeldBook }> {
    const book = new HeldBook();
    const bench = await open(book);
    const done = bench.live.act(next, 'touch');
    (await book.next()).fail(new Error('The disk is full.'));
    await done;
    return { ...bench, book };
  }

  test('is not shown, and the trouble is shown and said aloud', async () => {
    const { live, trace, said } = await onFullDisk();
    expect(kinds(live.entries())).toEqual(['opened']);
    expect(live.state().at).toBe(0);
    expect(live.trouble()).toContain('The disk is full.');
    expect(trace).toEqual(['tone: stop', 'said']);
    expect(said()).toBe(NOT_LOGGED);
  });
  test.each<[string, (live: LiveSession) => Promise<void>]>([
    ['a tap', (live) => live.act(next, 'touch')],
    ['a pedal', (live) => live.act(next, 'key')],
    ['a typed line', (live) => live.hear(typed('next'), 'key')],
    ['a spoken phrase', (live) => live.hear(spoken('next', performance.now()), 'voice')],
    ['speech that began before', (live) => live.hear(spoken('next', performance.now() - 5000), 'voice')],
  ])('has every later input answered, and none written: %s', async (_, input) => {
    const { live, book, said } = await onFullDisk();
    said();
    for (let time = 0; time < 2; time++) {
      await input(live);
      expect(said()).toBe(NOTHING_LOGGED);
    }
    expect(book.asked).toHaveLength(1);
    expect(kinds(live.entries())).toEqual(['opened']);
  });
  test('has those answered that waited for it', async () => {
    const book = new HeldBook();
    const { live, said } = await open(book);
    const inputs = [live.act(next, 'touch'), live.act(next, 'touch'), live.hear(typed('stand by'), 'key')];
    (await book.next()).fail(new Error('The disk is full.'));
    await Promise.all(inputs);
    expect(said()).toBe([NOT_LOGGED, NOTHING_LOGGED, NOTHING_LOGGED].join(' '));
    expect(book.asked).toHaveLength(1);
  });
  test('has a tap answered that came right after the last change', async () => {
    const book = new HeldBook();
    const { live, said } = await open(book);
    const first = live.act(next, 'touch');
    (await book.next()).settle();
    await first;
    said();
    const second = live.hear(typed('affirm'), 'key');
    const tap = live.act(affirm, 'touch');
    (await book.next()).fail(new Error('The disk is full.'));
    await Promise.all([second, tap]);
    expect(said()).toBe(`${NOT_LOGGED} ${NOTHING_LOGGED}`);
  });
  test('leaves other talk alone, and asks for no answer that could not be taken', async () => {
    const book = new HeldBook();
    const { live, said } = await open(book);
    const first = live.act(next, 'touch');
    (await book.next()).settle();
    await first;
    settle();
    const second = live.act(affirm, 'touch');
    (await book.next()).fail(new Error('The disk is full.'));
    await second;
    said();
    await live.hear(spoken('hand me the cloth', performance.now()), 'voice');
    expect([said(), live.ignored()]).toEqual(['', 1]);
    await live.hear(spoken('yes', performance.now()), 'voice');
    expect([said(), live.ignored()]).toEqual([NOTHING_LOGGED, 2]);
  });
});

describe('speech', () => {
  test('that is no phrase is shown and counted, and does nothing', async () => {
    const book = new GoodBook();
    const { live, trace } = await open(book);
    await live.hear(spoken('hand me the next cloth', performance.now()), 'voice');
    await live.hear(spoken('next', performance.now(), 0.4), 'voice');
    expect(live.ignored()).toBe(2);
    expect(live.heard()).toEqual({ text: 'next', taken: 'not for us' });
    expect([book.appends, trace]).toEqual([[], []]);
  });
  test('that sounds like an answer has the words said that are one, and writes nothing', async () => {
    const book = new GoodBook();
    const { live, said } = await open(book);
    await live.act(next, 'touch');
    said();
    await live.hear(spoken('roger', performance.now()), 'voice');
    expect(said()).toBe('Say affirm.');
    expect(live.heard()).toEqual({ text: 'roger', taken: 'not for us', answered: 'Say affirm.' });
    expect(live.ignored()).toBe(1);
    expect(book.appends).toHaveLength(1);
    pass(1000);
    await live.act(affirm, 'touch');
    expect(live.heard(), 'answered: it asks no more').toEqual({ text: 'roger', taken: 'not for us' });
  });
  test('that takes a step back is asked about where the sound cannot be trusted, and writes nothing', async () => {
    const book = new GoodBook();
    const { live, said } = await open(book);
    await live.act(next, 'touch');
    settle();
    await live.act(affirm, 'touch');
    said();
    pass(1000);
    const back = { ...spoken('back', performance.now()), isTrusted: false };
    await live.hear(back, 'voice');
    expect(said()).toMatch(/^Was that back\? It is too loud to be sure/);
    expect(live.heard()).toMatchObject({ text: 'back', taken: 'not sure' });
    expect([live.ignored(), book.appends.length]).toEqual([0, 2]);
    pass(1000);
    await live.hear(spoken('back', performance.now()), 'voice');
    expect(live.entries().at(-1)?.body.kind).toBe('step taken back');
  });
  test('is understood by what is asked when its turn comes', async () => {
    const { live } = await open(new GoodBook());
    await live.hear(spoken('affirm', performance.now()), 'voice');
    expect(live.ignored()).toBe(1);
    await Promise.all([live.hear(typed('next'), 'key'), live.hear(typed('affirm'), 'key')]);
    expect(live.ignored()).toBe(1);
  });
});

describe('the tone', () => {
  /** The tones of typed lines at the first bolt, where each reading is confirmed in that way. */
  async function tones(confirm: string, ...lines: readonly string[]): Promise<readonly string[]> {
    const { live, trace } = await open(new GoodBook(), {}, { ...job, steps: [{ ...job.steps[2], confirm }] });
    for (const line of lines) await live.hear(typed(line), 'key');
    return trace.filter((each) => each.startsWith('tone')).map((each) => each.replace('tone: ', ''));
  }

  test('tells a value to confirm from one that is over, and what is logged from both', async () => {
    expect(await tones('each', '12', 'affirm')).toEqual(['question', 'logged']);
    expect(await tones('each', '14', 'negative')).toEqual(['stop', 'heard']);
  });
  test('tells nothing of a value that its witness has not read yet', async () => {
    expect(await tones('witness each', '12', 'witness 12', 'affirm')).toEqual(['question', 'question', 'logged']);
    expect(await tones('witness each', '14', 'witness 14')).toEqual(['question', 'stop']);
    expect(await tones('witness each', '14', 'witness 12')).toEqual(['question', 'question']);
  });
});

test('a closed record stays as it is, and what comes after the end is answered', async () => {
  const book = new GoodBook();
  const { live, trace, said } = await open(book, {}, { ...job, steps: job.steps.slice(0, 1) });
  await live.act(next, 'touch');
  expect(live.state().phase).toBe('closed');
  const closed = live.entries();
  said();
  trace.length = 0;
  settle();
  await live.act(next, 'touch');
  await live.hear(spoken('say again', performance.now()), 'voice');
  await live.act(continue_, 'key');
  expect(said()).toBe('The record is closed. The record is closed. The record is closed.');
  expect(trace).toEqual(Array.from({ length: 3 }).flatMap(() => ['tone: question', 'said']));
  expect(live.entries()).toBe(closed);
  expect(book.appends).toHaveLength(1);
});

test('the welcome says what the session is and what is wanted first, and writes nothing', async () => {
  const book = new GoodBook();
  const { live, said } = await open(book);
  live.welcome();
  expect(said()).toMatch(/^Small cover\. .*Fit the cover\.$/);
  expect(book.appends).toEqual([]);
});

describe('a fault', () => {
  test('after the write is shown and said; what was written stays listed, and the next input is answered', async () => {
    const book = new GoodBook();
    const tone = vi.fn<Fittings['tone']>().mockImplementationOnce(() => {
      throw new Error('There is no sound.');
    });
    const { live, said } = await open(book, { tone });
    await live.act(next, 'touch');
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
    expect(live.trouble()).toContain('There is no sound.');
    expect(live.trouble()).not.toContain('not be written');
    expect(said()).toBe('A fault in this page. Stop, and load the page again.');
    settle();
    await live.act(affirm, 'touch');
    expect(said()).toBe(NOTHING_LOGGED);
    expect(book.appends).toHaveLength(1);
  });
  test('of the voice itself leaves the trouble on the screen, and every input comes to its end', async () => {
    const book = new GoodBook();
    const say = vi.fn(() => {
      throw new Error('There is no voice.');
    });
    const { live } = await open(book, { say });
    await Promise.all([live.act(next, 'touch'), live.hear(typed('affirm'), 'key')]);
    expect(live.trouble()).toContain('There is no voice.');
    const calls = say.mock.calls.length;
    await live.hear(typed('affirm'), 'key');
    expect(say.mock.calls.length).toBeGreaterThan(calls);
    expect(book.appends).toHaveLength(1);
  });
});

describe('the sound around a reading', () => {
  const kept = {
    kept: true,
    sha256: 'a'.repeat(64),
    bytes: 44,
    from: '2026-03-01T00:00:00.000Z',
    to: '2026-03-01T00:00:02.000Z',
  } as const;
  const atBolt = { ...job, steps: [job.steps[2]] };

  test('is kept first, and then named by every entry of that input', async () => {
    const book = new HeldBook();
    const order: string[] = [];
    const keepSound = vi.fn<NonNullable<Fittings['keepSound']>>().mockImplementation(() => {
      order.push(`kept, of ${book.asked.length} writes`);
      return Promise.resolve(kept);
    });
    const { live } = await open(book, { keepSound }, atBolt);
    const from = performance.now();
    pass(500);
    const done = live.hear(spoken('one two', from), 'voice');
    (await book.next()).settle();
    await done;
    expect(order).toEqual(['kept, of 0 writes']);
    expect(live.entries().at(-1)).toMatchObject({ body: { kind: 'reading captured' }, heard: { sound: kept } });
    expect(keepSound).toHaveBeenCalledWith({ from, to: from + 400 }, from, live.state().people);
  });
  test('of an answer is asked for from when the read-back began', async () => {
    const keepSound = vi.fn<NonNullable<Fittings['keepSound']>>().mockResolvedValue(kept);
    const { live } = await open(new GoodBook(), { keepSound }, atBolt);
    await live.hear(typed('12'), 'key');
    const readBack = performance.now();
    pass(3000);
    await live.hear(spoken('affirm', performance.now()), 'voice');
    expect(keepSound).toHaveBeenCalledTimes(1);
    expect(keepSound.mock.calls[0]?.[1]).toBe(readBack);
  });
  test('is not kept of other words, nor of what was typed or tapped', async () => {
    const keepSound = vi.fn<NonNullable<Fittings['keepSound']>>().mockResolvedValue(kept);
    const { live } = await open(new GoodBook(), { keepSound });
    settle();
    await live.hear(spoken('next', performance.now()), 'voice');
    await live.hear(typed('affirm'), 'key');
    expect(keepSound).not.toHaveBeenCalled();
    expect(live.entries().some((entry) => entry.heard?.sound !== undefined)).toBe(false);
  });
});

test('every entry names the device that wrote it', async () => {
  const { live } = await open(new GoodBook(), { device: 'thumbprint' });
  await live.act(next, 'touch');
  expect(
    live
      .entries()
      .slice(1)
      .map(({ device }) => device),
  ).toEqual(['thumbprint']);
  expect(verify(live.entries())).toMatchObject({ kind: 'intact' });
});

test('a record that is closed is sealed when it is on disk, and before that is said', async () => {
  const order: string[] = [];
  const onClosed = vi.fn<NonNullable<Fittings['onClosed']>>().mockImplementation((entries) => {
    order.push(`sealed: ${entries.at(-1)?.body.kind}`);
    return Promise.resolve([]);
  });
  const say = (): Promise<boolean> => Promise.resolve(order.push('said') > 0);
  const { live } = await open(new GoodBook(), { onClosed, say }, { ...job, steps: job.steps.slice(0, 1) });
  await live.act(next, 'touch');
  settle();
  await live.act(next, 'touch');
  expect(order).toEqual(['sealed: closed', 'said', 'said']);
});

test('a seal that could not be made is said behind the closing', async () => {
  const { live, said } = await open(
    new GoodBook(),
    { onClosed: () => Promise.resolve(['It could not be sealed.']) },
    { ...job, steps: job.steps.slice(0, 1) },
  );
  await live.act(next, 'touch');
  expect(said()).toMatch(/record is closed\. .* It could not be sealed\.$/);
});
