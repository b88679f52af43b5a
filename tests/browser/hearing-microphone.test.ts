import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, afterEach, describe, expect, inject, test } from 'vitest';
import { FAKE_DEVICES, fakeMicrophone, openBrowser, type Browser } from '../support/chromium.ts';
import { benchPage, joined, keepRealModel, recordingsAbsent, spoken, wavOf } from '../support/hearing-page.ts';
import { COMMANDS, NUMBERS } from '../support/hearing-phrases.ts';

const phrases = [...NUMBERS, ...COMMANDS];

describe.skipIf(recordingsAbsent)('speech through a microphone', () => {
  let browser: Browser;
  let page: Page;
  let folder: string;

  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'bothhands-'));
    const wav = path.join(folder, 'microphone.wav');
    await writeFile(wav, wavOf(joined(clip('an4_cen6-mjgm-b'), 0.9), 0.5));
    browser = await openBrowser([...FAKE_DEVICES, fakeMicrophone(wav)]);
    await browser.context.grantPermissions(['microphone']);
    page = await benchPage(browser.context, inject('modulesUrl'));
    await keepRealModel(page);
  });
  afterAll(async () => {
    await browser.close();
    await rm(folder, { recursive: true, force: true });
  });

  const clip = (name: string) => spoken(name).map(({ sound }) => sound);

  test('is heard from the browser’s own device, and its exact zeros afterwards are told', async () => {
    const { texts, kinds, loudest, code } = await page.evaluate(async (phrases) => {
      const source = hearingBench.microphone({ silentAfter: 1000 });
      const { hearing, utterances, states, levels } = await hearingBench.listeningEar(phrases, { source });
      await hearingBench.until('an utterance', () => utterances.length > 0);
      await hearingBench.until('the silence to be noticed', () => hearing.state.kind === 'failed');
      const code = hearing.state.kind === 'failed' ? hearing.state.failure.code : '';
      await hearing.close();
      return {
        texts: utterances.map(({ text }) => text),
        kinds: states.map(({ kind }) => kind),
        loudest: Math.max(...levels),
        code,
      };
    }, phrases);
    expect(texts).toEqual(['one five two two four']);
    expect(kinds).toEqual(expect.arrayContaining(['loading', 'listening', 'hearing', 'failed']));
    expect(loudest).toBeGreaterThan(-40);
    expect(loudest).toBeLessThan(0);
    expect(code).toBe('microphone silent');
  });

  test('what overlaps a mute is not delivered, not even half; afterwards it hears afresh', async () => {
    const [stop, yes, number] = spoken('an4_an440-mjgm-b', 'an4_an442-mmxg-b', 'an4_cen6-mjgm-b').map(
      ({ sound }) => sound,
    );
    if (!stop || !yes || !number) throw new Error('A recording is missing.');
    const { texts, muted, delay, ended } = await page.evaluate(
      async ({ stop, yes, number, phrases }) => {
        const { microphone, SoundStream, listeningEar, pause, until } = hearingBench;
        const stream = new SoundStream();
        const source = microphone({ getStream: () => Promise.resolve(stream.open()) });
        const { hearing, utterances, states } = await listeningEar(phrases, { source });
        const muted: string[] = [];
        const note = () => muted.push(hearing.state.kind === 'muted' ? hearing.state.why : hearing.state.kind);
        await pause(500);

        // Whole inside the mute, with two reasons of which one stays.
        hearing.mute('own voice');
        note();
        hearing.mute('asked');
        note();
        await stream.play(stop);
        hearing.unmute('own voice');
        note();
        hearing.unmute('asked');
        note(); // The tail of the own voice still holds.
        await until('the tail to end', () => hearing.state.kind === 'listening');

        // Begun before the mute, and cut by it.
        const playing = stream.play(number);
        await until('speech', () => hearing.state.kind === 'hearing');
        hearing.mute('asked');
        await playing;
        hearing.unmute('asked');
        note();
        await pause(800);

        await stream.play(yes);
        const ended = performance.now();
        await until('the utterance', () => utterances.length > 0);
        const [first] = utterances;
        const delay = (first?.arrived ?? 0) - (first?.words.at(-1)?.end ?? 0);
        await hearing.close();
        return { texts: utterances.map(({ text }) => text), muted, delay, ended, states };
      },
      { stop, yes, number, phrases },
    );
    expect(muted).toEqual(['own voice', 'asked', 'asked', 'own voice', 'listening']);
    expect(texts).toEqual(['yes']);
    expect(ended).toBeGreaterThan(0);
    console.log(`from the end of the last word to the utterance: ${Math.round(delay)} ms`);
  });

  test('word times are those of the clock, also after a mute', async () => {
    const [sound] = clip('an4_an442-mmxg-b');
    if (!sound) throw new Error('A recording is missing.');
    const offsets = await page.evaluate(
      async ({ sound, phrases }) => {
        const { microphone, SoundStream, listeningEar, pause, until } = hearingBench;
        const stream = new SoundStream();
        const source = microphone({ getStream: () => Promise.resolve(stream.open()) });
        const { hearing, utterances } = await listeningEar(phrases, { source });
        await pause(700);
        const offsets: number[] = [];
        for (const muteFor of [2000, 0]) {
          const begun = performance.now();
          await stream.play(sound);
          await until('the utterance', () => utterances.length > offsets.length);
          offsets.push((utterances.at(-1)?.words[0]?.start ?? 0) - begun);
          hearing.mute('asked');
          await pause(muteFor);
          hearing.unmute('asked');
          await pause(300);
        }
        await hearing.close();
        return offsets;
      },
      { sound, phrases },
    );
    // “Yes” begins 0.09 s into this recording; a busy machine starts to play it some tenths of a second later. A mute that
    // were lost from the clock would be two seconds.
    for (const offset of offsets) expect(Math.abs(offset - 90)).toBeLessThan(900);
  });

  test('a stopped track shows as silence, is taken up again by itself, and is heard', async () => {
    const [sound] = clip('an4_an442-mmxg-b');
    if (!sound) throw new Error('A recording is missing.');
    const { texts, codes } = await page.evaluate(
      async ({ sound, phrases }) => {
        const { microphone, SoundStream, listeningEar, until } = hearingBench;
        const stream = new SoundStream();
        const opened: MediaStream[] = [];
        const getStream = () => {
          opened.push(stream.open());
          return Promise.resolve(opened.at(-1) ?? new MediaStream());
        };
        const source = microphone({ silentAfter: 800, getStream });
        const { hearing, utterances, states } = await listeningEar(phrases, { source });
        for (const lose of [
          // The browser fires nothing of its own for this one.
          (track: MediaStreamTrack) => track.stop(),
          // What a browser does when a microphone is unplugged.
          (track: MediaStreamTrack) => track.stop() ?? track.dispatchEvent(new Event('ended')),
        ]) {
          const before = opened.length;
          const lost = () => states.filter(({ kind }) => kind === 'failed').length;
          const lostBefore = lost();
          opened.at(-1)?.getAudioTracks().forEach(lose);
          // It may be taken up again before anybody looks.
          await until('the loss', () => lost() > lostBefore);
          await until('the return', () => hearing.state.kind === 'listening' && opened.length > before);
        }
        await stream.play(sound);
        await until('the utterance', () => utterances.length > 0);
        await hearing.close();
        return {
          texts: utterances.map(({ text }) => text),
          codes: states.flatMap((state) => (state.kind === 'failed' ? [state.failure.code] : [])),
        };
      },
      { sound, phrases },
    );
    expect(codes).toEqual(['microphone silent', 'microphone lost']);
    expect(texts).toEqual(['yes']);
  });

  test('an engine that dies is noticed, started again from the kept model, and hears', async () => {
    const [sound] = clip('an4_an442-mmxg-b');
    if (!sound) throw new Error('A recording is missing.');
    const { texts, kinds, code } = await page.evaluate(
      async ({ sound, phrases }) => {
        const { microphone, SoundStream, listeningEar, pause, until } = hearingBench;
        const stream = new SoundStream();
        const workers: Worker[] = [];
        const RealWorker = globalThis.Worker;
        globalThis.Worker = class extends RealWorker {
          constructor(url: string | URL, options?: WorkerOptions) {
            super(url, options);
            workers.push(this);
          }
        };
        const source = microphone({ getStream: () => Promise.resolve(stream.open()) });
        const { hearing, utterances, states } = await listeningEar(phrases, { source, watchdog: 1500 });
        globalThis.Worker = RealWorker;
        await pause(300);
        states.length = 0;
        workers[0]?.terminate();
        await until('the death to be noticed', () => states.some(({ kind }) => kind === 'failed'));
        const dead = states.find((state) => state.kind === 'failed');
        await until('the return', () => hearing.state.kind === 'listening');
        await stream.play(sound);
        await until('the utterance', () => utterances.length > 0);
        await hearing.close();
        return {
          texts: utterances.map(({ text }) => text),
          kinds: states.map(({ kind }) => kind),
          code: dead?.failure.code,
        };
      },
      { sound, phrases },
    );
    expect(code).toBe('engine stopped');
    expect(kinds.slice(0, 3)).toEqual(['failed', 'loading', 'listening']);
    expect(texts).toEqual(['yes']);
  });
});

describe('a microphone that cannot be had', () => {
  let browser: Browser;
  let page: Page;
  beforeEach(async () => {
    browser = await openBrowser(['--use-fake-device-for-media-stream']);
    page = await benchPage(browser.context, inject('modulesUrl'));
  });
  afterEach(() => browser.close());

  test('refused: the state says so, and it is taken up when it is allowed', async () => {
    const refused = await page.evaluate(async () => {
      const { hearing } = hearingBench.sharedEar();
      await hearing.listen();
      return hearing.state;
    });
    expect(refused).toMatchObject({ kind: 'failed', failure: { code: 'microphone refused' } });

    await browser.context.grantPermissions(['microphone']);
    const later = await page.evaluate(async () => {
      const { hearing, levels } = hearingBench.sharedEar();
      await hearingBench.until('sound', () => hearing.state.kind === 'off' && levels.some((level) => level > -60));
      await hearing.close();
      return hearing.state;
    });
    expect(later).toEqual({ kind: 'off' });
  });

  test('absent: the state says so, and it is taken up when one is plugged in', async () => {
    await browser.context.grantPermissions(['microphone']);
    const states = await page.evaluate(async () => {
      let device: string | null = 'none of that name';
      const source = hearingBench.microphone({
        getStream: () =>
          navigator.mediaDevices.getUserMedia({ audio: device ? { deviceId: { exact: device } } : true }),
      });
      const { hearing, levels } = hearingBench.ear({ source });
      await hearing.listen();
      const absent = hearing.state;
      device = null;
      navigator.mediaDevices.dispatchEvent(new Event('devicechange'));
      await hearingBench.until('sound', () => levels.some((level) => level > -60));
      const later = hearing.state;
      await hearing.close();
      return [absent, later];
    });
    expect(states).toMatchObject([{ kind: 'failed', failure: { code: 'microphone absent' } }, { kind: 'off' }]);
  });
});
