/** From what the camera sees to what the session does, with the voice and the camera in the hands of the test. */
import { createRoot, createSignal } from 'solid-js';
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { CAMERA_AT_FIRST, type CameraHabit } from '../../src/gesture/camera-habit.ts';
import type { Camera } from '../../src/gesture/camera.ts';
import type { Gesture, GestureKind } from '../../src/gesture/gesture.ts';
import { USUAL } from '../../src/language/sureness.ts';
import type { SpeakingState } from '../../src/speaking/speaking.ts';
import type { Fittings, LiveSession } from '../../src/ui/live-session.ts';
import { createSidesCheck } from '../../src/ui/sides-check.ts';
import { createSwitchBoard } from '../../src/ui/switch-board.ts';
import { watchGestures } from '../../src/ui/watch-gestures.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { reading } from '../session/play.ts';
import { GoodBook, job, kinds, open, pass, spoken, stopClock } from './bench.ts';

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

const CHECKED: CameraHabit = { ...CAMERA_AT_FIRST, checkedOn: 'one' };

async function before(procedure: unknown, kept = CHECKED, fittings: Partial<Fittings> = {}) {
  const { live } = await open(new GoodBook(), fittings, procedure);
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
  let device = 'one';
  const camera: Camera = {
    state: { kind: 'watching', trouble: null },
    get device() {
      return device;
    },
    onState: () => () => undefined,
    onGesture: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    start: () => undefined,
    stop: () => void (isStopped = true),
  };
  const [speakingState, setSpeaking] = createSignal<SpeakingState>({ voice: 'choosing', saying: null });
  const [watched, setWatched] = createSignal<CameraHabit>(kept);
  const { dispose, sides, switches } = createRoot((dispose) => {
    const devices = { speakingState, wake: () => undefined, announce: () => Promise.resolve(true) };
    const switches = createSwitchBoard({ live: awaited, devices, taught: () => null });
    const addNews = (text: string): Promise<boolean> => Promise.resolve(news.push(text) > 0);
    const keep = (habit: CameraHabit): void => void setWatched(habit);
    const sides = createSidesCheck({ camera, live: awaited, watched, keep, addNews: (text) => void addNews(text) });
    watchGestures({ camera, speakingState, addNews }, awaited, switches, sides);
    return { dispose, sides, switches };
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
  const change = (to: string): void => void (device = to);
  return {
    live,
    sides,
    switches,
    watched,
    news,
    make,
    shown,
    change,
    setSpeaking,
    dispose,
    isStopped: () => isStopped,
  };
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
  expect(live.heard()).toEqual({ text: 'wave right', taken: 'not said yet' });
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

describe('before a camera on which nobody has seen that left and right are right', () => {
  const twoSteps = { ...smallProcedure, steps: [fit, { ...fit, id: 'again' }] };
  const RIGHT = 'Seen: a wave to your right. Affirm or negative?';
  const LEFT = 'Seen: a wave to your left. Affirm or negative?';

  test('the first wave only asks; a nod keeps that they are right, and then a wave counts', async () => {
    const { live, sides, watched, news, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave right');
    expect(sides.shown()).toBe(RIGHT);
    await make('nod');
    expect(kinds(live.entries()), 'of the job, nothing').toEqual(['opened']);
    expect(watched()).toEqual(CHECKED);
    await make('wave right');
    expect(live.entries().at(-1)).toMatchObject({ source: 'gesture', body: { kind: 'step done' } });
    expect(news).toEqual([RIGHT, 'Left and right are known. Wave again.']);
    expect(sides.shown(), 'the work goes on').toBeNull();
  });
  test('a shake turns the picture over, which the next wave asks about as well', async () => {
    const { live, watched, news, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave left');
    await make('shake');
    expect(watched()).toEqual({ ...CAMERA_AT_FIRST, upsideDown: true });
    await make('wave right');
    expect(kinds(live.entries())).toEqual(['opened']);
    await make('nod');
    expect(watched()).toEqual({ ...CHECKED, upsideDown: true });
    await make('wave right');
    expect(kinds(live.entries())).toEqual(['opened', 'step done']);
    expect(news.slice(0, 3)).toEqual([LEFT, 'The picture is turned upside down. Wave again.', RIGHT]);
  });
  test.each([
    ['affirm', CHECKED],
    ['negative', { ...CAMERA_AT_FIRST, upsideDown: true }],
  ] as const)('the word and the button “%s” answer it, and nothing else', async (kind, as) => {
    for (const by of ['word', 'button'] as const) {
      const { live, sides, watched, make } = await before(twoSteps, CAMERA_AT_FIRST);
      const may = (): boolean => sides.situation().sayings.some(({ meaning }) => meaning.kind === kind);
      const answer = (): boolean =>
        by === 'word' ? sides.takesWords(spoken(kind, performance.now())) : sides.takes({ kind });
      expect([may(), answer()], 'before it is asked').toEqual([false, false]);
      await make('wave right');
      expect([may(), answer(), watched()], 'what was not asked yet').toEqual([true, true, CAMERA_AT_FIRST]);
      pass(1000);
      expect(sides.takes({ kind: 'next' })).toBe(false);
      expect(answer()).toBe(true);
      expect(watched()).toEqual(as);
      expect([may(), answer()], 'once it is answered').toEqual([false, false]);
      expect(kinds(live.entries())).toEqual(['opened']);
    }
  });
  test('a nod that is not sure enough leaves it open, and is asked for once more', async () => {
    const { sides, watched, news, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave right');
    await make('nod', 0.75);
    expect(news.at(-1)).toBe('Not sure: affirm? Once more, or say it.');
    expect([watched(), sides.shown()]).toEqual([CAMERA_AT_FIRST, RIGHT]);
  });
  test('another camera is asked about as well', async () => {
    const { live, sides, make } = await before(twoSteps, { ...CHECKED, checkedOn: 'another' });
    await make('wave right');
    expect(sides.shown()).toBe(RIGHT);
    expect(kinds(live.entries())).toEqual(['opened']);
  });
  test('what was asked of one camera is not answered of another, which the next wave asks about', async () => {
    const { live, sides, watched, make, change } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave right');
    change('two');
    await make('nod');
    expect([watched(), sides.shown()]).toEqual([CAMERA_AT_FIRST, null]);
    await make('wave right');
    await make('nod');
    expect(watched()).toEqual({ ...CAMERA_AT_FIRST, checkedOn: 'two' });
    expect(kinds(live.entries())).toEqual(['opened']);
  });
  test('who must be heard more surely is, here as well', async () => {
    const { sides, watched, make } = await before(twoSteps, CAMERA_AT_FIRST, {
      sureness: () => ({ ...USUAL, command: 0.99 }),
    });
    await make('wave right');
    pass(1000);
    expect(sides.takesWords(spoken('affirm', performance.now()))).toBe(false);
    expect(watched()).toEqual(CAMERA_AT_FIRST);
  });
  describe('nothing is asked beside another question: a nod answers one of them only', () => {
    test.each([
      ['a reading that waits', [tighten, fit], reading('12'), 'reading confirmed'],
      ['a check', [fit, job.steps[3], tighten], { kind: 'next' }, 'answered'],
    ] as const)('%s', async (_, steps, meaning, answered) => {
      const { live, sides, make } = await before({ ...smallProcedure, steps }, CAMERA_AT_FIRST);
      await live.act(meaning, 'key');
      await make('wave right');
      await make('wave left');
      expect(sides.shown()).toBeNull();
      await make('nod', 0.95);
      expect(kinds(live.entries())).toContain(answered);
    });
    test('a value that is being counted', async () => {
      const { sides, switches, make } = await before(oneBolt, CAMERA_AT_FIRST);
      switches.give('forward', 'touch', performance.now());
      await make('wave right');
      expect([sides.shown(), switches.panel()?.kind]).toEqual([null, 'value']);
    });
  });
  test('it goes when the work goes on, and a nod is for the work again', async () => {
    const { live, sides, watched, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave right');
    await live.act({ kind: 'next' }, 'touch');
    expect(sides.shown()).toBeNull();
    await make('nod');
    expect(watched()).toEqual(CAMERA_AT_FIRST);
  });
  test('it goes by itself when nobody answers, and the next wave asks again', async () => {
    vi.useFakeTimers({ toFake: ['performance', 'Date', 'setTimeout'] });
    const { sides, watched, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('wave right');
    pass(19_000);
    expect(sides.shown()).toBe(RIGHT);
    pass(2_000);
    expect(sides.shown()).toBeNull();
    await make('nod');
    expect(watched()).toEqual(CAMERA_AT_FIRST);
    await make('wave right');
    expect(sides.shown()).toBe(RIGHT);
  });
  test('a covered lens stops everything all the same', async () => {
    const { live, make } = await before(twoSteps, CAMERA_AT_FIRST);
    await make('cover');
    expect(kinds(live.entries())).toEqual(['opened', 'stood by']);
  });
});
