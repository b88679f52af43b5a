import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { AppPage } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { workshopNoise } from '../support/noise.ts';
import { synthesise } from '../support/speech.ts';
import { installMicrophone, speak } from '../support/spoken-microphone.ts';

const PERSON = 'A. Invented';
let browser: Browser;
let app: AppPage;
beforeEach(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, inject('appUrl'));
  await app.page.getByLabel('Mechanic').fill(PERSON);
  await app.page.getByText('In use: bothhands').waitFor({ timeout: 60_000 });
  await app.page.getByRole('link', { name: `Microphone check: ${PERSON}` }).click();
});
afterEach(() => browser.close());

const verdict = async (): Promise<string> => {
  const text = app.page.locator('.check .verdict');
  await text.waitFor({ timeout: 90_000 });
  return text.innerText();
};

test('whoever is heard in a quiet room is fit; their check is kept, and can be deleted', async () => {
  await app.page.getByRole('button', { name: 'Begin the check' }).click();
  const asked = ['one two five', 'four zero seven', 'three eight six', 'nine point five', 'affirm'];
  for (const phrase of asked) {
    await app.page.locator('.check .now .large', { hasText: phrase }).waitFor({ timeout: 40_000 });
    await app.listening();
    await speak(app.page, await synthesise(phrase, { voice: 'rms' }));
  }
  expect(await verdict()).toMatch(/Fit .*Voice \d\d dB over it\. [3-5] of 5 heard right/s);
  await app.page.reload();
  await app.page.getByText('Kept on this device').waitFor();
  await app.page.getByRole('button', { name: `Delete ${PERSON}` }).click();
  await app.page.getByText('Kept on this device').waitFor({ state: 'detached' });
});

test('where it is too loud it refuses to start by voice, and the job begins with the ear closed, by touch', async () => {
  // It goes on until the browser is closed.
  void speak(app.page, {
    rate: 16_000,
    samples: workshopNoise(60, 16_000, 3).samples.map((sample) => sample * 2),
  }).catch(() => undefined);
  await app.page.getByRole('button', { name: 'Begin the check' }).click();
  expect(await verdict()).toMatch(/Do not start by voice here.*headset microphone.*pedal and touch/s);
  await app.page.getByRole('link', { name: 'Back to the start' }).click();
  await app.page.getByText('Do not start by voice here').waitFor();
  await app.begin(/Oil cooler/, { mechanic: PERSON });
  await app.page.getByText('The microphone check: do not start by voice here.').waitFor();
  // A closed ear trusts nothing, however loud it is.
  expect(await app.page.locator('.hearing .sound').innerText()).toBe('');
  await app.tap('Affirm');
  await app.page.getByRole('button', { name: 'Unmute' }).click();
  await app.page.locator('.hearing.listening, .hearing.hearing').waitFor();
});
