import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest';
import type { Hazard } from '../../src/procedure/procedure.ts';
import { GLANCE, visualAngle } from '../../src/ui/view/legible.ts';
import { AppPage } from '../support/app-page.ts';
import { calibrate } from '../support/calibrate.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';

// What is read at a glance is at least 22′ high (NUREG-0700, 1.3.1-4, prefers 20′ to 22′), measured on what is drawn.

/** In metres. */
const DISTANCE = 3;

let browser: Browser;
let app: AppPage;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  app = await AppPage.open(browser.context, inject('appUrl'));
  await begin(app.page);
});
afterAll(() => browser.close());

/** Begins to tighten twelve bolts, with these hazards. */
async function begin(page: Page, hazards: readonly Hazard[] = []): Promise<void> {
  const steps = smallProcedure.steps.filter(({ kind }) => kind === 'tighten').map((step) => ({ ...step, hazards }));
  const pattern = { ...smallProcedure.patterns?.[0], layout: { shape: 'ring', count: 12 }, order: explicit(12) };
  const procedure = { ...smallProcedure, steps, patterns: [pattern] };
  const file = { name: 'ring.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(procedure)) };
  await page.getByLabel('Mechanic').fill('A. Invented');
  await page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(page);
}

/** Twelve bolts; the first that is called has two digits. */
const explicit = (count: number) => ({
  kind: 'explicit',
  numbers: Array.from({ length: count }, (_, at) => ((at + 9) % count) + 1),
});

/** Measures the screen, from the job and back to it. */
async function calibrateFor(pixelsPerMm: number): Promise<void> {
  await app.page.getByRole('link', { name: /^Display/ }).click();
  await calibrate(app.page, pixelsPerMm);
  await app.page.getByRole('link', { name: 'Back to the job' }).click();
  await app.page.locator('main.work').waitFor();
}

/** The lowest digit of an element as it is drawn, in CSS pixels: the rows of its picture that hold ink. Nothing is asked of the font. */
async function digitHeight(page: Page, selector: string): Promise<number> {
  const boxes = await page.locator(selector).evaluate((element) => {
    const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
    const found: { x: number; y: number; width: number; height: number }[] = [];
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      if (node.parentElement !== element) continue;
      [...(node.textContent ?? '')].forEach((character, at) => {
        if (!/\d/.test(character)) return;
        const range = document.createRange();
        range.setStart(node, at);
        range.setEnd(node, at + 1);
        const { x, y, width, height } = range.getBoundingClientRect();
        found.push({ x, y, width, height });
      });
    }
    return found;
  });
  expect(boxes.length).toBeGreaterThan(0);
  const heights = [];
  for (const clip of boxes) {
    const png = (await page.screenshot({ clip })).toString('base64');
    heights.push(
      await page.evaluate(async (picture) => {
        const image = new Image();
        image.src = `data:image/png;base64,${picture}`;
        await image.decode();
        const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
        if (!pen) throw new Error('Nothing can be drawn here.');
        pen.drawImage(image, 0, 0);
        const { data } = pen.getImageData(0, 0, image.width, image.height);
        const lightness = (at: number): number => (data[at] ?? 0) + (data[at + 1] ?? 0) + (data[at + 2] ?? 0);
        const ground = lightness(0);
        const rows = Array.from({ length: image.height }, (_, y) => y).filter((y) =>
          Array.from({ length: image.width }, (_, x) => lightness(4 * (y * image.width + x))).some(
            // Half covered or more: what a grey edge adds is not counted.
            (value) => Math.abs(value - ground) > 300,
          ),
        );
        return (rows.at(-1) ?? 0) - (rows[0] ?? 0) + 1;
      }, png),
    );
  }
  return Math.min(...heights);
}

/** Letters are fitted into their room when it has changed. */
async function resize(page: Page, viewport: { readonly width: number; readonly height: number }): Promise<void> {
  await page.setViewportSize(viewport);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}

/** All of it is in sight without scrolling. */
const isInSight = (page: Page, selector: string): Promise<boolean> =>
  page.locator(selector).evaluate((element) => {
    const box = element.getBoundingClientRect();
    const frame = element.closest('.wanted')?.getBoundingClientRect();
    return frame !== undefined && box.top >= frame.top - 1 && box.bottom <= Math.min(frame.bottom, innerHeight) + 1;
  });

describe.each([
  ['24 inch, 1920 by 1080', { width: 1920, height: 1080 }, 531.4],
  ['13.3 inch, 1280 by 800', { width: 1280, height: 800 }, 286.5],
  ['a tablet upright, 820 by 1180', { width: 820, height: 1180 }, 157.8],
])('on a screen of %s', (_, viewport, glass) => {
  const pixelsPerMm = viewport.width / glass;
  beforeAll(async () => {
    await app.page.setViewportSize(viewport);
    await calibrateFor(pixelsPerMm);
  });

  test.each(['call', 'read-back'])(
    'number and value of a %s are seen under 22′ at 3 m, and are in sight',
    async (state) => {
      if (state === 'read-back') await app.type('12');
      for (const selector of ['.call .fastener-number', '.call .value']) {
        const height = (await digitHeight(app.page, selector)) / pixelsPerMm;
        expect(visualAngle(height, DISTANCE), selector).toBeGreaterThanOrEqual(GLANCE);
        expect(await isInSight(app.page, selector), selector).toBe(true);
      }
      await expect.poll(() => app.page.locator('.letters-reach').innerText()).not.toContain('not 3 m');
      if (state === 'read-back') await app.tap('Negative');
    },
  );
});

test('a screen that is too small for it says from how far its digits can be read', async () => {
  await app.page.setViewportSize({ width: 360, height: 740 });
  await calibrateFor(360 / 65);
  const link = app.page.locator('.letters-reach');
  await expect.poll(() => link.innerText()).toMatch(/digits to \d\.\d m, not 3 m/);
  const said = Number(/to ([\d.]+) m/.exec(await link.innerText())?.[1]);
  for (const selector of ['.call .fastener-number', '.call .value']) {
    const height = (await digitHeight(app.page, selector)) / (360 / 65);
    expect(visualAngle(height, said)).toBeGreaterThanOrEqual(GLANCE);
  }
});

test('in whatever room there is, what is asked is in sight with all that it is about', async () => {
  await app.type('14');
  const sizes = [];
  for (const height of [580, 640, 700, 760, 820]) {
    await resize(app.page, { width: 1280, height });
    const fit = await app.page
      .locator('.work-panel .inner')
      .evaluate((inner: HTMLElement) => inner.style.getPropertyValue('--fit'));
    sizes.push(Number(fit));
    for (const selector of ['.call .fastener-number', '.call .value', '.call .verdict', '.call .question'])
      expect(await isInSight(app.page, selector), `${selector} at ${height}`).toBe(true);
  }
  // At one of these sizes the letters had to become smaller for it.
  expect(Math.min(...sizes)).toBeLessThan(1);
  await app.tap('Negative');
});

/** A telephone upright and on its side. */
const TELEPHONES = [
  { width: 360, height: 740 },
  { width: 740, height: 360 },
];

test('on a telephone, number and value of a fastener that is called again are in sight, beside an answer too', async () => {
  await app.type('14');
  await app.tap('Affirm');
  await app.page.locator('.call .last-reading').waitFor();
  const look = async (beside: string): Promise<void> => {
    for (const viewport of TELEPHONES) {
      await resize(app.page, viewport);
      for (const selector of ['.call .fastener-number', '.call .value', '.call .reckoning'])
        expect(await isInSight(app.page, selector), `${selector}${beside}, ${viewport.width}`).toBe(true);
    }
  };
  await look('');
  await app.tap('Last values');
  await app.page.locator('.answer').waitFor();
  await look(' beside an answer');
});

test('on a telephone, what warns and what stops stands before number and value, and all four are in sight', async () => {
  const other = await openBrowser(['--use-fake-device-for-media-stream']);
  try {
    const warned = await AppPage.open(other.context, inject('appUrl'));
    const text = 'The housing is hot. Keep bare skin off it until it has cooled.';
    await begin(warned.page, [{ signal: 'warning', consequence: 'person', text }]);
    await warned.tap('Affirm');
    await warned.type('14');
    await warned.tap('Affirm');
    await warned.page.locator('.call .last-reading').waitFor();
    const inOrder = ['.call .hazard', '.call .stops', '.call .fastener-number', '.call .value'];
    for (const viewport of TELEPHONES) {
      await resize(warned.page, viewport);
      const tops = [];
      for (const selector of inOrder) {
        const box = await warned.page.locator(selector).boundingBox();
        tops.push(box?.y ?? NaN);
        expect(await isInSight(warned.page, selector), `${selector}, ${viewport.width}`).toBe(true);
      }
      expect(tops).toEqual(tops.toSorted((a, b) => a - b));
    }
  } finally {
    await other.close();
  }
});

test('on a telephone the sample of the display settings is whole', async () => {
  await app.page.setViewportSize({ width: 345, height: 740 });
  await app.page.getByRole('link', { name: /^Display/ }).click();
  const overflow = await app.page
    .locator('.sample')
    .evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth);
  expect(overflow).toBeLessThanOrEqual(0);
});
