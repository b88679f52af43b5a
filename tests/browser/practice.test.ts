import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, inject('appUrl'));
  // As it comes to everybody.
  await app.page.getByLabel('How fast the voice speaks').selectOption('normal');
  await app.page.getByText('In use: bothhands-en-small.tar.gz').waitFor();
});
afterAll(() => browser.close());

test('at the first visit, three spoken answers end with a logged reading and its replay', async () => {
  await app.page.getByRole('heading', { name: 'New here?' }).waitFor();
  await app.page.getByRole('button', { name: 'Practise by voice' }).click();
  await app.page.locator('main.work').waitFor();
  await app.say('next');
  await app.say('one two');
  await app.utter('affirm');

  await app.page.getByRole('heading', { name: 'Replay: Practice, no work' }).waitFor();
  expect(await app.page.locator('main.replay').innerText()).toMatch(/Practice: no work was done\./);
  const entries = await app.entries();
  expect(ofKind(entries, 'reading captured')).toMatchObject([{ source: 'voice' }]);
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(1);
  expect(await app.page.locator('.record-list [aria-current=true]').innerText()).toContain('12');
});

test('afterwards it is offered as one button, and its record is listed as no work', async () => {
  await app.page.goto(`${app.url}#/`);
  await app.page.getByRole('heading', { name: 'Practice', exact: true }).waitFor();
  await app.page.locator('.sessions').getByText('Practice: no work was done.').waitFor();
});
