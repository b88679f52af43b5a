import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, inject, test } from 'vitest';
import { STATIONS } from '../../src/cli/screens/stations.ts';
import { Walker } from '../../src/cli/screens/walker.ts';
import { openBrowser, type Browser } from '../support/chromium.ts';

// What a person has set in system or browser, on every screen of one walk: no motion, large zoom, colours of their own.

let browser: Browser;
let walker: Walker;
beforeEach(async () => {
  browser = await openBrowser(['--use-fake-device-for-media-stream']);
  walker = new Walker(await browser.context.newPage(), inject('appUrl'));
});
afterEach(() => browser.close());

/** 1280 pixels at a zoom of 200 % and of 400 %: the second is what WCAG 2.2, 1.4.10 asks for. */
const ZOOMED = [
  { width: 640, height: 400 },
  { width: 320, height: 640 },
];

const moving = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    document
      .getAnimations()
      .filter(({ playState }) => playState === 'running')
      .map(
        ({ effect }) =>
          `${effect instanceof KeyframeEffect ? (effect.target?.outerHTML ?? '').slice(0, 80) : ''} moves`,
      ),
  );

/** What has to be scrolled both ways. Tables and drawings may be (1.4.10), where they scroll by themselves. */
const tooWide = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    if (scrollWidth <= clientWidth) return [];
    const sticksOut = (each: Element): boolean => each.getBoundingClientRect().right + scrollX > clientWidth + 1;
    return [...document.body.querySelectorAll('*')]
      .filter((each) => sticksOut(each) && ![...each.children].some(sticksOut))
      .map((each) => `${each.outerHTML.slice(0, 100)} is too wide`)
      .slice(0, 3);
  });

/** The pattern plan as it is drawn: by state, the shape around a number, and whether the number stands out from it. */
const planOf = (page: Page) =>
  page.locator('.pattern-map').evaluate((plan) =>
    Object.fromEntries(
      [...plan.querySelectorAll('.fastener')].map((fastener) => {
        const state = ['done', 'next', 'doubt'].find((name) => fastener.classList.contains(name)) ?? 'open';
        const shapes = [...fastener.querySelectorAll('circle, path, polygon, rect')].map(
          (shape) => `${shape.tagName} ${shape.getAttribute('class') ?? ''}`,
        );
        const [head, number] = [fastener.querySelector('.head'), fastener.querySelector('text')];
        if (!head || !number) throw new Error('A fastener is a head and a number.');
        const { fill, stroke } = getComputedStyle(head);
        return [
          state,
          { shapes: shapes.join(', '), isReadable: getComputedStyle(number).fill !== fill, isDrawn: stroke !== 'none' },
        ] as const;
      }),
    ),
  );

/** What the next Tab lights: how it is marked. */
async function ringOf(page: Page): Promise<{ readonly style: string; readonly width: number }> {
  await page.keyboard.press('Tab');
  return page.evaluate(() => {
    const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement ?? document.body);
    return { style: outlineStyle, width: Number.parseFloat(outlineWidth) };
  });
}

test('nothing moves, nothing scrolls both ways, and forced colours leave shapes, words and focus', async () => {
  const { page } = walker;
  const faults: string[] = [];
  await page.emulateMedia({ reducedMotion: 'reduce' });
  for (const { name, go, media } of STATIONS) {
    const other = await go(walker);
    const shown = other?.page ?? page;
    if (other) await shown.emulateMedia({ reducedMotion: 'reduce' });
    faults.push(...(await moving(shown)).map((fault) => `${name}: ${fault}`));
    for (const zoomed of media === 'print' ? [] : ZOOMED) {
      await shown.setViewportSize(zoomed);
      faults.push(...(await tooWide(shown)).map((fault) => `${name}, ${zoomed.width} wide: ${fault}`));
    }
    await shown.setViewportSize({ width: 1280, height: 800 });
    if (name === 'work-open-again') {
      await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
      const plan = await planOf(page);
      expect(Object.keys(plan).sort()).toEqual(['done', 'doubt', 'open']);
      expect(new Set(Object.values(plan).map(({ shapes }) => shapes)).size).toBe(3);
      expect(Object.values(plan).every(({ isReadable, isDrawn }) => isReadable && isDrawn)).toBe(true);
      expect(await page.locator('.legend').innerText()).toMatch(/done 3[^]*in doubt 1[^]*open 6/);
      const ring = await ringOf(page);
      expect(ring.style).not.toBe('none');
      expect(ring.width).toBeGreaterThanOrEqual(2);
      // What does nothing now is told by its border, not by its colour.
      const borders = await page
        .locator('.actions .fixed:not(.seldom) button')
        .evaluateAll((buttons) =>
          buttons.map((button) => [
            button.matches(':disabled, [aria-disabled="true"]'),
            getComputedStyle(button).borderTopStyle,
          ]),
        );
      expect(borders.every(([isOff, border]) => border === (isOff ? 'dashed' : 'solid'))).toBe(true);
      expect(new Set(borders.map(([isOff]) => isOff)).size).toBe(2);
      await page.emulateMedia({ forcedColors: 'none', reducedMotion: 'reduce' });
    }
    await other?.leave();
  }
  expect(faults).toEqual([]);
  // The two looks can find something.
  await page.evaluate(() => {
    document.body.animate([{ opacity: 1 }, { opacity: 0.9 }], { duration: 60_000 });
    document.body.insertAdjacentHTML('beforeend', '<p class="wide-one">x</p>');
    const wide = document.querySelector<HTMLElement>('.wide-one');
    if (wide) wide.style.width = '5000px';
  });
  expect(await moving(page)).toHaveLength(1);
  expect(await tooWide(page)).toHaveLength(1);
});
