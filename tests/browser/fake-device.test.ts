import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { durationMs } from '../../src/speaking/sound.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, fakeMicrophone, openBrowser, type Browser } from '../support/chromium.ts';
import { spokenJob } from '../support/fake-device-script.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { writeWav } from '../support/wav.ts';

// Chromium's own made-up microphone plays one recording from the moment it is opened, whatever the app does. The speech is
// synthetic, so that this runs on any machine.
const LINES = [
  'next',
  'one two',
  'affirm',
  'one two point five',
  'negative',
  'one one point five',
  'affirm',
  'one two',
  'affirm',
  'next',
];
/** In milliseconds, for the page to load and to write the last word down. */
const PATIENCE = 20_000;

let folder: string;
let length: number;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'bothhands-voice-'));
  const job = await spokenJob(smallProcedure, LINES);
  length = durationMs(job);
  await writeWav(path.join(folder, 'job.wav'), job);
  await writeFile(path.join(folder, 'small.json'), JSON.stringify(smallProcedure));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

// A browser for each attempt: in one that is left over, the page before it keeps the ear.
let browser: Browser;
beforeEach(async () => {
  browser = await openBrowser([...FAKE_DEVICES, fakeMicrophone(path.join(folder, 'job.wav'))]);
});
afterEach(() => browser.close());

test('a whole job runs from a microphone that nothing but the browser feeds', { timeout: 240_000 }, async () => {
  const app = await AppPage.open(browser.context, inject('appUrl'));
  // The microphone starts with the session, so the ear must be ready by then.
  await app.page.getByText(/^In use: .*tar\.gz/).waitFor();
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Open a procedure file').setInputFiles(path.join(folder, 'small.json'));
  await passPreparation(app.page);
  const end = app.page.locator('.wanted').getByText('All steps are done.');
  const isDone = await end.waitFor({ timeout: length + PATIENCE }).then(
    () => true,
    () => false,
  );

  // First the record: where the job did not come to its end, it shows at which words it left the way.
  const entries = await app.entries();
  const work = entries.filter(({ body }) => body.kind !== 'opened' && body.kind !== 'prepared');
  expect(work.map(({ heard, body }) => [heard?.text, body.kind])).toEqual([
    ['next', 'step done'],
    ['one two', 'reading captured'],
    ['affirm', 'reading confirmed'],
    ['one two point five', 'reading captured'],
    ['negative', 'reading rejected'],
    ['one one point five', 'reading captured'],
    ['affirm', 'reading confirmed'],
    ['one two', 'reading captured'],
    ['affirm', 'reading confirmed'],
    ['affirm', 'step done'],
    ['next', 'step done'],
    ['next', 'closed'],
  ]);
  expect(isDone).toBe(true);
  expect(
    ofKind(entries, 'reading captured').map(({ body }) => [body.fastener, body.reading.value, body.verdict]),
  ).toEqual([
    [1, '12', 'in'],
    [3, '12.5', 'in'],
    [3, '11.5', 'in'],
    [2, '12', 'in'],
  ]);
  expect(work.every(({ source }) => source === 'voice')).toBe(true);
});
