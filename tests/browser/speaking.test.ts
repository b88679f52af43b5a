import type { JSHandle, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type * as speakingModule from '../../src/speaking/speaking.ts';
import type { Speaking, SpeakingOptions } from '../../src/speaking/speaking.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

/** What a test page offers: the room under test and ears at its loudspeaker. */
interface Bench {
  /** A speaking room whose real output also runs through a meter. */
  open(options: Partial<SpeakingOptions>): Speaking;
  /** The root mean square of what the output is sounding just now. */
  level(): number;
  /** Takes the output away, as a telephone call does. */
  interrupt(): Promise<void>;
  /** Waits until `isSo`, up to a time limit. */
  until(isSo: () => boolean, what: string): Promise<void>;
}
declare global {
  interface Window {
    speakingBench: Bench;
  }
}

let browser: Browser;
let page: Page;

beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.context.newPage();
  // An empty page of the same origin: the app's own page would be reloaded by the server in the middle of a test.
  const blank = new URL('blank.html', inject('modulesUrl')).href;
  await page.route(blank, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
  await page.goto(blank);
  // As text, since the test runner rewrites every import() that it sees.
  const room: JSHandle<typeof speakingModule> = await page.evaluateHandle("import('/speaking/speaking.ts')");
  await page.evaluate(({ createSpeaking }) => {
    let meter: AnalyserNode | undefined;
    let output: AudioContext | undefined;
    window.speakingBench = {
      open: (options) =>
        createSpeaking({
          prefer: 'embedded',
          openLoudspeaker() {
            const context = (output = new AudioContext());
            meter = new AnalyserNode(context, { fftSize: 2048 });
            meter.connect(context.destination);
            return { context, input: meter };
          },
          ...options,
        }),
      level() {
        if (!meter) return 0;
        const samples = new Float32Array(meter.fftSize);
        meter.getFloatTimeDomainData(samples);
        return Math.sqrt(samples.reduce((sum, sample) => sum + sample * sample, 0) / samples.length);
      },
      interrupt: async () => output?.suspend(),
      async until(isSo, what) {
        for (let tries = 0; !isSo(); tries++) {
          if (tries > 500) throw new Error(`Waited 10 s in vain: ${what}`);
          await new Promise((resolve) => setTimeout(resolve, 20));
        }
      },
    };
  }, room);
}, 30_000);
afterAll(() => browser.close());

describe('the embedded voice in a real browser', () => {
  test('is heard at the loudspeaker while it says so, and not afterwards', async () => {
    const heard = await page.evaluate(async () => {
      const bench = window.speakingBench;
      const speaking = bench.open({});
      await speaking.unlock();
      const levels = { saying: 0, silent: 0 };
      const meter = setInterval(() => {
        const part = speaking.state.saying === null ? 'silent' : 'saying';
        levels[part] = Math.max(levels[part], bench.level());
      }, 20);
      const outcome = await speaking.say({ text: 'stud four. two four point five newton metres' });
      // The meter looks back over its last 2048 samples.
      await new Promise((resolve) => setTimeout(resolve, 100));
      levels.silent = 0;
      await new Promise((resolve) => setTimeout(resolve, 200));
      clearInterval(meter);
      const { state } = speaking;
      await speaking.close();
      return { levels, outcome, state };
    });
    expect(heard.outcome).toBe('said');
    expect(heard.state).toEqual({ voice: 'embedded', saying: null });
    expect(heard.levels.saying).toBeGreaterThan(0.05);
    expect(heard.levels.silent).toBe(0);
  });

  test('falls silent in the turn of a hush', async () => {
    const after = await page.evaluate(async () => {
      const bench = window.speakingBench;
      const speaking = bench.open({});
      await speaking.unlock();
      const outcomes = [
        speaking.say({ text: 'caution. the cooler holds hot oil' }),
        speaking.say({ text: 'stud one' }),
      ];
      await bench.until(() => bench.level() > 0.02, 'sound');
      speaking.hush();
      const saying = speaking.state.saying;
      await new Promise((resolve) => setTimeout(resolve, 100));
      const level = bench.level();
      const result = { saying, level, outcomes: await Promise.all(outcomes) };
      await speaking.close();
      return result;
    });
    expect(after).toEqual({ saying: null, level: 0, outcomes: ['cut short', 'cut short'] });
  });

  test('makes no sound when it is hushed by the very news that it will', async () => {
    const after = await page.evaluate(async () => {
      const bench = window.speakingBench;
      const speaking = bench.open({});
      await speaking.unlock();
      speaking.subscribe(({ saying }) => saying !== null && speaking.hush());
      const outcome = await speaking.say({ text: 'caution. the cooler holds hot oil' });
      let loudest = 0;
      const meter = setInterval(() => (loudest = Math.max(loudest, bench.level())), 20);
      await new Promise((resolve) => setTimeout(resolve, 500));
      clearInterval(meter);
      await speaking.close();
      return { outcome, loudest };
    });
    expect(after).toEqual({ outcome: 'cut short', loudest: 0 });
  });

  test('lets an urgent announcement cut in', async () => {
    const said = await page.evaluate(async () => {
      const bench = window.speakingBench;
      const speaking = bench.open({});
      const sounded: string[] = [];
      speaking.subscribe(({ saying }) => saying !== null && sounded.push(saying));
      await speaking.unlock();
      const first = speaking.say({ text: 'free the nuts in the order of the manual' });
      await bench.until(() => bench.level() > 0.02, 'sound');
      const second = speaking.say({ text: 'stop', urgent: true });
      const outcomes = await Promise.all([first, second]);
      await speaking.close();
      return { sounded, outcomes };
    });
    expect(said.outcomes).toEqual(['cut short', 'said']);
    expect(said.sounded).toEqual(['free the nuts in the order of the manual', 'stop']);
  });
});

describe('a voice that does not work', () => {
  test('a browser without system voices gets the embedded one, and is told why', async () => {
    const { state, outcome } = await page.evaluate(async () => {
      const speaking = window.speakingBench.open({ prefer: 'system' });
      await speaking.unlock();
      const outcome = await speaking.say({ text: 'one' });
      const { state } = speaking;
      await speaking.close();
      return { state, outcome };
    });
    expect(outcome).toBe('said');
    expect(state.voice).toBe('embedded');
    expect(state.why).toBe("The system's voice is not used: no local English voice was found within 2000 ms.");
  });

  test('a missing voice file leaves tones, is told of, and the queue goes on', async () => {
    const { state, outcomes, loudest } = await page.evaluate(async () => {
      const bench = window.speakingBench;
      const speaking = bench.open({ wasmUrl: '/speaking/no-such-voice.wasm' });
      await speaking.unlock();
      let loudest = 0;
      const meter = setInterval(() => (loudest = Math.max(loudest, bench.level())), 20);
      const outcomes = await Promise.all([speaking.say({ text: 'stud one' }), speaking.say({ text: 'stud six' })]);
      clearInterval(meter);
      const { state } = speaking;
      await speaking.close();
      return { state, outcomes, loudest };
    });
    expect(state.voice).toBe('tones');
    expect(state.why).toMatch(/^The embedded voice is not used: the voice file (is not WebAssembly|cannot be fetched)/);
    expect(outcomes).toEqual(['toned', 'toned']);
    expect(loudest).toBeGreaterThan(0.05);
  });
});

test('an interrupted output makes the announcement silent, not stuck, and a new gesture brings the voice back', async () => {
  const { interrupted, back, afterClose } = await page.evaluate(async () => {
    const bench = window.speakingBench;
    const speaking = bench.open({});
    await speaking.unlock();
    const first = speaking.say({ text: 'caution. the cooler holds hot oil' });
    await bench.until(() => bench.level() > 0.02, 'sound');
    await bench.interrupt();
    const interrupted = { outcome: await first, state: speaking.state };
    await speaking.unlock();
    const back = { outcome: await speaking.say({ text: 'stud one' }), state: speaking.state };
    await speaking.close();
    const afterClose = await speaking.say({ text: 'stud two' });
    return { interrupted, back, afterClose };
  });
  expect(interrupted.outcome).toBe('silent');
  expect(interrupted.state).toEqual({
    voice: 'embedded',
    saying: null,
    why: 'The sound output was interrupted: touch the screen once.',
  });
  expect(back).toEqual({ outcome: 'said', state: { voice: 'embedded', saying: null } });
  expect(afterClose).toBe('cut short');
});

test('each signal is heard', async () => {
  const levels = await page.evaluate(async () => {
    const bench = window.speakingBench;
    const speaking = bench.open({});
    await speaking.unlock();
    const levels: number[] = [];
    for (const kind of ['heard', 'logged', 'question', 'stop'] as const) {
      void speaking.tone(kind);
      await bench.until(() => bench.level() > 0.02, kind);
      levels.push(bench.level());
      await bench.until(() => bench.level() === 0, `the end of ${kind}`);
    }
    await speaking.close();
    return levels;
  });
  expect(levels).toHaveLength(4);
});
