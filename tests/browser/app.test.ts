import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { openBrowser, type Browser } from '../support/chromium.ts';

let browser: Browser;
beforeAll(async () => void (browser = await openBrowser()));
afterAll(() => browser.close());

test('the built app opens under its own strict policy without a complaint', async () => {
  const page = await browser.context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(inject('appUrl'));
  await page.getByRole('heading', { name: 'Bothhands' }).waitFor();
  expect(complaints).toEqual([]);
});
