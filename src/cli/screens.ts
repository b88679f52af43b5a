/** Takes pictures of every screen of the build: `tsx src/cli/screens.ts --out FOLDER`. */
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import type { Theme } from '../storage/display.ts';
import { openBrowser } from './hear/browser.ts';
import { optionsOf, USAGE, type Options } from './screens/options.ts';
import { STATIONS, type Station } from './screens/stations.ts';
import { Walker } from './screens/walker.ts';
import { serveBuild } from './serve.ts';

async function main(args: readonly string[]): Promise<number> {
  const options = optionsOf(args);
  if (options === 'help') {
    console.log(USAGE);
    return 0;
  }
  if ('trouble' in options) {
    console.error(`${options.trouble}\n\n${USAGE}`);
    return 2;
  }
  await mkdir(options.out, { recursive: true });
  const { server, url } = await serveBuild(path.resolve(import.meta.dirname, '../../dist'), 0);
  const browser = await openBrowser(['--use-fake-device-for-media-stream']);
  try {
    const walker = new Walker(await browser.context.newPage(), url);
    for (const station of STATIONS) {
      const other = await station.go(walker);
      if (station.name.includes(options.only)) await picture(other?.page ?? walker.page, station, options);
      await other?.leave();
    }
    return 0;
  } catch (error) {
    console.error(`The walk broke off. ${String(error)}`);
    return 1;
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}

async function picture(page: Page, { name, isLong, media }: Station, { out, sizes, themes }: Options): Promise<void> {
  const before = page.viewportSize();
  for (const { width, height } of sizes) {
    await page.setViewportSize({ width, height });
    for (const theme of themes) {
      await put(page, theme, media ?? 'screen');
      const file = `${name}-${width}x${height}-${theme.replace(' ', '-')}.png`;
      await page.screenshot({ path: path.join(out, file), fullPage: isLong ?? false, animations: 'disabled' });
      console.log(file);
    }
  }
  await put(page, 'as the device', 'screen');
  if (before) await page.setViewportSize(before);
}

/** As the display page does it. */
async function put(page: Page, theme: Theme, media: 'screen' | 'print'): Promise<void> {
  await page.emulateMedia({ media, colorScheme: theme === 'dark' ? 'dark' : 'light' });
  await page.evaluate((chosen) => {
    const { dataset } = document.documentElement;
    if (chosen === 'as the device') delete dataset['theme'];
    else dataset['theme'] = chosen;
  }, theme);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
