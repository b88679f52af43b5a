import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveBuild } from '../../src/cli/serve.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

let browser: Browser;
let app: AppPage;
let site: Awaited<ReturnType<typeof serveBuild>>;
const requested: string[] = [];
const complaints: string[] = [];

beforeAll(async () => {
  site = await serveBuild(path.resolve(import.meta.dirname, '../../dist'), 0);
  browser = await openBrowser();
  browser.context.on('request', (request) => requested.push(request.url()));
  browser.context.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  await installMicrophone(browser.context);
  app = await AppPage.open(browser.context, site.url);
});
afterAll(async () => {
  await browser.close();
  site.server.close();
});

test('after the first load the server may be gone: the app opens, hears, speaks and writes', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await app.listening();
  await app.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));

  site.server.closeAllConnections();
  await new Promise((closed) => site.server.close(closed));
  await expect(fetch(site.url)).rejects.toThrow();

  await app.page.reload();
  await app.page.locator('main.work').waitFor();
  await app.say('affirm');
  expect(ofKind(await app.entries(), 'warning acknowledged')).toMatchObject([{ source: 'voice' }]);
  expect(await app.page.locator('.why').count()).toBe(0);
});

test('no request left the origin, and nothing met the policy', () => {
  const origin = new URL(site.url).origin;
  const elsewhere = requested.filter((url) => !url.startsWith(`${origin}/`) && !/^(data|blob):/.test(url));
  expect(elsewhere).toEqual([]);
  expect(requested.length).toBeGreaterThan(5);
  expect(complaints.filter((text) => /Content Security Policy/i.test(text))).toEqual([]);
});
