import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { STATIONS } from '../../src/cli/screens/stations.ts';
import { Walker } from '../../src/cli/screens/walker.ts';
import { calibrate } from '../support/calibrate.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

// Every control of the work screen in each of its states, on a measured screen: what does the work is 20 mm at least, for a
// glove (MIL-STD-1472E asks for 19 mm with arctic mittens); everything else 24 CSS pixels (WCAG 2.2, 2.5.8). And none of what
// does the work moves while the state changes. On a telephone, upright or on its side, what answers is in sight with what is
// asked, whole.

const PIXELS_PER_MM = 5;
const GLOVE = 20 * PIXELS_PER_MM;
const BARE = 24;
const VIEWPORTS = [
  { width: 1280, height: 800 },
  { width: 820, height: 1180 },
  { width: 360, height: 740 },
  { width: 740, height: 360 },
  { width: 844, height: 390 },
  { width: 640, height: 360 },
  { width: 568, height: 320 },
  { width: 345, height: 740 },
];
const isTelephone = ({ width, height }: { readonly width: number; readonly height: number }): boolean =>
  Math.min(width, height) < 480;

interface Control {
  readonly name: string;
  readonly doesTheWork: boolean;
  /** Its place, in CSS pixels from the top left of the page. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** What is asked is answered by it. */
  readonly answers: boolean;
  /** Its label is wider or taller than it is. */
  readonly isTooSmallForLabel: boolean;
}

/** What can be tapped. A field is as large as its label, which leads there. */
const controlsOf = (page: Page): Promise<readonly Control[]> =>
  page.locator('main.work').evaluate((main) =>
    [...main.querySelectorAll<HTMLElement>('button, a[href], input, select')]
      .filter((each) => each.checkVisibility())
      .map((each) => {
        const { left, top, width, height } = each.getBoundingClientRect();
        const label = document.createRange();
        label.selectNodeContents(each);
        const inside = label.getBoundingClientRect();
        return {
          name: `${each.tagName} ${each.innerText || each.getAttribute('name') || ''}`,
          doesTheWork:
            each.matches('.button, button') &&
            each.closest('.actions, .answers, .closing, .closed-note, .people, .halves') !== null,
          left: left + scrollX,
          top: top + scrollY,
          width,
          height,
          answers: each.matches('.answers button, .first-sight .actions button:nth-child(-n + 3)'),
          isTooSmallForLabel:
            each.matches('button') && (inside.width > each.clientWidth || inside.height > each.clientHeight),
        };
      }),
  );

/** What is asked or warned of, and not all in sight. */
const cutOff = (page: Page): Promise<readonly string[]> =>
  page.locator('.wanted').evaluate((wanted) => {
    const frame = wanted.getBoundingClientRect();
    return [...wanted.querySelectorAll<HTMLElement>('.sentence, .question, .signal')]
      .filter((each) => {
        const words = document.createRange();
        words.selectNodeContents(each);
        const { right, bottom } = words.getBoundingClientRect();
        return right > frame.right + 1 || bottom > frame.bottom + 1;
      })
      .map((each) => each.innerText);
  });

let browser: Browser;
let walker: Walker;
beforeAll(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  walker = new Walker(await browser.context.newPage(), inject('appUrl'));
  await walker.page.goto(walker.url);
  await walker.at('/display');
  await calibrate(walker.page, PIXELS_PER_MM);
});
afterAll(() => browser.close());

test('is large enough, and what does the work stays where it is', async () => {
  const faults: string[] = [];
  /** By viewport: where the lasting controls stood at first. */
  const places = new Map<number, Map<string, string>>();
  for (const { name: state, go } of STATIONS.filter(({ name }) => /^(prepare|work-.*)$/.test(name))) {
    await go(walker);
    if (!state.startsWith('work-')) continue;
    for (const viewport of VIEWPORTS) {
      await walker.page.setViewportSize(viewport);
      // Letters are fitted into their room when it has changed.
      await walker.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      const found = await controlsOf(walker.page);
      for (const { name, doesTheWork, width, height } of found) {
        const least = doesTheWork ? GLOVE : BARE;
        if (Math.min(width, height) < least - 0.5)
          faults.push(`${state}, ${viewport.width}: ${name} is ${width.toFixed(0)} by ${height.toFixed(0)}`);
      }
      for (const { name, isTooSmallForLabel } of found)
        if (isTooSmallForLabel) faults.push(`${state}, ${viewport.width}: ${name} is too small for its label`);
      // The forms at the end are as tall as they are; nobody wears gloves to sign.
      if (/deciding|signing|closed/.test(state)) continue;
      if (isTelephone(viewport)) {
        const answers = found.filter((each) => each.answers);
        expect(answers.length).toBeGreaterThanOrEqual(3);
        for (const { name, top, height } of answers)
          if (top + height > viewport.height) faults.push(`${state}, ${viewport.width}: ${name} is below the window`);
        // The smallest has room for what answers; what is asked may have to be scrolled.
        const cut = viewport.height < 360 ? [] : await cutOff(walker.page);
        for (const text of cut) faults.push(`${state}, ${viewport.width}: “${text}” is cut off`);
      }
      const fixed = await walker.page.locator('.actions .fixed:not(.seldom) button').allInnerTexts();
      expect(fixed).toHaveLength(8);
      const now = new Map(
        found
          .filter(({ name }) => fixed.some((label) => name === `BUTTON ${label}`))
          .map(({ name, left, top }) => [name, `${Math.round(left)}, ${Math.round(top)}`]),
      );
      const before = places.get(viewport.width) ?? now;
      places.set(viewport.width, before);
      for (const [name, place] of now)
        if (before.get(name) !== place)
          faults.push(`${state}, ${viewport.width}: ${name} moved from ${before.get(name)} to ${place}`);
    }
    await walker.page.setViewportSize({ width: 1280, height: 800 });
  }
  expect(faults).toEqual([]);
});

test('the way out of the two halves is as large, and lies free, in every size of screen', async () => {
  await walker.page.goto(walker.url);
  await walker.page.getByRole('link', { name: /^Teach and try/ }).click();
  await walker.page.getByLabel(/^The whole work screen is two halves/).check();
  await walker.page
    .getByText(/^Kept on this device for/)
    .first()
    .waitFor();
  for (const { name, go } of STATIONS.filter(({ name }) => /^(prepare|work-warning)$/.test(name))) {
    await go(walker);
    if (name === 'prepare') continue;
    for (const viewport of VIEWPORTS) {
      await walker.page.setViewportSize(viewport);
      const leave = walker.page.getByRole('button', { name: 'Leave halves' });
      const box = await leave.boundingBox();
      expect(Math.min(box?.width ?? 0, box?.height ?? 0), `${viewport.width}`).toBeGreaterThanOrEqual(GLOVE - 0.5);
      // Whole inside the bar, and nothing over it.
      await leave.click({ trial: true });
      const bar = await walker.page.locator('.halves > div').boundingBox();
      const status = await walker.page.locator('.halves [role="status"]').boundingBox();
      for (const part of [box, status]) {
        expect(part?.y ?? 0, `${viewport.width}`).toBeGreaterThanOrEqual((bar?.y ?? 0) - 0.5);
        expect((part?.y ?? 0) + (part?.height ?? 0)).toBeLessThanOrEqual((bar?.y ?? 0) + (bar?.height ?? 0) + 0.5);
      }
    }
  }
});
