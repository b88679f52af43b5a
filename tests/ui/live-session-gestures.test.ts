/** What a gesture before the camera does to a session, alone and beside the voice. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { SeenGesture } from '../../src/ui/heeded.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { affirm, next, reading } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { GoodBook, job, kinds, open, pass, settle, spoken, stopClock } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

const [fit, , look] = smallProcedure.steps;
const twoSteps = { ...smallProcedure, steps: [fit, look] };

const gesture = (kind: string, from: number, to = from + 900): SeenGesture => ({ kind, confidence: 0.834, from, to });

test('it is carried out, and the record says what was seen, how surely, and when', async () => {
  const { live } = await open(new GoodBook());
  const from = performance.now();
  pass(900);
  await live.see(gesture('wave right', from), next);
  const [, done] = live.entries();
  expect(done).toMatchObject({
    source: 'gesture',
    body: { kind: 'step done' },
    heard: { text: 'wave right', words: [{ word: 'wave right', confidence: '0.83' }] },
  });
  const { from: began = '', to: ended = '' } = done?.heard?.spoken ?? {};
  expect(Date.parse(ended) - Date.parse(began)).toBe(900);
  expect(live.heard()).toEqual({ text: 'wave right', taken: 'taken' });
});

test('one that began before the screen changed does nothing, nor one that began right after', async () => {
  const { live } = await open(new GoodBook());
  const before = performance.now();
  await live.act(next, 'touch');
  pass(1000);
  await live.see(gesture('nod', before), affirm);
  expect(live.heard()).toEqual({ text: 'nod', taken: 'too early' });
  await live.see(gesture('nod', before + SETTLE - 1), affirm);
  expect(kinds(live.entries())).toEqual(['opened', 'step done']);
  await live.see(gesture('nod', before + SETTLE), affirm);
  expect(kinds(live.entries())).toEqual(['opened', 'step done', 'warning acknowledged']);
});

describe('help and stand by mean it at whatever moment', () => {
  test('a covered lens that was covered before the screen changed', async () => {
    const { live } = await open(new GoodBook());
    const from = performance.now();
    await live.act(next, 'touch');
    pass(1000);
    await live.see(gesture('cover', from), { kind: 'stand by' });
    expect(kinds(live.entries()).at(-1)).toBe('stood by');
  });
  test('a pedal right after it changed', async () => {
    const { live } = await open(new GoodBook());
    await live.act(next, 'touch');
    await live.act({ kind: 'stand by' }, 'pedal');
    expect(kinds(live.entries()).at(-1)).toBe('stood by');
  });
  test('a word that began before it changed; another such word does nothing', async () => {
    const { live } = await open(new GoodBook());
    const from = performance.now();
    pass(100);
    await live.act(next, 'touch');
    pass(1000);
    await live.hear(spoken('affirm', from), 'voice');
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
    await live.hear(spoken('stand by', from), 'voice');
    expect(kinds(live.entries()).at(-1)).toBe('stood by');
  });
});

test('a nod that came too early does not make the word after it count as said already', async () => {
  const { live } = await open(new GoodBook());
  const from = performance.now();
  await live.act(next, 'touch');
  pass(SETTLE + 100);
  await live.see(gesture('nod', from), affirm);
  await live.hear(spoken('affirm', performance.now()), 'voice');
  expect(kinds(live.entries()).at(-1)).toBe('warning acknowledged');
});

describe('a word and a nod at once count once', () => {
  test.each(['the word first', 'the nod first'])('%s', async (order) => {
    const { live } = await open(new GoodBook());
    await live.act(next, 'touch');
    settle();
    const from = performance.now();
    pass(900);
    const both = [() => live.hear(spoken('affirm', from + 100), 'voice'), () => live.see(gesture('nod', from), affirm)];
    for (const act of order === 'the word first' ? both : both.reverse()) await act();
    expect(kinds(live.entries())).toEqual(['opened', 'step done', 'warning acknowledged']);
    expect(live.heard()?.taken).not.toBe('taken');
  });
  test('also where the word follows at once, and would answer the next question', async () => {
    const { live } = await open(new GoodBook(), {}, twoSteps);
    const from = performance.now();
    pass(900);
    await live.see(gesture('wave right', from), next);
    pass(SETTLE);
    await live.hear(spoken('next', performance.now()), 'voice');
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
    expect(live.heard()).toEqual({ text: 'next', taken: 'counted already' });
  });
  test('but two nods are two answers', async () => {
    const { live } = await open(new GoodBook(), {}, twoSteps);
    await live.see(gesture('wave right', performance.now()), next);
    settle();
    await live.see(gesture('wave right', performance.now()), next);
    expect(kinds(live.entries())).toEqual(['opened', 'step done', 'step done', 'closed']);
  });
});

describe('a spoken “negative” during a nod that was seen wrongly holds, whichever is known first', () => {
  const [, tighten] = smallProcedure.steps;
  /** A value was read and is read back; then comes a nod, and a “negative” within it. */
  async function both(order: 'the word first' | 'the nod first') {
    const bench = await open(new GoodBook(), {}, { ...smallProcedure, steps: [tighten, look] });
    const { live } = bench;
    settle();
    await live.act(reading('12'), 'key');
    settle();
    const from = performance.now();
    pass(900);
    const word = () => live.hear(spoken('negative', from + 100), 'voice');
    const nod = () => live.see(gesture('nod', from), affirm);
    for (const act of order === 'the word first' ? [word, nod] : [nod, word]) await act();
    return bench;
  }
  test('the word first: the nod does nothing', async () => {
    const { live } = await both('the word first');
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured', 'reading rejected']);
  });
  test('the nod first: the reading does not count, its fastener is called again, and the record keeps both', async () => {
    const { live } = await both('the nod first');
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured', 'reading confirmed', 'reading disregarded']);
    expect(live.entries().at(-1)).toMatchObject({ source: 'voice', heard: { text: 'negative' } });
    expect(live.state().readings.at(-1)?.status).toBe('disregarded');
  });
  test('but not where the work has gone on since', async () => {
    const { live } = await open(new GoodBook(), {}, { ...smallProcedure, steps: [tighten, look] });
    settle();
    await live.act(reading('12'), 'key');
    settle();
    const from = performance.now();
    pass(900);
    await live.see(gesture('nod', from), affirm);
    settle();
    await live.act(reading('12.5'), 'key');
    await live.hear(spoken('negative', from + 100), 'voice');
    expect(kinds(live.entries()).at(-1)).toBe('reading captured');
    expect(live.heard()?.taken).toBe('too early');
  });
  test('where the nod answered something else, it is said that the two do not agree', async () => {
    const { live, said } = await open(
      new GoodBook(),
      {},
      {
        ...smallProcedure,
        steps: [job.steps.at(-1), look],
      },
    );
    settle();
    const from = performance.now();
    pass(900);
    await live.see(gesture('nod', from), affirm);
    await live.hear(spoken('negative', from + 100), 'voice');
    expect(said()).toContain('Negative was said, but a nod');
  });
});

describe('a shake of the head during a spoken “affirm” holds, whichever is known first', () => {
  const [, tighten] = smallProcedure.steps;
  const negative = { kind: 'negative' } as const;
  async function readBack() {
    const bench = await open(new GoodBook(), {}, { ...smallProcedure, steps: [tighten, look] });
    settle();
    await bench.live.act(reading('12'), 'key');
    settle();
    const from = performance.now();
    pass(900);
    const word = () => bench.live.hear(spoken('affirm', from + 300), 'voice');
    const shake = gesture('shake', from);
    return { ...bench, word, shake, see: () => bench.live.see(shake, negative) };
  }
  test('the shake first: the value is not taken, and the word does nothing', async () => {
    const { live, see, word } = await readBack();
    await see();
    await word();
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured', 'reading rejected']);
  });
  test('the word first: the reading does not count, and the record keeps both', async () => {
    const { live, see, word, shake } = await readBack();
    expect(live.isAgainstWord(shake)).toBe(false);
    await word();
    expect(live.isAgainstWord(shake)).toBe(true);
    await see();
    expect(kinds(live.entries())).toEqual(['opened', 'reading captured', 'reading confirmed', 'reading disregarded']);
    expect(live.entries().at(-1)).toMatchObject({ source: 'gesture', heard: { text: 'shake' } });
    expect(live.isAgainstWord(shake), 'once').toBe(false);
  });
  test('but not where the work has gone on since, nor by a shake that begins when something else is asked', async () => {
    const { live, see, word, shake } = await readBack();
    await word();
    pass(SETTLE);
    expect(live.isAgainstWord(gesture('shake', performance.now()))).toBe(false);
    await live.act(reading('12.5'), 'key');
    expect(live.isAgainstWord(shake)).toBe(false);
    await see();
    expect(kinds(live.entries()).at(-1)).toBe('reading captured');
    expect(live.heard()).toEqual({ text: 'shake', taken: 'too early' });
  });
  test('at the last fastener of a step, which the word has ended, it is said that the two do not agree', async () => {
    const { live, said } = await open(new GoodBook(), {}, { ...smallProcedure, steps: [tighten, look] });
    settle();
    for (let bolt = 0; bolt < 2; bolt++) {
      await live.act(reading('12'), 'key');
      settle();
      await live.act(affirm, 'touch');
      settle();
    }
    await live.act(reading('12'), 'key');
    settle();
    const from = performance.now();
    pass(900);
    await live.hear(spoken('affirm', from + 300), 'voice');
    expect(kinds(live.entries()).slice(-2)).toEqual(['reading confirmed', 'step done']);
    said();
    await live.see(gesture('shake', from), negative);
    expect(said()).toContain('A head was shaken, but an affirm');
    expect(kinds(live.entries()).at(-1)).toBe('step done');
  });
  test('where the word answered something else, it is said that the two do not agree', async () => {
    const { live, said } = await open(new GoodBook(), {}, { ...smallProcedure, steps: [job.steps.at(-1), look] });
    settle();
    const from = performance.now();
    pass(900);
    await live.hear(spoken('affirm', from + 300), 'voice');
    await live.see(gesture('shake', from), negative);
    expect(said()).toContain('A head was shaken, but an affirm');
  });
});

test('one that is not taken is shown, and counted where it is none of this moment', async () => {
  const { live } = await open(new GoodBook());
  live.notTaken('nod', 'too early');
  expect([live.heard(), live.ignored()]).toEqual([{ text: 'nod', taken: 'too early' }, 0]);
  live.notTaken('nod', 'not for us');
  expect([live.heard(), live.ignored()]).toEqual([{ text: 'nod', taken: 'not for us' }, 1]);
  expect(live.entries()).toHaveLength(1);
});
