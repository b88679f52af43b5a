import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { AppPage, ofKind } from '../support/app-page.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

// Somebody who never saw the app writes a procedure for twelve bolts, click by click, and works its first pass by voice.

declare global {
  /** The sounds that a page has begun to play: how long each is, in seconds. */
  var soundsPlayed: number[];
}

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser();
  await installMicrophone(browser.context);
  await browser.context.addInitScript(() => {
    globalThis.soundsPlayed = [];
    const start: (...when: readonly number[]) => void = Reflect.get(AudioBufferSourceNode.prototype, 'start');
    AudioBufferSourceNode.prototype.start = function (...when) {
      globalThis.soundsPlayed.push(this.buffer?.duration ?? 0);
      Reflect.apply(start, this, when);
    };
  });
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

const fill = (label: string, words: string): Promise<void> => app.page.getByLabel(label, { exact: true }).fill(words);
const choose = async (label: string, option: string): Promise<void> => {
  await app.page.getByLabel(label, { exact: true }).selectOption(option);
};
const click = (name: string): Promise<void> => app.page.getByRole('button', { name, exact: true }).click();

test('a procedure for twelve bolts is written without a word of JSON', async () => {
  await app.page.goto(app.url);
  await app.page.getByRole('link', { name: 'Write a procedure' }).click();
  await click('New procedure');
  await fill('Title', 'Twelve bolts');
  await fill('Source document', 'Invented sheet 12');
  await fill('Revision', 'A');
  await app.page.getByLabel('All values are invented, for a demonstration').check();
  await fill('Name of the component', 'Filter cover');
  await fill('Dry mass', '4');

  await fill('Name of the pattern', 'Cover ring');
  await fill('How many', '12');
  // The order of twelve crosswise as the older gasket guides print it (PCC-1 legacy), from memory.
  await app.page.getByText('1 → 7 → 4 → 10 → 2 → 8 → 5 → 11 → 3 → 9 → 6 → 12').first().waitFor();
  expect(await app.page.locator('.drawing .fastener').count()).toBe(12);

  await fill('Name of the tool', 'Invented wrench');
  await choose('Type', 'indicating');
  await fill('Range from', '5');
  await fill('Range to', '60');
  await fill('Resolution', '0.5');
  await fill('Calibration due', '2031-03-31');

  await fill('Title of the step', 'Tighten the cover');
  await fill('What is to be done', 'Tighten the twelve bolts.');
  await fill('Final torque', '24');
  await fill('Accepted from', '22');
  await fill('Accepted to', '26');
  await choose('Kind of pass', 'snug');
  await click('Add a pass');
  await app.page.getByLabel('Per cent', { exact: true }).last().fill('50');
  await click('Add a pass');
  const planned = app.page.locator('.planned');
  await planned.getByText('50 %: 12 N·m, accepted 11 to 13 N·m').waitFor();
  await planned.getByText('final: 24 N·m, accepted 22 to 26 N·m').waitFor();
  await app.page.getByText(/^A job can begin with it\./).waitFor();
});

test('a slip is named beside its field and in the list, moves nothing, and is still there when the page is opened again', async () => {
  const field = app.page.getByLabel('Final torque', { exact: true });
  const below = app.page.getByRole('button', { name: 'Say the passes of Tighten the cover' });
  await field.fill('24,5');
  await app.page.locator('#at-steps-0-final-target-said').getByText('Found "24,5"').waitFor();
  await field.evaluate((element) => element.scrollIntoView({ block: 'start' }));
  const at = await below.boundingBox();
  await field.fill('24');
  await field.fill('24,5');
  expect(await below.boundingBox()).toEqual(at);

  await app.page.reload();
  await expect.poll(() => field.inputValue()).toBe('24,5');
  await app.page.getByRole('button', { name: /^Wrong step 1 "Tighten the cover", final, target/ }).click();
  expect(await field.evaluate((element) => element === document.activeElement)).toBe(true);
  await field.fill('24');
  await app.page.getByText(/^A job can begin with it\./).waitFor();
});

test('the order and the passes are spoken', async () => {
  const longest = (): Promise<number> => app.page.evaluate(() => Math.max(0, ...globalThis.soundsPlayed));
  for (const name of ['Say the order of Cover ring', 'Say the passes of Tighten the cover']) {
    await app.page.evaluate(() => (globalThis.soundsPlayed = []));
    await click(name);
    // Twelve numbers, or a pass with its values, take seconds to say; a signal tone does not.
    await expect.poll(longest, { timeout: 20_000 }).toBeGreaterThan(1.5);
  }
});

test('it is saved as a file, and compared with it in words', async () => {
  const saving = app.page.waitForEvent('download');
  await click('Save as a file');
  const saved = await (await saving).path();
  expect(JSON.parse(readFileSync(saved, 'utf8'))).toMatchObject({ id: 'twelve-bolts', title: 'Twelve bolts' });
  await app.page.getByLabel('Per cent', { exact: true }).first().fill('40');
  await app.page.getByLabel('Compare with a version').setInputFiles(saved);
  await app.page.getByText('changed from "50" to "40"').waitFor();
  await click('Undo');
});

test('a table of fasteners and a data module are taken over, and what was here comes back', async () => {
  const csv = Buffer.from('number;x;y\n1;0;0\n2;1;0\n3;0,5;1\n');
  const table = { name: 'places.csv', mimeType: 'text/csv', buffer: csv };
  await app.page.getByLabel('Take places from a table (CSV)').setInputFiles(table);
  await app.page.getByText('3 fasteners were taken from places.csv.').waitFor();
  expect(await app.page.locator('.drawing .fastener').count()).toBe(3);
  await app.page
    .getByText(/A crosswise order needs a ring/)
    .first()
    .waitFor();
  await click('Undo');

  await app.page.getByLabel('Import a data module').setInputFiles('tests/procedure/import/pump-cover-module.xml');
  await app.page.getByText('which fasteners are tightened is not in the module').waitFor();
  await app.page.getByText('2.3 Fit the cover').first().waitFor();
  await click('I have looked all of it up');
  await click('Undo');
  await app.page.getByText(/^A job can begin with it\./).waitFor();
});

test.each(['ropeway-oil-cooler', 'fire-boat-pump-cover'])(
  '%s is the same file after every field of the page was given what it shows',
  async (name) => {
    const file = `demo-data/${name}.json`;
    await app.page.getByLabel('Open a procedure').setInputFiles(file);
    await app.page.getByText(`${name}.json is open.`).waitFor();
    const touched = await app.page.evaluate(() => {
      const fields = [...document.querySelectorAll('main.editor :is(input:not([type]), textarea, select)')];
      for (const field of fields) {
        const event = field instanceof HTMLSelectElement ? 'change' : 'input';
        field.dispatchEvent(new Event(event, { bubbles: true }));
      }
      return fields.length;
    });
    expect(touched).toBeGreaterThan(200);
    const saving = app.page.waitForEvent('download');
    await click('Save as a file');
    const saved = readFileSync(await (await saving).path(), 'utf8');
    expect(JSON.parse(saved)).toEqual(JSON.parse(readFileSync(file, 'utf8')));
    // Nothing was changed, so that one step back leads to what was here before.
    await click('Undo');
    expect(await app.page.getByLabel('Title', { exact: true }).inputValue()).toBe('Twelve bolts');
  },
);

test('a job begins with it, and its first pass is worked by voice', async () => {
  await click('Begin a job with it');
  await app.page.getByRole('heading', { name: 'Prepare: Twelve bolts' }).waitFor();
  await app.page.getByLabel('Mechanic: does the work').fill('A. Invented');
  await passPreparation(app.page);
  const order = [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12];
  for (const bolt of order) {
    await expect.poll(() => app.wanted()).toMatch(new RegExp(`bolt\\s+${bolt}\\b`));
    await app.say('next');
  }
  const entries = await app.entries();
  const done = ofKind(entries, 'fastener done');
  expect(done.map(({ body }) => body.fastener)).toEqual(order);
  expect(done.every(({ source }) => source === 'voice')).toBe(true);
  expect(await app.wanted()).toMatch(/bolt\s+1\s+Pass 2 of 3[^]*\b12\s+N·m/);
});
