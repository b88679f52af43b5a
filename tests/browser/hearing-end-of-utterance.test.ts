import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { SituationName } from '../../src/language/named-situations.ts';
import type { Utterance } from '../support/hearing-bench.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { benchPage, keepRealModel } from '../support/hearing-page.ts';
import { join, silence, synthesise, type Sound } from '../support/speech.ts';

// What is said at a moment of a job, by the embedded voice, to the real engine: which utterances come out of it.

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await benchPage(browser.context, inject('modulesUrl'));
  await keepRealModel(page);
});
afterAll(() => browser.close());

const say = (text: string): Promise<Sound> => synthesise(text, { voice: 'rms' });
/** The voice brings some quiet of its own at both ends: up to so much. In milliseconds. */
const OWN_QUIET = 250;

/** Nobody speaks for a while, in milliseconds. */
const room = (ms: number): Sound => silence(ms, 16_000);
/** Noise of a room, which is there under the voice, too: exact zeros are no room. */
const noise = (at: number): number => 2e-4 * Math.sin(at * at);

/** All in milliseconds after the last word. `shown`: when it was shown before; null where it was not. */
interface At {
  readonly text: string;
  readonly waited: number;
  readonly shown: number | null;
}

/** The utterances, whose words must be in order of time, with how long after its last word each was delivered, in milliseconds of the recording. */
async function heardAt(name: SituationName, ...sounds: readonly Sound[]): Promise<At[]> {
  const { samples, rate } = join(room(600), ...sounds, room(2500));
  const pcm = Buffer.alloc(samples.length * 2);
  samples.forEach((sample, i) =>
    pcm.writeInt16LE(Math.round(Math.max(-1, Math.min(1, sample + noise(i))) * 32767), i * 2),
  );
  await page.evaluate(
    `globalThis.language = Promise.all(['completeness', 'phrases', 'situation', 'named-situations'].map((name) => import('/language/' + name + '.ts')))`,
  );
  return page.evaluate(
    async ({ name, base64, rate }) => {
      const language = (
        globalThis as unknown as { language: Promise<readonly Record<string, (...of: unknown[]) => unknown>[]> }
      ).language;
      const [completeness, phrases, situations, named] = await language;
      const situation = situations?.['situationOf']?.(named?.['stateIn']?.(name));
      const list = phrases?.['recogniserPhrases']?.(situation) as readonly string[];
      const judge = completeness?.['judgeIn']?.(situation) as Parameters<
        ReturnType<typeof hearingBench.createHearing>['setPhrases']
      >[1];
      let fed = 0;
      const inner = hearingBench.recording(hearingBench.samplesOf({ base64, rate }), rate, 'fast');
      const source: typeof inner = {
        finished: inner.finished,
        open: (sink) =>
          inner.open({
            ...sink,
            lost: (cause) => sink.lost(cause),
            recovered: () => sink.recovered(),
            end: () => sink.end(),
            chunk: (chunk) => {
              fed = chunk.time + (chunk.samples.length / rate) * 1000;
              return sink.chunk(chunk);
            },
          }),
      };
      const { hearing } = await hearingBench.listeningEar(list, { source });
      hearing.setPhrases(list, judge);
      const heard: At[] = [];
      const disorder: string[] = [];
      let shown: { text: string; waited: number } | null = null;
      hearing.onProvisional((utterance) => {
        shown = utterance && { text: utterance.text, waited: fed - (utterance.words.at(-1)?.end ?? NaN) };
      });
      hearing.onUtterance(({ text, words }: Utterance) => {
        const times = words.flatMap(({ start, end }) => [start, end]);
        if (times.some((time, i) => time < (times[i - 1] ?? -Infinity))) disorder.push(`“${text}”: ${times.join(' ')}`);
        const waited = fed - (words.at(-1)?.end ?? NaN);
        heard.push({ text, waited, shown: shown?.text === text ? shown.waited : null });
        shown = null;
      });
      await source.finished;
      await hearing.close();
      if (disorder.length > 0) throw new Error(`The words are not in order of time: ${disorder.join('; ')}`);
      return heard;
    },
    { name, base64: pcm.toString('base64'), rate },
  );
}

const textsOf = (heard: readonly { readonly text: string }[]): readonly string[] => heard.map(({ text }) => text);

describe('an utterance ends', () => {
  test('at once after a command that can go on nowhere: before the engine would end it', async () => {
    const [affirm, ...others] = await heardAt('confirm', await say('affirm'));
    expect(others).toEqual([]);
    expect(affirm?.text).toBe('affirm');
    // The engine alone waits half a second for silence, and 0.23 s for what follows a sound.
    expect(affirm?.waited).toBeLessThan(500);
  });
  test('once: the sound that follows an early decision is not the same command again', async () => {
    expect(textsOf(await heardAt('step', await say('next'), room(300), await say('go back')))).toEqual([
      'next',
      'go back',
    ]);
  });
  // With the quiet that the voice brings along, some 0.8 s: the engine alone makes two utterances of it.
  test('not in a pause inside a number', async () => {
    const heard = await heardAt('reading', await say('one two'), room(350), await say('point five'));
    expect(textsOf(heard)).toEqual(['one two point five']);
  });
  test('not in a short pause either, and every word is heard once', async () => {
    const heard = await heardAt('reading', await say('two'), room(50), await say('four point five'));
    expect(textsOf(heard)).toEqual(['two four point five']);
  });
  test('after digits, when nobody goes on', async () => {
    const heard = await heardAt('reading', await say('one two'), room(1500 + OWN_QUIET), await say('affirm'));
    expect(textsOf(heard)[0]).toBe('one two');
    // Until then it may go on: it is shown half a second before.
    expect(heard[0]?.shown).toBeLessThan((heard[0]?.waited ?? 0) - 400);
    expect(heard.length).toBeLessThanOrEqual(2);
  });
  test('not with a command word that others follow: the whole is other talk', async () => {
    const heard = await heardAt('confirm', await say('negative people affirm the stand'));
    for (const text of textsOf(heard)) expect(text.split(' ').length).toBeGreaterThan(1);
  });
});
