import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, fakeMicrophone, openBrowser, type Browser } from '../support/chromium.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { join, resample, silence, synthesise, type Sound } from '../support/speech.ts';
import { writeWav } from '../support/wav.ts';

// Chromium's own made-up microphone plays one recording from the moment it is opened, whatever the app does: the pauses
// are long enough for every announcement. The speech is synthetic, so that this runs on any machine.
const SCRIPT: readonly (readonly [pauseBefore: number, words: string])[] = [
  [20, 'next'],
  [18, 'one two'],
  [8, 'affirm'],
  [7, 'one two point five'],
  [9, 'negative'],
  [7, 'one one point five'],
  [9, 'affirm'],
  [7, 'one two'],
  [8, 'affirm'],
  [9, 'next'],
];
/** What the made-up device runs at: nothing is resampled on the way. */
const DEVICE_RATE = 44_100;

let folder: string;
let browser: Browser;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bothhands-voice-'));
  const wav = path.join(folder, 'job.wav');
  await writeWav(wav, await spokenScript());
  await writeFile(path.join(folder, 'small.json'), JSON.stringify(smallProcedure));
  browser = await openBrowser([...FAKE_DEVICES, fakeMicrophone(wav)]);
});
afterAll(async () => {
  await browser.close();
  await rm(folder, { recursive: true, force: true });
});

async function spokenScript(): Promise<Sound> {
  const parts: Sound[] = [];
  for (const [pause, words] of SCRIPT) {
    const speech = resample(await synthesise(words, { voice: 'rms' }), DEVICE_RATE);
    parts.push(silence(pause * 1000, DEVICE_RATE), speech);
  }
  return roomTone(join(silence(500, DEVICE_RATE), ...parts, silence(5000, DEVICE_RATE)));
}

/** Exact zeros are what a dead microphone sends; a room is never that quiet. */
const roomTone = ({ samples, rate }: Sound): Sound => ({
  samples: samples.map((sample, at) => sample + 2e-4 * Math.sin(at * at)),
  rate,
});

test('a whole job runs from a microphone that nothing but the browser feeds', { timeout: 240_000 }, async () => {
  const app = await AppPage.open(browser.context, inject('appUrl'));
  // The microphone starts with the session, so the ear must be ready by then.
  await app.page.getByText(/^In use: .*tar\.gz/).waitFor();
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Open a procedure file').setInputFiles(path.join(folder, 'small.json'));
  await app.page.getByText('All steps are done').waitFor({ timeout: 180_000 });

  const entries = await app.entries();
  expect(
    ofKind(entries, 'reading captured').map(({ body }) => [body.fastener, body.reading.value, body.verdict]),
  ).toEqual([
    [1, '12', 'in'],
    [3, '12.5', 'in'],
    [3, '11.5', 'in'],
    [2, '12', 'in'],
  ]);
  expect(ofKind(entries, 'reading rejected')).toHaveLength(1);
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(3);
  expect(entries.slice(1).every(({ source }) => source === 'voice')).toBe(true);
  expect(entries.at(-1)?.body.kind).toBe('closed');
});
