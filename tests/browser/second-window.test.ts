/** The second person takes part from a window of their own, beside the mechanic's, on one machine. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, inject, test } from 'vitest';
import { verify, type Entry } from '../../src/record/entry.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

const [, tighten, lookAt] = smallProcedure.steps;
const witnessed = {
  ...smallProcedure,
  steps: [
    { ...tighten, confirm: 'witness each' },
    { ...lookAt, kind: 'witness', what: 'the cover, all round' },
  ],
};
const PHONE = { width: 360, height: 740 };
/** 20 mm at 96 px an inch, in CSS px. */
const GLOVE = 75.5;

let browser: Browser;
let mechanic: AppPage;
beforeAll(async () => {
  // No microphone is allowed here: the mechanic types.
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
});
beforeEach(async () => {
  for (const page of browser.context.pages().slice(1)) await page.close();
  mechanic = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

async function begin(second: string | null): Promise<void> {
  const { page } = mechanic;
  await page.getByLabel('Mechanic').fill('A. Invented');
  await page.getByLabel('Second person').fill(second ?? '');
  await page
    .getByLabel('Open a procedure file')
    .setInputFiles({ name: 'job.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(witnessed)) });
  await passPreparation(page);
}

/** The second person's window, opened by its link on the work screen. */
async function openSecond(): Promise<Page> {
  const opened = browser.context.waitForEvent('page');
  await mechanic.page.getByRole('link', { name: 'Second person’s window' }).click();
  const page = await opened;
  await page.setViewportSize(PHONE);
  await page.locator('main.second').waitFor();
  return page;
}

const sessionOf = (page: Page): string => decodeURIComponent(page.url().split('/').at(-1) ?? '');
const record = async (): Promise<readonly Entry[]> =>
  (await mechanic.entries()).filter(({ session }) => session === sessionOf(mechanic.page));
const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true });

/** As long as people take to see what is new before they answer it. */
const look = (page: Page): Promise<void> => page.waitForTimeout(SETTLE + 100);

/** Waits until a value is wanted, and looks at what is asked. */
async function asked(page: Page): Promise<void> {
  await page.getByText('Read the tool now').waitFor();
  await look(page);
}

/** Where each button of the pad is, and how large. */
async function places(page: Page): Promise<readonly object[]> {
  const buttons = await page.locator('.pad button, .second-person button').all();
  return Promise.all(buttons.map(async (each) => ({ name: await each.innerText(), box: await each.boundingBox() })));
}

/** Whether a value stands anywhere in a page: in its text, in its fields, in what is hidden. */
const holds = (page: Page, value: string): Promise<boolean> =>
  page.evaluate(
    (wanted) =>
      document.documentElement.outerHTML.includes(wanted) ||
      [...document.querySelectorAll('input')].some((input) => input.value.includes(wanted)),
    value,
  );

test('a job with its witness at a window of their own: agreeing, disputing, and looking', async () => {
  await begin('B. Invented');
  const second = await openSecond();
  await second.getByText('Nothing is asked of you now.').waitFor();
  const before = await places(second);
  expect(before).toHaveLength(16);
  for (const { box } of before as readonly { box: { width: number; height: number } }[])
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(GLOVE);

  // The two agree: both values are read back, and the mechanic confirms.
  await mechanic.type('12.5');
  await asked(second);
  expect([await holds(mechanic.page, '12.5'), await holds(second, '12.5')]).toEqual([false, false]);
  expect(await places(second)).toEqual(before);
  for (const name of ['1', '2', 'Point', '6', 'Delete', '5']) await key(second, name).click();
  await key(second, 'Witness reads').click();
  await second.getByText('The two agree: 12.5 and 12.5 N·m').waitFor();
  await second.locator('.answer', { hasText: /^Taken: Bolt one, one two point five, witness, / }).waitFor();
  expect(await mechanic.wanted()).toContain('Witness B. Invented: 12.5 N·m');
  await mechanic.tap('Affirm');
  await second.getByText('12.5 N·m, confirmed').waitFor();

  // The two differ: the pass stops at this bolt, and nothing is confirmed.
  await mechanic.type('11.5');
  await asked(second);
  expect([await holds(mechanic.page, '11.5'), await holds(second, '11.5')]).toEqual([false, false]);
  await second.keyboard.type('12.5');
  await second.keyboard.press('Enter');
  await second.getByText('Dispute: the pass stops here').waitFor();
  await second.locator('.answer', { hasText: /^Taken: Stop\. The two values of bolt three differ\./ }).waitFor();
  expect(await holds(second, '11.5')).toBe(false);
  expect(ofKind(await record(), 'disputed')).toHaveLength(1);
  expect(ofKind(await record(), 'reading confirmed')).toHaveLength(1);
  expect(await mechanic.wanted()).toContain('bolt 3');

  for (const value of ['12', '12.5']) {
    await mechanic.type(value);
    await asked(second);
    for (const figure of value) await key(second, figure === '.' ? 'Point' : figure).click();
    await second.keyboard.press('Enter');
    await second.getByText('The two agree').waitFor();
    await mechanic.tap('Affirm');
  }

  // The step that the second person looks at.
  await second.getByText('Look at this: The cover, all round').waitFor();
  expect(await places(second)).toEqual(before);
  // On a telephone on its side all of the pad is in sight as well, and none of it smaller.
  for (const lying of [
    { width: 740, height: 360 },
    { width: 640, height: 360 },
  ]) {
    await second.setViewportSize(lying);
    for (const { name, box } of (await places(second)) as readonly { name: string; box: DOMRect }[]) {
      expect(Math.min(box.width, box.height), name).toBeGreaterThanOrEqual(GLOVE);
      expect(box.x + box.width, name).toBeLessThanOrEqual(lying.width);
      expect(box.y + box.height, name).toBeLessThanOrEqual(lying.height);
    }
    expect(await second.locator('.task.wanted').isVisible()).toBe(true);
  }
  await second.setViewportSize(PHONE);
  await look(second);
  await key(second, 'Witness negative').click();
  await second.getByText('B. Invented does not agree to this step').waitFor();
  await look(second);
  await key(second, 'Witness affirm').click();
  await second.locator('.task', { hasText: 'All steps are done. The record is closed.' }).waitFor();
  await mechanic.page.locator('.wanted', { hasText: 'All steps are done' }).waitFor();

  const entries = await record();
  expect(verify(entries)).toMatchObject({ kind: 'intact' });
  expect(ofKind(entries, 'refused')).toEqual([]);
  const byWitness = [...ofKind(entries, 'witnessed'), ...ofKind(entries, 'step witnessed')];
  expect(byWitness).toHaveLength(6);
  for (const entry of byWitness) expect(entry).toMatchObject({ person: 'B. Invented', source: 'touch', heard: null });
  expect(ofKind(entries, 'reading confirmed').map(({ person }) => person)).toEqual(Array(3).fill('A. Invented'));
});

test('someone joins under a name that is not the mechanic’s, and leaves', async () => {
  await begin(null);
  const second = await openSecond();
  const join = async (name: string): Promise<void> => {
    await second.getByLabel('Your name').fill(name);
    await look(second);
    await key(second, 'Join').click();
  };
  await join('a. invented');
  await second.getByText('Not taken: The mechanic cannot witness their own work.').waitFor();
  await join('C. Invented');
  await second.locator('.second-person b', { hasText: 'C. Invented' }).waitFor();
  expect(await second.getByLabel('Your name').count()).toBe(0);
  await look(second);
  await key(second, 'Leave').click();
  await second.locator('.second-person b', { hasText: 'nobody yet' }).waitFor();
  expect(ofKind(await record(), 'second person joined').map(({ body }) => body.name)).toEqual(['C. Invented']);
  expect(ofKind(await record(), 'second person left')).toHaveLength(1);
});

test('where no window works on the session, that is said, and the window goes on when one does', async () => {
  await begin('B. Invented');
  await mechanic.type('12.5');
  const address = mechanic.page.url();
  const second = await openSecond();
  await asked(second);
  await mechanic.page.close();
  await second.getByRole('alert').getByText('No window is working on this session').waitFor();
  await second.keyboard.type('12.5\n');
  expect(await holds(second, '12.5')).toBe(false);

  mechanic = new AppPage(await browser.context.newPage(), address);
  await mechanic.page.goto(address);
  await mechanic.page.locator('main.work').waitFor();
  await expect.poll(() => second.getByRole('alert').count()).toBe(0);
  await look(second);
  await second.keyboard.type('12.5\n');
  await second.getByText('The two agree').waitFor();
});

test('a stranger’s message does nothing, and the mechanic sees that it came', async () => {
  await begin('B. Invented');
  const second = await openSecond();
  const before = await record();
  await second.evaluate((session) => {
    const meaning = { kind: 'affirm' };
    const id = crypto.randomUUID();
    new BroadcastChannel(`bothhands:${session}`).postMessage({ kind: 'meaning', id, seen: 0, meaning });
  }, sessionOf(mechanic.page));
  await mechanic.page.getByRole('alert').getByText('a second person cannot say').waitFor();
  expect(await record()).toEqual(before);
});

test('the window opens neither microphone nor voice, and loads neither', async () => {
  await begin('B. Invented');
  await openSecond();
  const page = await browser.context.newPage();
  const fetched: string[] = [];
  page.on('request', (request) => fetched.push(new URL(request.url()).pathname));
  await page.addInitScript(() => {
    const opened: string[] = [];
    Object.assign(window, { opened });
    navigator.mediaDevices.getUserMedia = () => {
      opened.push('microphone');
      return Promise.reject(new Error('No microphone here.'));
    };
    window.AudioContext = class extends AudioContext {
      constructor() {
        super();
        opened.push('sound');
      }
    };
  });
  await page.goto(mechanic.page.url().replace('#/work/', '#/second/'));
  await page.locator('main.second').click();
  await page.getByText('Nothing is asked of you now.').waitFor();
  await page.waitForTimeout(1000);
  expect(await page.evaluate(() => 'opened' in window && window.opened)).toEqual([]);
  expect(fetched.filter((path) => /models|wasm|worker/.test(path))).toEqual([]);
  await page.close();
});

test('a second editor says that another one writes, and overwrites nothing; it opens once that one is left', async () => {
  const { page } = mechanic;
  const title = (of: Page) => of.getByLabel('Title', { exact: true });
  await page.evaluate(() => (location.hash = '#/editor'));
  await title(page).fill('Written in the first window');
  const second = await browser.context.newPage();
  await second.goto(`${mechanic.url}#/editor`);
  const notice = second.getByRole('alert');
  expect(await notice.innerText()).toMatch(/being written in another window.*Nothing is lost/);
  expect(await title(second).count()).toBe(0);
  await key(second, 'Look again').click();
  await notice.waitFor();
  await title(page).fill('Written on in the first window');
  await page.getByRole('link', { name: 'Back to the start' }).click();
  await page.getByRole('heading', { name: 'Bothhands' }).waitFor();
  await key(second, 'Look again').click();
  expect(await title(second).inputValue()).toBe('Written on in the first window');
});
