/** A second press, however soon, goes past no caution that was not heard. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { toRead, warnsNow } from '../../src/language/unheard.ts';
import type { Source } from '../../src/session/intent.ts';
import type { Fittings } from '../../src/ui/live-session.ts';
import { back, next } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { GoodBook, idle, kinds, open, pass, settle, spoken, stopClock, typed } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));

beforeEach(stopClock);
afterEach(() => void vi.useRealTimers());

const [fit, tighten, look] = smallProcedure.steps;
const hazards = [{ signal: 'caution', consequence: 'person', text: 'The oil is hot.' }];
const drain = { ...smallProcedure, steps: [fit, { ...look, id: 'drain', hazards }, look, tighten] };

/** At a caution that came up this moment, with a voice in the hands of the test. */
async function atCaution() {
  const saying: { texts: readonly string[]; said: (text: string) => void; end: (wasSaid: boolean) => void }[] = [];
  const say: Fittings['say'] = (texts, said) => new Promise((end) => saying.push({ texts, said, end }));
  const { live } = await open(new GoodBook(), { say }, drain);
  await live.act(next, 'touch');
  const [announced] = saying;
  if (!announced) throw new Error('Nothing was said.');
  const end = async (wasSaid: boolean): Promise<void> => {
    announced.end(wasSaid);
    await idle();
  };
  const steps = (): number => kinds(live.entries()).filter((kind) => kind === 'step done').length;
  const warns = warnsNow(live.state());
  if (!warns) throw new Error('Nothing warns.');
  return { live, saying, end, steps, reading: toRead(warns) };
}

test.each<Source>(['key', 'pedal'])('a second %s waits until the caution is said to its end', async (by) => {
  const { live, end, steps } = await atCaution();
  pass(10_000);
  await live.act(next, by);
  expect(steps()).toBe(1);
  expect(live.heard()).toEqual({
    text: 'next',
    taken: 'not said yet',
    unheard: { signal: 'caution', how: 'being said' },
  });
  await end(true);
  await live.act(next, by);
  expect(steps()).toBe(2);
  expect(live.heard()).toEqual({ text: 'next', taken: 'taken' });
});

test('a press that began before its end is of before, however late it is carried out', async () => {
  const { live, end, steps } = await atCaution();
  pass(9_000);
  const began = performance.now();
  pass(1_000);
  await end(true);
  await live.act(next, 'pedal', began);
  expect(steps()).toBe(1);
});

test('a touch of a button waits as long as the caution needs to be read', async () => {
  const { live, saying, steps, reading } = await atCaution();
  pass(reading - 1);
  await live.act(next, 'touch');
  expect(steps()).toBe(1);
  // Nothing is said into the caution.
  expect(saying).toHaveLength(1);
  pass(1);
  await live.act(next, 'touch');
  expect(steps()).toBe(2);
});

test.each(['voice', 'gesture'] as const)('a %s after it was cut short is told why it is not taken', async (by) => {
  const { live, saying, end, steps, reading } = await atCaution();
  settle();
  await end(false);
  const goOn = (): Promise<void> => {
    const from = performance.now();
    if (by === 'voice') return live.hear(spoken('next', from), 'voice');
    return live.see({ kind: 'wave right', confidence: 1, from, to: from + 400 }, next);
  };
  await goOn();
  expect(steps()).toBe(1);
  expect(live.heard()).toMatchObject({ unheard: { signal: 'caution', how: 'to be read' } });
  expect(saying.at(-1)?.texts.join(' ')).toMatch(/^The caution was not said to its end/);
  pass(reading);
  await goOn();
  expect(steps()).toBe(2);
});

test('said to its end, it need not wait for what the step says after it', async () => {
  const { live, saying, steps } = await atCaution();
  pass(3_000);
  const [caution = '', text] = saying[0]?.texts ?? [];
  expect([caution, text]).toEqual(['Caution. The oil is hot.', expect.any(String)]);
  saying[0]?.said(caution);
  await live.act(next, 'pedal');
  expect(steps()).toBe(2);
});

test('stepping to and fro, it is read in pieces', async () => {
  const { live, saying, steps, reading } = await atCaution();
  const LOOK = 1_000;
  const first = Math.ceil(reading / 2);
  const rest = reading - (first - LOOK);
  pass(first);
  await live.act(back, 'key');
  expect(steps()).toBe(1);
  settle();
  await live.act(next, 'touch');
  expect(saying.at(-1)?.texts).toContain('Caution. The oil is hot.');
  pass(rest - 1);
  await live.act(next, 'touch');
  expect(steps()).toBe(2);
  pass(1);
  await live.act(next, 'touch');
  expect(steps()).toBe(3);
});

describe('a line that does not answer what warns', () => {
  const warned = {
    ...drain,
    steps: [fit, { ...look, id: 'lift', hazards: [{ ...hazards[0], signal: 'warning' }] }, look, tighten],
  };

  test('is told the word that is wanted', async () => {
    const { live, said } = await open(new GoodBook(), {}, warned);
    await live.act(next, 'touch');
    said();
    for (const [line, told] of [
      ['next', 'Say affirm.'],
      ['go on', 'Say affirm.'],
    ] as const) {
      await live.hear(typed(line), 'key');
      expect(said()).toBe(told);
    }
    settle();
    pass(60_000);
    // Of other people's talk it says nothing.
    await live.hear(spoken('next', performance.now()), 'voice');
    expect(said()).toBe('');
    expect(kinds(live.entries())).not.toContain('warning acknowledged');
  });
});

test('who wants to go back, or calls for help, need not hear it out', async () => {
  const { live } = await atCaution();
  settle();
  await live.act({ kind: 'help' }, 'key');
  settle();
  await live.act(back, 'key');
  expect(kinds(live.entries()).slice(-2)).toEqual(['help called', 'step taken back']);
});

test('once it may go on, saying it again does not hold it up', async () => {
  const { live, end, steps } = await atCaution();
  pass(5_000);
  await end(true);
  await live.act({ kind: 'say again' }, 'key');
  settle();
  await live.act(next, 'key');
  expect(steps()).toBe(2);
});

test('saying it again to its end will do', async () => {
  const { live, saying, end, steps } = await atCaution();
  settle();
  await end(false);
  await live.act({ kind: 'say again' }, 'key');
  settle();
  await live.act(next, 'key');
  expect(steps()).toBe(1);
  saying.at(-1)?.end(true);
  await idle();
  await live.act(next, 'key');
  expect(steps()).toBe(2);
});
