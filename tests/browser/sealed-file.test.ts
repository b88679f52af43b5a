import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { Download } from 'playwright-core';
import { openSessionFile } from '../../src/record/sealed-file.ts';
import { AppPage } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

// A session leaves the device as a sealed file, signed by a key that this browser made and keeps.

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

async function saved(button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [download]: [Download, unknown] = await Promise.all([
    app.page.waitForEvent('download'),
    app.page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

async function thumbprintOf(bytes: Buffer): Promise<string> {
  const file = await openSessionFile(bytes, { now: new Date().toISOString() });
  if (file.kind === 'refused') throw new Error(file.why);
  if (file.verdict.kind === 'not intact') throw new Error(file.verdict.why);
  return file.verdict.thumbprint;
}

test('a session is saved as a sealed file, by the one key of this device, and its readings as a table', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.type('affirm');
  await app.page.goto(app.url);
  await app.page.getByRole('link', { name: 'Replay' }).first().click();
  const first = await saved('Save the sealed file');
  expect(first.name).toMatch(/^\d{4}-[\w.-]+\.bhsession$/);
  const thumbprint = await thumbprintOf(first.bytes);
  await app.page.getByText(`sealed by the key of this device, ${thumbprint}`).waitFor();

  const table = await saved('Save readings as CSV');
  expect(table.name).toMatch(/-readings\.csv$/);
  expect(table.bytes.toString('utf8')).toMatch(/^\uFEFFsession,entry,"time \(UTC\)",person,/);

  await app.page.reload();
  expect(await thumbprintOf((await saved('Save the sealed file')).bytes)).toBe(thumbprint);
});
