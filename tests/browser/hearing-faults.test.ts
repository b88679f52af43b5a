import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { openBrowser, type Browser } from '../support/chromium.ts';
import type { Sound } from '../support/hearing-bench.ts';
import { benchPage, toyModel } from '../support/hearing-page.ts';

// The real engine with a model of 1.2 KB that hears “one” wherever it is loud: needs no recordings.
const RATE = 16_000;

/** Seconds of quiet and of loud noise, in turn. */
function noises(...seconds: readonly number[]): Sound {
  const samples = seconds.flatMap((length, at) =>
    Array.from({ length: Math.round(length * RATE) }, (_, i) => (at % 2 === 0 ? 4 : 12_000) * Math.sin(i * i)),
  );
  return { rate: RATE, base64: Buffer.from(Int16Array.from(samples).buffer).toString('base64') };
}

describe('an engine with the toy model', () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await benchPage(browser.context, inject('modulesUrl'));
    await page.evaluate(async (base64) => {
      const { hearing } = hearingBench.ear();
      const outcome = await hearing.loadModel(hearingBench.fileOf('toy.tar.gz', base64));
      if (!outcome.ok) throw new Error(outcome.failure.detail);
      await hearing.close();
    }, toyModel().toString('base64'));
  });
  afterAll(() => browser.close());

  test.each(['killed', 'aborted'] as const)(
    'that is %s while somebody speaks hears the utterance all the same, and once',
    async (end) => {
      const { texts, starts, codes } = await page.evaluate(
        async ({ sound, end }) => {
          const { listeningEar, recording, samplesOf, pause, until } = hearingBench;
          const workers: Worker[] = [];
          const RealWorker = globalThis.Worker;
          globalThis.Worker = class extends RealWorker {
            constructor(url: string | URL, options?: WorkerOptions) {
              super(url, options);
              workers.push(this);
            }
          };
          const source = recording(samplesOf(sound), sound.rate, 'real time');
          const { hearing, utterances, states } = await listeningEar(['one'], { source });
          const begun = performance.now();
          await until('the first utterance', () => utterances.length === 1);
          // In the middle of the second.
          await pause(begun + 3_400 - performance.now());
          if (end === 'killed') workers[0]?.terminate();
          // Kaldi ends itself at what is no number, as it does where memory runs out.
          else
            workers[0]?.postMessage({
              action: 'audioChunk',
              recognizerId: 'recogniser-2',
              data: new Float32Array(2048).fill(NaN),
              sampleRate: sound.rate,
            });
          await source.finished;
          await hearing.close();
          globalThis.Worker = RealWorker;
          return {
            texts: utterances.map(({ text }) => text),
            starts: utterances.map(({ words }) => ((words[0]?.start ?? 0) - begun) / 1000),
            codes: states.flatMap((state) => (state.kind === 'failed' ? [state.failure.code] : [])),
          };
        },
        { sound: noises(1, 0.5, 1.5, 0.8, 5), end },
      );
      expect(codes).toEqual(['engine stopped']);
      expect(texts).toEqual(['one', 'one']);
      // And where it was spoken: 1 s, and 3 s after the beginning.
      expect((starts[1] ?? 0) - (starts[0] ?? 0)).toBeGreaterThan(1.5);
      expect((starts[1] ?? 0) - (starts[0] ?? 0)).toBeLessThan(2.5);
    },
  );

  test.each([8_000, 16_000, 44_100, 48_000])('hears through a microphone of %i Hz', async (rate) => {
    const { texts, sampleRate } = await page.evaluate(
      async ({ sound, rate }) => {
        const { listeningEar, microphone, SoundStream, pause, until } = hearingBench;
        const stream = new SoundStream();
        const source = microphone({
          openContext: () => new AudioContext({ sampleRate: rate }),
          getStream: () => Promise.resolve(stream.open()),
        });
        let sampleRate = 0;
        const { hearing, utterances } = await listeningEar(['one'], {
          source: {
            open: async (sink) => {
              const opened = await source.open(sink);
              sampleRate = opened.sampleRate;
              return opened;
            },
          },
        });
        await pause(500);
        await stream.play(sound);
        await until('the utterance', () => utterances.length > 0).catch(() => undefined);
        await hearing.close();
        return {
          texts: utterances.map(({ text }) => text),
          sampleRate,
        };
      },
      { sound: noises(0.3, 0.5, 1), rate },
    );
    expect(texts).toEqual(['one']);
    expect(sampleRate).toBe(Math.max(rate, 16_000));
  });
});
