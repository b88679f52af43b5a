import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { bindingsFor, TIMING, type Bindings } from '../../src/gesture/bindings.ts';
import { verify } from '../../src/record/entry.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// Neither microphone nor camera is allowed here: one pedal does the whole ring, with a page-turner’s single key.
let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

const PEDAL = 'PageDown';
/** The least that may be set: the test has no feet. */
const onePedal: Bindings = { ...bindingsFor([PEDAL]), pace: 400 };

/** A foot is down for longer than a contact bounces, and up again too. */
async function press(): Promise<void> {
  await app.page.waitForTimeout(TIMING.bounce);
  await app.page.keyboard.press(PEDAL, { delay: TIMING.bounce });
}

/** Waits until this choice is lit, or the row that it is in, and takes it. */
async function take(choice: string, row = choice): Promise<void> {
  const lit = await app.page.waitForFunction(
    ([own, rows]) => {
      const words = document.querySelector('.switch-choices .lit')?.textContent?.trim() ?? '';
      return words === own || words === rows || words.split(', ').includes(own ?? '') ? words : null;
    },
    [choice, row],
    { polling: 20 },
  );
  await press();
  if ((await lit.jsonValue()) !== choice) await take(choice);
}

/** Opens the choices and takes one; waits until it is written down. */
async function choose(choice: string): Promise<void> {
  await app.page.waitForTimeout(SETTLE + 50);
  const before = await app.heardCount();
  await press();
  await take(choice);
  await expect.poll(() => app.heardCount()).toBeGreaterThan(before);
}

async function enter(value: string): Promise<void> {
  await app.page.waitForTimeout(SETTLE + 50);
  await press();
  await take('enter the value');
  for (const figure of value) await take(figure === '.' ? 'point' : figure, rowOf(figure));
  const before = await app.heardCount();
  expect(await app.page.locator('.switch-choices output').innerText()).toBe(value);
  await take('read it', rowOf('.'));
  await expect.poll(() => app.heardCount()).toBeGreaterThan(before);
}
const rowOf = (figure: string): string =>
  figure === '.' ? 'point, read it, delete' : '12345'.includes(figure) ? '1 to 5' : '6 to 0';

test('one pedal does a whole ring, values and all, with microphone and camera denied', async () => {
  await teach(onePedal);
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  const buffer = Buffer.from(JSON.stringify(smallProcedure));
  const file = { name: 'small.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);

  await choose('next');
  for (const value of ['12', '12.5', '10.5', '11']) {
    await enter(value);
    expect(await app.wanted()).toContain(value);
    // 10.5 is under its window: it is heard as it was entered, and is not affirmed here.
    await choose(value === '10.5' ? 'negative' : 'affirm');
  }
  await choose('next');

  const entries = await app.entries();
  expect(verify(entries)).toMatchObject({ kind: 'intact', entries: entries.length });
  expect(entries.at(-1)?.body.kind).toBe('closed');
  expect(ofKind(entries, 'reading captured').map(({ body }) => [body.reading.value, body.verdict])).toEqual([
    ['12', 'in'],
    ['12.5', 'in'],
    ['10.5', 'under'],
    ['11', 'in'],
  ]);
  expect(ofKind(entries, 'reading confirmed')).toHaveLength(3);
  expect(ofKind(entries, 'refused')).toEqual([]);
  const worked = entries.slice(entries.findIndex(({ body }) => body.kind === 'step done'));
  expect(new Set(worked.map(({ source }) => source))).toEqual(new Set(['pedal']));
});

/** Keeps bindings of anybody on this device. */
async function teach(bindings: Bindings): Promise<void> {
  await app.page.evaluate(
    (value) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('keyval-store');
        opening.onupgradeneeded = () => opening.result.createObjectStore('keyval');
        opening.onerror = () => reject(new Error('Nothing can be kept.'));
        opening.onsuccess = () => {
          const put = opening.result.transaction('keyval', 'readwrite').objectStore('keyval').put(value, 'switches');
          put.onsuccess = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    [{ name: '', value: bindings }],
  );
  await app.page.goto(app.url);
  await app.page.reload();
}
