import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { Entry } from '../../src/record/entry.ts';
import { openSessionFile, type SessionFile } from '../../src/record/sealed-file.ts';
import { soundHash } from '../../src/record/sounds.ts';
import { decodeWav } from '../../src/speaking/wav.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

// The sound around a reading, from the consent to its deletion, with the real microphone path, ear, stores and files.

const [fit, tighten] = smallProcedure.steps;
const oneBolt = {
  ...smallProcedure,
  patterns: [
    { ...smallProcedure.patterns[0], layout: { shape: 'ring', count: 1 }, order: { kind: 'explicit', numbers: [1] } },
  ],
  steps: [fit, tighten],
};
const CONSENT = 'Everybody named here agrees';

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

async function begin(): Promise<void> {
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  const buffer = Buffer.from(JSON.stringify(oneBolt));
  const file = { name: 'one-bolt.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
}

/** What the browser keeps of sounds: the session and the hash of each. */
const soundsOnDevice = (): Promise<readonly [string, string][]> =>
  app.page.evaluate(
    () =>
      new Promise<[string, string][]>((resolve, reject) => {
        const opening = indexedDB.open('bothhands-sounds');
        opening.onupgradeneeded = () => opening.result.createObjectStore('sounds');
        opening.onerror = () => reject(new Error('The sounds cannot be opened.'));
        opening.onsuccess = () => {
          const all = opening.result.transaction('sounds').objectStore('sounds').getAllKeys();
          all.onsuccess = () => {
            opening.result.close();
            resolve(all.result as [string, string][]);
          };
        };
      }),
  );

async function savedFile(): Promise<Extract<SessionFile, { kind: 'opened' }>> {
  const [download] = await Promise.all([
    app.page.waitForEvent('download'),
    app.page.getByRole('button', { name: 'Save the sealed file' }).click(),
  ]);
  const file = await openSessionFile(readFileSync(await download.path()), { now: new Date().toISOString() });
  if (file.kind === 'refused') throw new Error(file.why);
  return file;
}

const soundOf = (entry: Entry | undefined) => {
  const sound = entry?.heard?.sound;
  if (!sound?.kept) throw new Error(`No sound was kept: ${JSON.stringify(entry?.heard)}`);
  return sound;
};

/** Root mean square of the part of a sound between two moments (RFC 3339), where its beginning is one. */
function loudness(wav: Uint8Array<ArrayBuffer>, began: string, { from, to }: { from: string; to: string }): number {
  const { samples, rate } = decodeWav(wav);
  const at = (utc: string): number => Math.round(((Date.parse(utc) - Date.parse(began)) / 1000) * rate);
  const part = samples.slice(Math.max(0, at(from)), at(to));
  return Math.sqrt(part.reduce((sum, sample) => sum + sample * sample, 0) / part.length);
}

test('without consent no sound is kept, and no entry names one', async () => {
  await begin();
  await app.type('next');
  await app.say('one two');
  const entries = await app.entries();
  expect(entries[0]?.body).toMatchObject({ kind: 'opened', sound: 'not agreed' });
  expect(ofKind(entries, 'reading captured')[0]).toMatchObject({ source: 'voice', heard: { text: 'one two' } });
  expect(entries.filter(({ heard }) => heard?.sound !== undefined)).toEqual([]);
  expect(await soundsOnDevice()).toEqual([]);
});

test('with consent the sound of a reading is in its entry by its hash, on the device, and in the sealed file', async () => {
  await app.page.goto(app.url);
  await app.page.getByLabel(CONSENT).check();
  await begin();
  await app.type('next');
  await app.say('one two');
  await app.say('affirm');
  await app.page.getByText('As it was sealed when it was closed, by the key of this device').waitFor();

  const session = (await app.entries()).at(-1)?.session;
  const entries = (await app.entries()).filter((entry) => entry.session === session);
  const reading = ofKind(entries, 'reading captured').at(-1);
  const sounds = [soundOf(reading), soundOf(ofKind(entries, 'reading confirmed').at(-1))];
  expect(sounds[0]?.sha256).not.toBe(sounds[1]?.sha256);
  expect((await soundsOnDevice()).toSorted()).toEqual(sounds.map(({ sha256 }) => [session, sha256]).toSorted());

  await app.page.getByRole('link', { name: 'Replay and save' }).click();
  const file = await savedFile();
  expect(file.verdict).toMatchObject({ kind: 'intact', entries: entries.length });
  expect([...file.sounds.sounds.keys()].toSorted()).toEqual(sounds.map(({ sha256 }) => sha256).toSorted());
  for (const { sha256, bytes, from } of sounds) {
    const wav = file.sounds.sounds.get(sha256);
    const spoken = entries.find(({ heard }) => heard?.sound?.kept && heard.sound.sha256 === sha256)?.heard?.spoken;
    if (!wav || !spoken) throw new Error('There is no sound of spoken words.');
    expect([await soundHash(wav), wav.length]).toEqual([sha256, bytes]);
    // What the speech model hears, and no more.
    expect(decodeWav(wav).rate).toBe(16_000);
    // The words are in it where the entry says that they were spoken: a room of this test is 60 dB quieter.
    expect(loudness(wav, from, spoken)).toBeGreaterThan(0.01);
  }
});

test('the sound plays in the replay', async () => {
  await app.page.getByRole('slider').fill('0');
  await app.page.getByRole('button', { name: 'Next reading', exact: true }).click();
  const player = app.page.locator('.evidence audio');
  await player.waitFor();
  const played = await player.evaluate(async (audio: HTMLAudioElement) => {
    audio.muted = true;
    await audio.play();
    await new Promise((resolve) => audio.addEventListener('ended', resolve, { once: true }));
    return { duration: audio.duration, at: audio.currentTime };
  });
  expect(played.duration).toBeGreaterThan(1);
  expect(played.at).toBeCloseTo(played.duration, 1);
});

test('sounds that are deleted are gone from the device and from the file, and the closed record verifies on', async () => {
  await app.page.goto(app.url);
  await app.page.getByRole('button', { name: 'Delete the sounds' }).click();
  await app.page.getByLabel('Who deletes them').fill('C. Invented');
  await app.page.getByRole('button', { name: 'Delete for good' }).click();
  await app.page.locator('.kept-sounds').waitFor({ state: 'detached' });
  expect(await soundsOnDevice()).toEqual([]);
  await app.page.getByText('As it was sealed when it was closed').waitFor();

  await app.page
    .locator('.sessions li', { hasText: 'closed' })
    .getByRole('link', { name: 'Replay', exact: true })
    .click();
  const { verdict, session, sounds } = await savedFile();
  expect(verdict.kind).toBe('intact');
  expect([sounds.sounds.size, sounds.deleted.length, sounds.missing.length]).toEqual([0, 2, 0]);
  const last = session.kind === 'readable' ? session.record.entries.at(-1) : undefined;
  expect(last).toMatchObject({ person: 'C. Invented', body: { kind: 'sounds deleted' } });
});
