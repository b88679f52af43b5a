/** From what the camera sees to what the session does, with the voice and the camera in the hands of the test. */
import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Camera } from '../../src/gesture/camera.ts';
import type { Gesture, GestureKind } from '../../src/gesture/gesture.ts';
import type { SpeakingState } from '../../src/speaking/speaking.ts';
import type { LiveSession } from '../../src/ui/live-session.ts';
import { createSwitchBoard } from '../../src/ui/switch-board.ts';
import { watchGestures } from '../../src/ui/watch-gestures.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { reading } from '../session/play.ts';
import { GoodBook, kinds, open, pass, spoken, stopClock } from './bench.ts';

// Node gets Solid's server build, whose signals tell nobody; the app runs on the one for browsers.
vi.mock('solid-js', () => vi.importActual('solid-js/dist/solid.js'));
beforeEach(() => {
  stopClock();
  vi.stubGlobal('window', Object.assign(new EventTarget(), { navigator: {}, setTimeout, clearTimeout }));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function before(procedure: unknown) {
  const { live } = await open(new GoodBook(), {}, procedure);
  /** What is being carried out. */
  let work: Promise<void> = Promise.resolve();
  const awaited: LiveSession = {
    ...live,
    see: (...given) => (work = live.see(...given)),
    hear: (...given) => (work = live.hear(...given)),
  };
  const listeners = new Set<(gesture: Gesture) => void>();
  const news: string[] = [];
  let isStopped = false;
  const camera: Camera = {
    state: { kind: 'watching', trouble: null },
    onState: () => () => undefined,
    onGesture: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    start: () => undefined,
    stop: () => void (isStopped = true),
  };
  const [speakingState, setSpeaking] = createSignal<SpeakingState>({ voice: 'choosing', saying: null });
  const dispose = createRoot((dispose) => {
    const devices = { speakingState, wake: () => undefined, announce: () => Promise.resolve() };
    const switches = createSwitchBoard({ live: awaited, devices, taught: () => null });
    const addNews = (text: string): Promise<void> => Promise.resolve(void news.push(text));
    watchGestures({ camera, speakingState, addNews }, awaited, switches);
    return dispose;
  });
  onTestFinished(dispose);
  const shown = async (gesture: Gesture): Promise<void> => {
    for (const listener of listeners) listener(gesture);
    await work;
  };
  /** A gesture of nine tenths of a second, begun now. */
  const make = async (kind: GestureKind, confidence = 0.9): Promise<void> => {
    pass(500);
    const from = performance.now();
    pass(900);
    await shown({ kind, confidence, from, to: performance.now(), why: '' });
  };
  return { live, news, make, shown, setSpeaking, dispose, isStopped: () => isStopped };
}

const [fit, tighten] = smallProcedure.steps;
const oneBolt = {
  ...smallProcedure,
  patterns: [
    { ...smallProcedure.patterns[0], layout: { shape: 'ring', count: 1 }, order: { kind: 'explicit', numbers: [1] } },
  ],
  steps: [tighten, fit],
};

describe('a value is entered without a word', () => {
  test('counted by waves, taken by nods, read back, and affirmed by a nod', async () => {
    const { live, make } = await before(oneBolt);
    // It begins; one; taken; one, two; taken; read it.
    const gestures = ['wave right', 'wave right', 'nod', 'wave right', 'wave right', 'nod', 'nod'] as const;
    for (const [at, kind] of gestures.entries()) await make(kind, at === 3 ? 0.77 : 0.95);
    const captured = live.entries().at(-1);
    expect(captured).toMatchObject({ source: 'gesture', body: { kind: 'reading captured', reading: { value: '12' } } });
    const sureness = captured?.heard?.words.map(({ confidence }) => confidence) ?? [];
    expect([...new Set(sureness)], 'that of the least sure of them').toEqual(['0.77']);
    await make('nod');
    expect(kinds(live.entries())).toContain('reading confirmed');
  });
  test('but a nod that is not sure enough leaves the read-back open, and it is asked', async () => {
    const { live, make, news } = await before(oneBolt);
    for (const kind of ['wave right', 'wave right', 'nod', 'wave right', 'wave right', 'nod', 'nod'] as const)
      await make(kind);
    await make('nod', 0.45);
    expect(kinds(live.entries()).at(-1)).toBe('reading captured');
    expect(news).toEqual(['Not sure: affirm? Once more, or say it.']);
  });
});

test('a wave back while counting leaves the count, and takes no step back', async () => {
  const { live, make } = await before({ ...oneBolt, steps: [fit, tighten] });
  for (const kind of ['wave right', 'wave right', 'wave right'] as const) await make(kind);
  const written = kinds(live.entries());
  expect(written).toEqual(['opened', 'step done']);
  await make('wave left');
  await make('nod');
  expect(kinds(live.entries())).toEqual(written);
});

test('what is still being said is not answered, but a covered lens stops everything', async () => {
  const { live, make, setSpeaking } = await before({ ...oneBolt, steps: [fit, tighten] });
  setSpeaking({ voice: 'choosing', saying: 'Fit the cover.' });
  await make('wave right');
  expect(live.heard()).toEqual({ text: 'wave right', taken: 'too early' });
  await make('cover');
  expect(kinds(live.entries()).at(-1)).toBe('stood by');
});

test('a shake within a spoken “affirm” takes the reading back, also while the next call is said', async () => {
  const { live, shown, setSpeaking } = await before({ ...smallProcedure, steps: [tighten, fit] });
  await live.act(reading('12'), 'key');
  pass(1000);
  const from = performance.now();
  pass(900);
  await live.hear(spoken('affirm', from + 300), 'voice');
  setSpeaking({ voice: 'choosing', saying: 'Fit the cover.' });
  await shown({ kind: 'shake', confidence: 0.6, from, to: from + 900, why: '' });
  expect(kinds(live.entries())).not.toContain('reading disregarded');
  await shown({ kind: 'shake', confidence: 0.9, from, to: from + 900, why: '' });
  expect(kinds(live.entries())).toContain('reading disregarded');
});

test('a gesture that began before the last word was said does nothing either', async () => {
  const { live, make, setSpeaking } = await before({ ...oneBolt, steps: [fit, tighten] });
  setSpeaking({ voice: 'choosing', saying: 'Fit the cover.' });
  const waving = make('wave right');
  setSpeaking({ voice: 'choosing', saying: null });
  await waving;
  expect(kinds(live.entries())).toEqual(['opened']);
});

test('who leaves the work leaves no camera on', async () => {
  const { dispose, isStopped } = await before(oneBolt);
  dispose();
  expect(isStopped()).toBe(true);
});
