import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { FAKE_DEVICES, openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// Chromium's own made-up microphone beeps twice a second, as a lorry does that goes backwards. Among the words that may be
// said, that is now and then a "back" of which the recogniser is sure.
// One for each try: a page that is left open keeps the ear.
let browser: Browser;
beforeEach(async () => {
  browser = await openBrowser(FAKE_DEVICES);
});
afterEach(() => browser.close());

/** In milliseconds: by then the beep was a sure word, which it is twice a minute; and for so long it goes on after that. */
const HEARD_BY = 150_000;
const GOES_ON = 10_000;

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
  const isAsked = async (): Promise<boolean> => (await app.heard()).includes('Was that ');
  await expect.poll(isAsked, { timeout: HEARD_BY, interval: 100 }).toBe(true);
  await app.page.waitForTimeout(GOES_ON);
  expect(ofKind(await app.entries(), 'step taken back')).toEqual([]);
});
