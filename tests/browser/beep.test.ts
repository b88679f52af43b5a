import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// Chromium's own made-up microphone beeps twice a second, as a lorry does that goes backwards. Among the words that may be
// said, that is now and then a "back" of which the recogniser is sure.
let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser(FAKE_DEVICES);
});
afterAll(() => browser.close());

/** In milliseconds: for this long the beep goes on, and twice as long where it was never a sure word meanwhile. */
const LISTENED = 60_000;

const [fit] = smallProcedure.steps;
const procedure = { ...smallProcedure, steps: ['one', 'two', 'three', 'four', 'five'].map((id) => ({ ...fit, id })) };

test('a beep takes no step back: it is asked about', { timeout: 240_000 }, async () => {
  const app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.getByText(/^In use: .*tar\.gz/).waitFor();
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  const buffer = Buffer.from(JSON.stringify(procedure));
  const file = { name: 'procedure.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
  for (const _ of ['one', 'two', 'three']) {
    await app.page.getByLabel('Type what you would say').fill('next');
    await app.page.keyboard.press('Enter');
    await app.page.waitForTimeout(1500);
  }
  let isAsked = false;
  const began = Date.now();
  const isOver = (): boolean => Date.now() - began > (isAsked ? LISTENED : 2 * LISTENED);
  while (!isOver()) {
    isAsked ||= (await app.heard()).includes('Was that ');
    await app.page.waitForTimeout(100);
  }
  expect(ofKind(await app.entries(), 'step taken back')).toEqual([]);
  expect(isAsked, 'a beep was heard as a word that takes back').toBe(true);
});
