import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Sound, Utterance } from '../support/hearing-bench.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { benchPage, joined, keepRealModel, recordingsAbsent, secondsOf, spoken } from '../support/hearing-page.ts';
import { COMMANDS, DIGITS, NUMBERS } from '../support/hearing-phrases.ts';

// Recordings of people the model was never trained on, decoded by the real engine with the embedded model.
if (recordingsAbsent) console.warn(`Speech is not tested: ${recordingsAbsent}.`);

/** Seconds of near-silence around each clip. */
const GAP = 0.9;

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await benchPage(browser.context, inject('modulesUrl'));
  await keepRealModel(page);
});
afterAll(() => browser.close());

/** Where each clip begins and ends in the joined sound, in seconds. */
function placesOf(sounds: readonly Sound[]): { readonly from: number; readonly to: number }[] {
  let at = 0;
  return sounds.map((sound) => {
    const from = at + GAP;
    at = from + secondsOf(sound);
    return { from, to: at };
  });
}

/** The words heard within each clip; a word outside all clips is an error of the times. */
function heardIn(sounds: readonly Sound[], utterances: readonly Utterance[], begun: number): string[] {
  const places = placesOf(sounds);
  const heard = places.map((): string[] => []);
  for (const { word, start, end } of utterances.flatMap(({ words }) => words)) {
    const [from, to] = [(start - begun) / 1000, (end - begun) / 1000];
    const clip = places.findIndex((place) => from > place.from - 0.1 && to < place.to + 0.1);
    if (clip < 0) throw new Error(`“${word}” at ${from} … ${to} s is in no clip.`);
    heard[clip]?.push(word);
  }
  return heard.map((words) => words.join(' '));
}

describe.skipIf(recordingsAbsent)('recordings of people', () => {
  test('come back as the words that were said, each in its place, with a confidence', async () => {
    // Clips that the model hears right, so that a difference is ours; how often it does is measured elsewhere.
    const clips = spoken(
      ...['an4_cen3-fjlp-b', 'an4_an418-fjlp-b', 'an4_cen6-mjgm-b', 'an4_cen3-marh-b', 'an4_an402-mdms2-b'],
      ...['an4_an440-mjgm-b', 'an4_an442-mmxg-b', 'string_15', 'string_24', 'an4_cen6-marh-b', 'an4_cen7-mmxg-b'],
    );
    const sounds = clips.map(({ sound }) => sound);
    const sound = joined(sounds, GAP);
    const { utterances, begun, took, missing } = await page.evaluate(
      async ({ sound, phrases }) => {
        const source = hearingBench.recording(hearingBench.samplesOf(sound), sound.rate, 'fast');
        const { hearing, utterances } = await hearingBench.listeningEar(phrases, { source });
        const begun = performance.now();
        const missing = hearing.setPhrases([...phrases, 'stud zzyzx', 'ZZYZX']);
        await source.finished;
        const took = performance.now() - begun;
        await hearing.close();
        return { utterances, begun, took, missing };
      },
      { sound, phrases: [...NUMBERS, ...COMMANDS] },
    );
    console.log(`decoding takes ${(took / 1000 / secondsOf(sound)).toFixed(3)} of real time`);
    expect(heardIn(sounds, utterances, begun)).toEqual(clips.map(({ transcript }) => transcript));
    for (const { text, words } of utterances) {
      expect(text).toBe(words.map(({ word }) => word).join(' '));
      for (const { confidence } of words) {
        expect(confidence).toBeGreaterThan(0);
        expect(confidence).toBeLessThanOrEqual(1);
      }
    }
    expect(missing).toEqual(['zzyzx']);
  });

  test('a word that no phrase has is unknown speech, not the nearest phrase', async () => {
    const clips = spoken('pvsi_0334e17c-b72f-4e1a-ba76-0bb6c110ef94');
    const texts = await page.evaluate(
      async (sound) => {
        const source = hearingBench.recording(hearingBench.samplesOf(sound), sound.rate, 'fast');
        const { hearing, utterances } = await hearingBench.listeningEar(['confirm', 'disregard'], { source });
        await source.finished;
        await hearing.close();
        return utterances.map(({ text }) => text);
      },
      joined(
        clips.map(({ sound }) => sound),
        GAP,
      ),
    );
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text.split(' ')).toContain('[unk]');
  });

  test('a list that changes while somebody speaks cuts nothing in two, doubles nothing, and keeps the time', async () => {
    const clips = spoken(
      ...[
        'an4_cen6-mjgm-b',
        'an4_an418-fjlp-b',
        'an4_cen6-marh-b',
        'an4_cen3-marh-b',
        'an4_cen6-fjlp-b',
        'an4_cen3-fjlp-b',
      ],
    );
    const sounds = clips.map(({ sound }) => sound);
    // Six lists for three recognisers. Some words are not in the list they begin under, but in the one they end under.
    const lists = [
      DIGITS,
      [...NUMBERS, 'enter'],
      [...DIGITS, 'yes'],
      [...NUMBERS, 'stop'],
      [...DIGITS, 'stop'],
      NUMBERS,
    ];
    const { utterances, begun, switches } = await page.evaluate(
      async ({ sound, lists }) => {
        const source = hearingBench.recording(hearingBench.samplesOf(sound), sound.rate, 'fast');
        const { hearing, utterances } = await hearingBench.listeningEar(lists[0] ?? [], { source });
        const begun = performance.now();
        let switches = 0;
        let speaking = false;
        hearing.subscribe(({ kind }) => {
          // The first clip is heard under the first list; each later one begins under the list of the one before.
          if (kind === 'hearing' && !speaking && utterances.length > switches) {
            hearing.setPhrases(lists[++switches] ?? []);
          }
          speaking = kind === 'hearing';
        });
        await source.finished;
        await hearing.close();
        return { utterances, begun, switches };
      },
      { sound: joined(sounds, GAP), lists },
    );
    expect(switches).toBe(5);
    expect(heardIn(sounds, utterances, begun)).toEqual(clips.map(({ transcript }) => transcript));
  });

  test('what is still being decoded when the list changes is delivered once, under one of the two', async () => {
    const [clip] = spoken('an4_cen6-mjgm-b');
    const texts = await page.evaluate(
      async ({ sound, lists }) => {
        const source = hearingBench.burst(hearingBench.samplesOf(sound), sound.rate);
        const { hearing, utterances } = await hearingBench.listeningEar(lists[0] ?? [], { source });
        source.pour();
        for (const list of lists.slice(1)) hearing.setPhrases(list);
        await source.end();
        await hearing.close();
        return utterances.map(({ text }) => text);
      },
      { sound: joined(clip ? [clip.sound] : [], GAP), lists: [DIGITS, COMMANDS, NUMBERS] },
    );
    expect(texts).toEqual([clip?.transcript]);
  });

  test('sound that is no number ends nothing: the engine goes on', async () => {
    const [clip] = spoken('an4_an440-mjgm-b');
    const texts = await page.evaluate(
      async (sound) => {
        const samples = hearingBench.samplesOf(sound);
        samples.fill(NaN, 0, 2000);
        samples.fill(Infinity, 3000, 4000);
        const source = hearingBench.recording(samples, sound.rate, 'fast');
        const { hearing, utterances, levels } = await hearingBench.listeningEar(['stop', 'go'], { source });
        await source.finished;
        await hearing.close();
        if (levels.some(Number.isNaN)) throw new Error('A level is no number.');
        return utterances.map(({ text }) => text);
      },
      joined([clip?.sound ?? { base64: '', rate: 16_000 }], GAP),
    );
    expect(texts).toEqual(['stop']);
  });
});
