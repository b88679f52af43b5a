import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { spokenWords } from '../../src/language/hush.ts';
import { scalePeak } from '../../src/speaking/sound.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import type { Sound as PageSound } from '../support/hearing-bench.ts';
import { benchPage, keepRealModel } from '../support/hearing-page.ts';
import { join, silence, synthesise, type Sound } from '../support/speech.ts';

// The real engine, with the app's own voice at full volume in its microphone. What it plays it is told, as in the app.
const ANNOUNCEMENT = 'Logged. Next, stud six, two four point five newton metres. Say affirm when it stands.';

const base64Of = ({ samples, rate }: Sound): PageSound => ({
  rate,
  base64: Buffer.from(Int16Array.from(samples, (sample) => sample * 32_767).buffer).toString('base64'),
});

/** One sound over another, from this time on, in seconds. */
function mixed(under: Sound, over: Sound, from: number): Sound {
  const at = Math.round(from * under.rate);
  return {
    rate: under.rate,
    samples: under.samples.map((sample, i) => Math.max(-1, Math.min(1, (sample + (over.samples[i - at] ?? 0)) / 2))),
  };
}

describe('the app’s own voice', () => {
  let browser: Browser;
  let page: Page;
  let announcement: Sound;
  beforeAll(async () => {
    browser = await openBrowser();
    page = await benchPage(browser.context, inject('modulesUrl'));
    await keepRealModel(page);
    const quiet = silence(300, 16_000);
    announcement = join(quiet, scalePeak(await synthesise(ANNOUNCEMENT, { voice: 'kal16' }), 0.9), quiet);
  });
  afterAll(() => browser.close());

  /** What is hushed and heard while this sounds, and a command after it. */
  const listen = (sound: Sound, played: Sound, words: readonly string[], hush: readonly string[] = ['stop']) =>
    page.evaluate(
      async ({ sound, played, words, hush }) => {
        const { ear, keptModel, recording, samplesOf, until } = hearingBench;
        const source = recording(samplesOf(sound), sound.rate, 'real time');
        const { hearing, utterances } = ear({ source });
        const kept = await keptModel();
        if (!kept) throw new Error('No model is kept.');
        // Each phrase of the list is in the announcement: were it heard, it would be a command.
        hearing.setPhrases(['next', 'affirm', 'two four point five', 'stud six', 'logged', 'stop']);
        await hearing.loadModel({ kind: 'kept', ...kept });
        const hushed: string[] = [];
        hearing.onHush((word) => void hushed.push(word));
        hearing.mute('own voice');
        hearing.saying({ words, hush });
        await hearing.listen();
        hearing.plays(samplesOf(played), played.rate, performance.now());
        await source.finished;
        const state = hearing.state;
        hearing.saying(null);
        hearing.unmute('own voice');
        await until('the ear to open', () => hearing.state.kind === 'listening');
        await hearing.close();
        return { hushed, state, heard: utterances.map(({ text }) => text) };
      },
      { sound: base64Of(sound), played: base64Of(played), words, hush },
    );

  test('is no command and hushes nobody, at full volume', async () => {
    const { hushed, state, heard } = await listen(announcement, announcement, spokenWords(ANNOUNCEMENT));
    expect(heard).toEqual([]);
    expect(hushed).toEqual([]);
    expect(state).toEqual({ kind: 'muted', why: 'own voice' });
  });

  test('is hushed by “stop” said over it, as loud as it is, and only once', async () => {
    const stop = await synthesise('stop', { voice: 'rms' });
    const over = mixed(announcement, stop, 2.2);
    const { hushed, heard } = await listen(over, announcement, spokenWords(ANNOUNCEMENT));
    expect(hushed).toEqual(['stop']);
    expect(heard).toEqual([]);
  });

  test('is hushed by “stop” said half as loud', async () => {
    const stop = await synthesise('stop', { voice: 'rms' });
    const quieter = { ...stop, samples: stop.samples.map((sample) => sample / 2) };
    const over = mixed(announcement, quieter, 2.2);
    expect((await listen(over, announcement, spokenWords(ANNOUNCEMENT))).hushed).toEqual(['stop']);
  });

  test('is not hushed by a “stop” that it says itself', async () => {
    const text = 'Stop. The two values differ. Both read again.';
    const quiet = silence(300, 16_000);
    const told = join(quiet, await synthesise(text, { voice: 'kal16' }), quiet);
    expect((await listen(told, told, spokenWords(text))).hushed).toEqual([]);
  });

  test('lets a call for help through while a weight is held, and calls nobody by itself', async () => {
    const text = 'Thirty seconds. Ports up. Three steps to the left, then down on the trolley.';
    const quiet = silence(300, 16_000);
    const told = join(quiet, scalePeak(await synthesise(text, { voice: 'kal16' }), 0.9), quiet);
    const words = ['stop', 'help'];
    expect((await listen(told, told, spokenWords(text), words)).hushed).toEqual([]);
    const help = await synthesise('help', { voice: 'awb' });
    expect((await listen(mixed(told, help, 1.7), told, spokenWords(text), words)).hushed).toEqual(['help']);
  });
});
