import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { TIMING } from '../../src/gesture/bindings.ts';
import { verify } from '../../src/record/entry.ts';
import { SETTLE } from '../../src/ui/settle.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { demoRing, RING_ORDER } from '../support/demo-ring.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// Neither microphone nor camera is allowed here: one pedal does a whole pass of the demonstration’s ring, with a page-turner’s
// single key.
let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

const PEDAL = 'PageDown';
/** In milliseconds: brisk, and long enough for a machine that is busy with other tests to press in time. */
const PACE = '1000';

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

/** Opens the choices and takes one; waits until it is written down. What warns is read first: then it is taken once more. */
async function choose(choice: string): Promise<void> {
  await app.page.waitForTimeout(SETTLE + 50);
  const before = await app.heardCount();
  await press();
  await take(choice);
  await expect.poll(async () => (await app.isTooSoon()) || (await app.heardCount()) > before).toBe(true);
  if (await app.isTooSoon()) await choose(choice);
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

/** Teaches what is set on the page for that. */
async function teach(settings: () => Promise<void>): Promise<void> {
  await app.page.goto(app.url);
  await app.page.getByRole('link', { name: /^Teach and try/ }).click();
  await settings();
  await app.page
    .getByText(/^Kept on this device for/)
    .first()
    .waitFor();
  await app.page.getByRole('link', { name: 'Back to the start' }).click();
}

async function begin(procedure: object): Promise<void> {
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Second person').fill('B. Invented');
  const buffer = Buffer.from(JSON.stringify(procedure));
  const file = { name: 'procedure.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
}

/** What the wrench shows, in turn: stud three is under its window at first, and is read again. */
const READINGS = ['12', '11', '10.5', '11', '12', '11', '12', '11', '12', '11', '12'] as const;

test('one pedal does a whole pass of the ten studs, values and all, with microphone and camera denied', async () => {
  await teach(async () => {
    await app.page.getByRole('button', { name: 'Teach one switch' }).click();
    await app.page.keyboard.press(PEDAL);
    await app.page.getByLabel(/^Each choice is lit for/).fill(PACE);
    await app.page.keyboard.press('Tab');
    // It is tried where it is taught, and does nothing else there.
    await press();
    await app.page.getByText(/Switch 1, press, \d+ % sure/).waitFor();
  });
  await begin(await demoRing());

  // The nuts are started by hand, and on.
  await choose('affirm');
  await choose('next');
  for (const value of READINGS) {
    await enter(value);
    expect(await app.wanted()).toContain(value);
    // What is under its window is heard as it was entered, and is not affirmed here.
    await choose(value === '10.5' ? 'negative' : 'affirm');
  }
  expect(await app.wanted()).toContain('Pass 2 of 2');

  const entries = await app.entries();
  expect(verify(entries)).toMatchObject({ kind: 'intact', entries: entries.length });
  const captured = ofKind(entries, 'reading captured');
  expect(captured.map(({ body }) => body.reading.value)).toEqual(READINGS);
  const confirmed = new Set(ofKind(entries, 'reading confirmed').map(({ body }) => body.of));
  const counted = captured.filter(({ seq }) => confirmed.has(seq)).map(({ body }) => body);
  expect(counted.map(({ fastener, pass, verdict }) => [fastener, pass, verdict])).toEqual(
    RING_ORDER.map((stud) => [stud, 1, 'in']),
  );
  expect(ofKind(entries, 'refused')).toEqual([]);
  const worked = entries.slice(entries.findIndex(({ body }) => body.kind === 'point settled'));
  expect(new Set(worked.map(({ source }) => source))).toEqual(new Set(['pedal']));
});

/** One contact on the screen, as wide as `radius` tells, in CSS pixels. */
async function touch(x: number, radius: number): Promise<void> {
  const devTools = await browser.context.newCDPSession(app.page);
  const touchPoints = [{ x, y: 300, radiusX: radius, radiusY: radius }];
  await devTools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
  await app.page.waitForTimeout(60);
  await devTools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await devTools.detach();
}
/** Half a knuckle and half a palm, in CSS pixels: 96 to an inch, where nobody held a ruler to the screen. */
const [KNUCKLE, PALM] = [45, 130];
const [LEFT, RIGHT] = [200, 1000];

test('a knuckle on two halves of the screen goes on, counts up a value and takes it back; a palm does nothing', async () => {
  await teach(() => app.page.getByLabel(/^The whole work screen is two halves/).check());
  await begin(smallProcedure);
  const recognised = app.page.locator('.halves [role="status"]');
  const touchAs = async (words: RegExp, x: number, radius = KNUCKLE): Promise<void> => {
    await app.page.waitForTimeout(SETTLE + 50);
    await touch(x, radius);
    await recognised.getByText(words).waitFor();
    // What is shown is of this touch, and not of the one before.
    await app.page.waitForTimeout(200);
  };
  const before = await app.wanted();
  await touchAs(/palm/, RIGHT, PALM);
  expect(await app.wanted()).toBe(before);
  await touchAs(/^tap/, RIGHT);
  await expect.poll(() => app.wanted()).not.toBe(before);

  const entered = app.page.locator('.switch-choices output');
  await touchAs(/^tap/, RIGHT);
  for (const _ of '1') await touchAs(/^tap/, LEFT);
  await touchAs(/^tap/, RIGHT);
  for (const _ of '12') await touchAs(/^tap/, LEFT);
  await touchAs(/^tap/, RIGHT);
  expect(await entered.innerText()).toBe('12');
  await touchAs(/^tap/, RIGHT);
  await expect.poll(() => app.wanted()).toContain('Is that correct?');
  await touchAs(/^tap/, LEFT);
  await expect.poll(() => app.wanted()).not.toContain('Is that correct?');

  const entries = await app.entries();
  const rejected = ofKind(entries, 'reading rejected');
  expect(ofKind(entries, 'reading captured').map(({ body, source }) => [body.reading.value, source])).toEqual([
    ['12', 'touch'],
  ]);
  expect(rejected.map(({ source }) => source)).toEqual(['touch']);
});
