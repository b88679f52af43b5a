import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { HELD_TO_SIGN } from '../../src/ui/signing.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { step } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

// Every screen in every theme, by the rules of axe-core for WCAG 2.2 AA; its contrast on the work screen by those for AAA; and
// none of them wider than a phone.

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
});
afterAll(() => browser.close());

/** What a person could stumble over, a line each; colours only, where all else was looked at in another theme. */
async function faults(page: Page, isColourOnly = false): Promise<readonly string[]> {
  // Evaluated, not loaded: the page's own policy lets in no script from outside.
  await page.evaluate(AXE);
  const isWork = (await page.locator('main.work').count()) > 0;
  const how = {
    runOnly: isColourOnly
      ? { type: 'rule', values: ['color-contrast', ...(isWork ? ['color-contrast-enhanced'] : [])] }
      : { type: 'tag', values: RULES },
    rules: { 'color-contrast-enhanced': { enabled: isWork } },
  };
  const found = await page.evaluate(async (options) => {
    const { axe } = globalThis as unknown as { axe: { run(of: Document, how: object): Promise<AxeResults> } };
    return (await axe.run(document, options)).violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`,
    );
  }, how);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  return overflow > 0 ? [...found, `${overflow} pixels too wide`] : found;
}

const SCREENS: Readonly<Record<string, () => Promise<void>>> = {
  start: async () => {},
  'microphone check': async () => {
    await app.page.evaluate(() => (location.hash = '#/check/A.%20Invented'));
    await app.page.locator('main.check').waitFor();
  },
  'teach and try': async () => {
    await app.page.evaluate(() => (location.hash = '#/teach'));
    await app.page.getByRole('button', { name: 'Teach one switch' }).click();
    await app.page.keyboard.press('PageDown');
    await app.page.getByText('Kept on this device for anybody').waitFor();
    // A long press that is no shorter than a rest: what is wrong is on the page as well.
    await app.page.getByLabel('Rests, when longer than (ms)').fill('10');
    await app.page.keyboard.press('Tab');
    await app.page.getByRole('alert').waitFor();
  },
  display: async () => {
    await app.page.evaluate(() => (location.hash = '#/display'));
    await app.page.locator('main.display-screen').waitFor();
  },
  replay: async () => {
    const file = {
      name: 'demo.bhsession',
      mimeType: 'application/octet-stream',
      buffer: readFileSync(DEMO_SESSION_FILE),
    };
    await app.page.evaluate(() => (location.hash = '#/'));
    await app.page.getByLabel('Open a sealed file').setInputFiles(file);
    await app.page.locator('main.replay').waitFor();
  },
  preparation: async () => {
    await app.page.goto(app.url);
    await app.page.getByLabel('Mechanic').fill('A. Invented');
    await app.page.getByRole('button', { name: /end cover/i }).click();
    await app.page.locator('main.prepare').waitFor();
    // What stops is told in its place as well.
    await app.page.getByRole('button', { name: /^Begin the work/ }).click();
  },
  editor: async () => {
    await app.page.evaluate(() => (location.hash = '#/editor'));
    await app.page.getByLabel('Open a procedure').setInputFiles('demo-data/fire-boat-pump-cover.json');
    await app.page.getByText('is open.').waitFor();
    // With a fault and all its steps unfolded, so that every kind of field is on the page.
    await app.page.getByLabel('Dry mass', { exact: true }).fill('41,5');
    await app.page.evaluate(() => document.querySelectorAll('details').forEach((each) => (each.open = true)));
  },
  work: async () => {
    await app.page.goto(app.url);
    await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
  },
  held: async () => {
    await app.page.goto(app.url);
    await app.page.getByLabel('Mechanic').fill('A. Invented');
    const buffer = Buffer.from(JSON.stringify(carried));
    const file = { name: 'carried.json', mimeType: 'application/json', buffer };
    await app.page.getByLabel('Open a procedure file').setInputFiles(file);
    await passPreparation(app.page);
    await app.tap('held');
    await app.tap('help');
    await app.page.locator('.help-called').waitFor();
  },
  answer: async () => {
    for (const name of ['Next', 'Next', 'set down', 'Where are we']) await app.tap(name);
    await app.page.locator('.answer').waitFor();
  },
  deciding: async () => {
    await app.type('70');
    await app.tap('Affirm');
    await app.type('leave open');
    await app.type('the glass is dirty');
    await app.tap('Affirm');
    await app.page.getByLabel('Who decides').waitFor();
  },
  signing: async () => {
    await app.answer();
    await app.page.getByRole('button', { name: 'Hold for two seconds to sign' }).waitFor();
  },
};

/** A weight, then a value: what it comes to last is a decision and a signature. */
const carried = {
  ...smallProcedure,
  signatures: ['mechanic'],
  steps: [
    step('carry', 'hold', { orientation: 'ports up', calls: ['Straight off', 'Two steps back', 'Down on the stand'] }),
    step('level', 'measure', { what: 'oil level', unit: 'mm', window: { min: '40', max: '60' } }),
  ],
};

describe.each(Object.entries(SCREENS))('the screen “%s”', (_, go) => {
  beforeAll(go);
  test.each([
    ['light', 1280, 800],
    ['dark', 1280, 800],
    ['light', 360, 740],
  ] as const)('has nothing to stumble over: %s, %i by %i', async (colorScheme, width, height) => {
    await app.page.emulateMedia({ colorScheme });
    await app.page.setViewportSize({ width, height });
    expect(await faults(app.page)).toEqual([]);
  });
  test.each(['bright sun', 'more contrast'])('keeps its contrast: %s', async (look) => {
    await app.page.emulateMedia({ colorScheme: 'dark', contrast: look === 'more contrast' ? 'more' : 'no-preference' });
    if (look === 'bright sun')
      await app.page.evaluate(() => (document.documentElement.dataset['theme'] = 'bright sun'));
    expect(await faults(app.page, true)).toEqual([]);
    await app.page.evaluate(() => delete document.documentElement.dataset['theme']);
    await app.page.emulateMedia({ contrast: 'no-preference' });
  });
});

test('a signature is a name and a press of two seconds: neither less of a press nor a press without a name signs', async () => {
  const signed = async () => ofKind(await app.entries(), 'signed').map(({ body, source }) => [body.person, source]);
  const button = app.page.getByRole('button', { name: 'Hold for two seconds to sign' });
  const press = async (milliseconds: number): Promise<void> => {
    await button.scrollIntoViewIfNeeded();
    const box = await button.boundingBox();
    if (!box) throw new Error('There is nothing to press.');
    await app.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await app.page.mouse.down();
    await app.page.waitForTimeout(milliseconds);
    await app.page.mouse.up();
  };
  await press(HELD_TO_SIGN + 300);
  await app.page.getByLabel('Your name').fill('A. Invented');
  await press(HELD_TO_SIGN / 2);
  expect(await signed()).toEqual([]);
  await press(HELD_TO_SIGN + 300);
  await expect.poll(signed).toEqual([['A. Invented', 'touch']]);
  await app.page.getByText('All steps are done.').first().waitFor();
});
