import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { verify } from '../../src/record/entry.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

// No microphone is allowed here: touch, keys and typing do the whole job.
let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  // A microphone is there, but nobody says yes to the question.
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

test('a refused microphone is said in words, and the job is done from end to end without it', async () => {
  await app.begin(/Oil cooler/, { mechanic: 'A. Invented', second: 'B. Invented' });
  await app.page.getByText(/does not let this page use the microphone/).waitFor();
  while (!(await app.wanted()).includes('All steps are done')) await app.answer();

  const entries = await app.entries();
  expect(await verify(entries)).toMatchObject({ kind: 'intact', entries: entries.length });
  expect(entries.at(-1)?.body.kind).toBe('closed');
  expect(ofKind(entries, 'refused')).toEqual([]);
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(ofKind(entries, 'reading captured').length);
});

test('a second window on the same session only reads, says so, and can take over when the first is gone', async () => {
  const first = await AppPage.open(browser.context, inject('appUrl'));
  await first.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  await first.tap('Affirm');
  const second = new AppPage(await browser.context.newPage(), first.url);
  await second.page.goto(first.page.url());
  await second.page.getByText('Another window works on this session').waitFor();
  expect(await second.page.getByRole('button', { name: 'Affirm', exact: true }).count()).toBe(0);

  await first.page.close();
  // The browser gives the pen back when it has buried the first window.
  const affirm = second.page.getByRole('button', { name: 'Affirm', exact: true });
  await expect
    .poll(async () => {
      if (!(await affirm.isVisible())) await second.page.getByRole('button', { name: 'Look again' }).click();
      return affirm.isVisible();
    })
    .toBe(true);
  await second.tap('Affirm');
});

test('the page is killed at any moment, and opens in the same place with nothing lost and nothing doubled', async () => {
  const killed = await AppPage.open(browser.context, inject('appUrl'));
  await killed.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  const session = killed.page.url();
  const mine = async (): Promise<readonly string[]> => {
    const id = decodeURIComponent(session.split('/').at(-1) ?? '');
    return (await app.entries()).filter((entry) => entry.session === id).map(({ body }) => body.kind);
  };
  let page = killed.page;
  for (let round = 0; round < 6; round++) {
    const here = new AppPage(page, killed.url);
    // The answer is acknowledged on screen, and the page dies in the same breath.
    await here.answer();
    const shown = await here.wanted();
    await page.close();
    const written = await mine();
    page = await browser.context.newPage();
    await page.goto(session);
    await page.locator('main.work').waitFor();
    expect(await new AppPage(page, killed.url).wanted()).toBe(shown);
    await expect.poll(mine).toEqual([...written, 'reopened']);
  }
});
