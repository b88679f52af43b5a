import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import type { Download } from 'playwright-core';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
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
  await app.page.getByRole('link', { name: 'Replay', exact: true }).first().click();
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

const open = (name: string, buffer: Buffer): Promise<void> =>
  app.page.getByLabel('Open a sealed file').setInputFiles({ name, mimeType: 'application/octet-stream', buffer });

test('a sealed file is verified, then played back, and nothing of it is kept here', async () => {
  const bytes = readFileSync(DEMO_SESSION_FILE);
  await app.page.goto(app.url);
  await app.page.locator('.sessions li').first().waitFor();
  const kept = await app.page.locator('.sessions li').count();
  await open('demo.bhsession', bytes);
  const verdict = app.page.locator('.verification');
  await verdict.getByText(/^demo\.bhsession: Intact: \d+ entries, as sealed by the key [\w-]{43}/).waitFor();
  expect(await app.page.locator('.record-list li').count()).toBe(
    Number(/Intact: (\d+)/.exec(await verdict.innerText())?.[1]),
  );
  expect(await app.page.getByRole('button', { name: 'Save the sealed file' }).count()).toBe(0);
  await app.page.getByRole('button', { name: 'Close this file' }).click();
  await app.page.locator('.sessions li').first().waitFor();
  await app.page.reload();
  await app.page.locator('.sessions li').first().waitFor();
  expect(await app.page.locator('.sessions li').count()).toBe(kept);
});

test('a sealed file that was changed says so before anything of it is shown, and is shown up to there', async () => {
  const forged = Buffer.from(
    readFileSync(DEMO_SESSION_FILE).toString('latin1').replace('"value":"27"', '"value":"24"'),
    'latin1',
  );
  await open('forged.bhsession', forged);
  const alert = app.page.locator('.verification[role=alert]');
  await alert.getByText(/^forged\.bhsession: Not intact at entry \d+: its content was changed/).waitFor();
  const at = Number(/entry (\d+)/.exec(await alert.innerText())?.[1]);
  expect(await app.page.locator('.record-list li:not(.break)').count()).toBe(at);
  await app.page.getByRole('button', { name: 'Close this file' }).click();
});

test('what is no sealed file is refused with the reason', async () => {
  await open('letter.bhsession', Buffer.from('Dear all'));
  await app.page
    .getByRole('alert')
    .getByText('letter.bhsession: Not readable. It is not a sealed session file')
    .waitFor();
  await app.page.getByRole('button', { name: 'Close this file' }).click();
  await app.page.getByRole('heading', { name: 'Bothhands' }).waitFor();
});
