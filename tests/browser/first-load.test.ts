import { createServer, request as ask, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, type Browser } from '../support/chromium.ts';

/** A poor mobile line: 400 kbit/s, and 300 ms to the first byte of each answer. */
const SLOW = { offline: false, latency: 300, downloadThroughput: 50_000, uploadThroughput: 50_000 };

/** Stands before the server; of a speech model it lets so many bytes through before the line breaks. */
let letsThrough = Infinity;
/** What was asked of speech models: the ranges. */
const asked: (string | undefined)[] = [];

const between: Server = createServer((request, response) => {
  const target = new URL(request.url ?? '/', inject('appUrl'));
  const isModel = target.pathname.endsWith('.tar.gz');
  if (isModel) asked.push(request.headers.range);
  if (isModel && letsThrough === 0) return void response.destroy();
  const { host: _, ...headers } = request.headers;
  ask(target, { method: request.method, headers }, (answer) => {
    response.writeHead(answer.statusCode ?? 502, answer.headers);
    if (!isModel || letsThrough === Infinity) return void answer.pipe(response);
    answer.on('data', (piece: Buffer) => {
      const part = piece.subarray(0, letsThrough);
      letsThrough -= part.length;
      response.write(part);
      if (letsThrough === 0) {
        answer.destroy();
        // What is on the way still arrives.
        setTimeout(() => response.destroy(), 200);
      }
    });
  }).end();
});

let browser: Browser;
let url: string;
const complaints: string[] = [];

beforeAll(async () => {
  await new Promise<void>((resolve) => between.listen(0, 'localhost', resolve));
  url = `http://localhost:${(between.address() as AddressInfo).port}/`;
  browser = await openBrowser();
  // A service worker would fetch beside the page, on a line that is not slow.
  await browser.context.addInitScript('delete Navigator.prototype.serviceWorker');
  browser.context.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
});
afterAll(async () => {
  await browser.close();
  between.closeAllConnections();
  between.close();
});

const ear = (page: Page) => page.locator('.ear');

test('over a slow line something is to be read before any other file has come, and then how far the model is', async () => {
  const page = await browser.context.newPage();
  const line = await browser.context.newCDPSession(page);
  await line.send('Network.enable');
  await line.send('Network.emulateNetworkConditions', SLOW);
  await page.goto(url, { waitUntil: 'commit' });
  await page.getByText('is loading').waitFor();
  const painted = await page.evaluate(
    () =>
      new Promise<number>((resolve) =>
        new PerformanceObserver((list) => {
          for (const { name, startTime } of list.getEntries())
            if (name === 'first-contentful-paint') resolve(startTime);
        }).observe({ type: 'paint', buffered: true }),
      ),
  );
  console.log(`first paint over a slow line after ${Math.round(painted)} ms (goal: 1000)`);
  await ear(page)
    .getByText(/Loading the speech model: \d+ % of 5\.7 MB/)
    .waitFor();
  const files = await page.evaluate(() =>
    performance.getEntriesByType('resource').map((file) => (file as PerformanceResourceTiming).responseEnd),
  );
  expect(painted).toBeLessThan(Math.min(...files));
  await page.close();
});

test('a broken line is waited for, and after another start of the app it goes on where it was', async () => {
  const page = await browser.context.newPage();
  letsThrough = 2_000_000;
  await page.goto(url);
  await ear(page)
    .getByText(/broke at 35 % of 5\.7 MB/)
    .waitFor();
  await page.close();

  letsThrough = Infinity;
  asked.length = 0;
  const again = await browser.context.newPage();
  await again.goto(url);
  await again.getByText('In use: bothhands-en-small.tar.gz').waitFor();
  expect(asked).toEqual(['bytes=2000000-']);
  expect(complaints.filter((text) => /Content Security Policy/i.test(text))).toEqual([]);
});
