import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { findBrowser } from '../../src/cli/find-browser.mjs';
import { serveBuild } from '../../src/cli/serve.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

let profile: string;
let context: BrowserContext;
let site: Awaited<ReturnType<typeof serveBuild>>;
const requested: string[] = [];
const complaints: string[] = [];

/** The browser of one person, started anew each time. */
async function start(): Promise<void> {
  context = await chromium.launchPersistentContext(profile, {
    executablePath: findBrowser() ?? '',
    headless: true,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
    viewport: { width: 1280, height: 800 },
  });
  context.on('request', (request) => requested.push(request.url()));
  context.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  await installMicrophone(context);
}

beforeAll(async () => {
  profile = await mkdtemp(path.join(tmpdir(), 'bothhands-offline-'));
  site = await serveBuild(path.resolve(import.meta.dirname, '../../dist'), 0);
  await start();
});
afterAll(async () => {
  await context.close();
  site.server.close();
  await rm(profile, { recursive: true, force: true, maxRetries: 5 });
});

test('installed, the network cut and the browser started anew: a pass is run, by touch and by voice', async () => {
  const before = await AppPage.open(context, site.url);
  await before.page.getByText('In use: bothhands-en-small.tar.gz').waitFor();
  await before.page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await context.close();
  site.server.closeAllConnections();
  await new Promise((closed) => site.server.close(closed));
  await expect(fetch(site.url)).rejects.toThrow();

  await start();
  const app = await AppPage.open(context, site.url);
  expect(await app.page.getByText('This browser lacks').count()).toBe(0);
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Open a procedure file').setInputFiles({
    name: 'small.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(smallProcedure)),
  });
  await passPreparation(app.page);
  await app.tap('Next');
  // The first bolt is confirmed by voice, which needs ear, recogniser and model; the others by touch.
  await app.type('12');
  await app.say('affirm');
  for (const value of ['12.5', '11.5']) {
    await app.type(value);
    await app.tap('Affirm');
  }
  const confirmed = ofKind(await app.entries(), 'reading confirmed');
  expect(confirmed.map(({ source }) => source)).toEqual(['voice', 'touch', 'touch']);
  expect(await app.page.locator('.why').count()).toBe(0);
});

test('no request left the origin, and nothing met the policy', () => {
  const origin = new URL(site.url).origin;
  const elsewhere = requested.filter((url) => !url.startsWith(`${origin}/`) && !/^(data|blob):/.test(url));
  expect(elsewhere).toEqual([]);
  expect(requested.length).toBeGreaterThan(5);
  expect(complaints.filter((text) => /Content Security Policy/i.test(text))).toEqual([]);
});
