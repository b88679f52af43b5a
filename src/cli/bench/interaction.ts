/** How long a touch or key waits for what it changes on the screen while speech is decoded: the work screen in a page. */
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { build } from 'vite';
import type { Page } from 'playwright-core';
import { wavFile } from '../../record/wav.ts';
import { compileFlite, runFlite } from '../../speaking/flite.ts';
import { fliteBytes } from '../bench-hearing/shop.ts';
import { openBrowser } from '../hear/browser.ts';
import { serveBuild } from '../serve.ts';
import { percentile, say } from './measure.ts';

const PROJECT = path.join(import.meta.dirname, '../../..');
/** Taps and keys, each. */
const TIMES = 40;
const BETWEEN_MS = 150;
/** Talk that is no phrase of the moment: it is decoded all the time and changes nothing. */
const TALK = 'the weather was fine on sunday and we went down to the river with the dog';

/** Measured in Chromium without a window, with the build, as event timing tells it (in steps of 8 ms). */
export async function benchInteraction(): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'bothhands-bench-'));
  try {
    const [dist, talk] = [path.join(folder, 'dist'), path.join(folder, 'talk.wav')];
    await build({
      configFile: path.join(PROJECT, 'vite.config.ts'),
      logLevel: 'error',
      build: { outDir: dist, emptyOutDir: true },
    });
    const { samples, rate } = runFlite(await compileFlite(await fliteBytes()), TALK, { voice: 'rms' });
    await writeFile(
      talk,
      wavFile(
        Int16Array.from(samples, (sample) => sample * 0x7fff),
        rate,
      ),
    );
    const site = await serveBuild(dist, 0);
    const browser = await openBrowser([
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      // Over and over.
      `--use-file-for-fake-audio-capture=${talk}`,
    ]);
    try {
      const page = await browser.context.newPage();
      await page.goto(site.url);
      await page.getByText('In use: bothhands').waitFor();
      report('with nothing else to do', await interactions(page));
      await page.getByRole('button', { name: 'Practise by voice' }).click();
      await page.locator('.hearing.hearing').filter({ hasText: 'Hearing:' }).waitFor({ timeout: 60_000 });
      report('while speech is decoded (goal: below 50 ms)', await interactions(page));
    } finally {
      await browser.close();
      site.server.closeAllConnections();
      site.server.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

function report(when: string, waits: readonly number[]): void {
  const of = (share: number): string => `${percentile(waits, share)} ms`;
  say(
    `From a tap or key to the next paint, ${when}`,
    `median ${of(0.5)}, 98 % within ${of(0.98)}, longest ${of(1)} (of ${waits.length})`,
  );
}

/** Taps and types into the first field there is. @returns milliseconds from each to the next paint; 0 where under 16 */
async function interactions(page: Page): Promise<readonly number[]> {
  await page.evaluate(() => {
    const longest = new Map<number, number>();
    Object.assign(window, { longest });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEventTiming & { interactionId?: number })[])
        if (entry.interactionId)
          longest.set(entry.interactionId, Math.max(longest.get(entry.interactionId) ?? 0, entry.duration));
    }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
  });
  const field = page.locator('main input:not([type="checkbox"])').first();
  for (let i = 0; i < TIMES; i++) {
    await field.click();
    await page.waitForTimeout(BETWEEN_MS);
    await page.keyboard.press('x');
    await page.waitForTimeout(BETWEEN_MS);
  }
  const seen = await page.evaluate(() => [...(window as unknown as { longest: Map<number, number> }).longest.values()]);
  // What takes less than 16 ms is not told at all.
  return [...seen, ...Array.from({ length: Math.max(0, 2 * TIMES - seen.length) }, () => 0)];
}
