import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

// What a careful lead hand computes, on the screen: the demonstration with an adapter and self-locking nuts.
let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'), 'at once');
});
afterAll(() => browser.close());

test('the screen shows what to set, why, the window at the wrench, and the tool', async () => {
  await app.begin(/end cover/i, { mechanic: 'A. Invented', second: 'B. Invented' });
  while (!/Pass 2 of 4/.test(await app.wanted())) await app.answer();
  const wanted = await app.wanted();
  // Half of 175 lbf·in is 87.5; 22 running makes 109.5; the lever of 10 in and the adapter of 1.5 in at 45° make
  // 10 / (10 + 1.5 · cos 45°) = 0.904 of it: 99.0, on a wrench marked every 1 lbf·in.
  expect(wanted).toMatch(/99\s+lbf·in/);
  expect(wanted).toMatch(/target 87\.5, plus 22 running, times 0\.904 for the adapter: set 99/);
  expect(wanted).toMatch(/Window \d+ to \d+ lbf·in/);
  expect(wanted).toMatch(/wrench/i);
});

test('the record holds what the value was made of', async () => {
  await app.answer();
  const captured = ofKind(await app.entries(), 'reading captured').at(-1);
  expect(captured?.body.basis).toMatchObject({ of: 'torque', runningTorque: { value: '22', unit: 'lbf·in' } });
});
