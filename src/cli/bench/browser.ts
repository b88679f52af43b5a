/** What the record costs in a page: opening a sealed file, opening a session from the browser's own store, adding to it. */
import path from 'node:path';
import { createServer } from 'vite';
import { openBrowser } from '../hear/browser.ts';
import type * as PageModule from './in-page.ts';
import { percentile, say } from './measure.ts';
import { entriesOf, eventsOf, fileOf, makeKey } from './sealed.ts';

/** Studs for about a thousand and about ten thousand events: two for each of six readings. */
const [FEW, MANY] = [83, 833];
const ROUNDS = 3;
/** Entries that are added one after another, each on disk before the next. */
const ADDED = 200;
const PROJECT = path.join(import.meta.dirname, '../../..');

/** Measured in Chromium without a window, with the sources as they are, and its store on a disk. */
export async function benchBrowser(): Promise<void> {
  const server = await createServer({
    configFile: path.join(PROJECT, 'vite.config.ts'),
    logLevel: 'error',
    server: { port: 0, host: 'localhost', fs: { allow: [PROJECT] } },
  });
  await server.listen();
  const browser = await openBrowser();
  try {
    const page = await browser.context.newPage();
    await page.goto(`${server.resolvedUrls?.local[0] ?? ''}icon.svg`);
    const measure = async (studs: number) => {
      const session = `ring-${studs}`;
      const { entries } = await entriesOf(await eventsOf(studs), session);
      const file = Buffer.from(await fileOf(entries, session, await makeKey())).toString('base64');
      return {
        events: entries.length,
        ...(await page.evaluate(measured, { file, session, rounds: ROUNDS, added: ADDED })),
      };
    };
    const [few, many] = [await measure(FEW), await measure(MANY)];
    const times = many.events / few.events;
    const opening = (what: string, of: (found: PageModule.InPage) => number): void =>
      say(
        `${what}, checked and folded to its end (goal: under 1000 ms)`,
        `${Math.round(of(many))} ms; ratio ${(of(many) / of(few)).toFixed(1)} for ${times.toFixed(1)} times the events (expected: no more)`,
      );
    console.log(`In a page, ${many.events} events against ${few.events}:`);
    opening('Opening a sealed file', ({ openFile }) => openFile);
    opening('Opening a session that the browser keeps', ({ openKept }) => openKept);
    const medians = [few, many].map(({ adding }) => percentile(adding, 0.5));
    say(
      'Adding one entry to a session, until it is on disk',
      `ratio of medians ${((medians[1] ?? 0) / (medians[0] ?? 1)).toFixed(2)} (expected about 1); median ${(medians[1] ?? 0).toFixed(1)} ms, 95 % below ${percentile(many.adding, 0.95).toFixed(1)} ms`,
    );
  } finally {
    await browser.close();
    await server.close();
  }
}

/** Runs in the page, which loads the rest from the sources. */
const measured = (asked: PageModule.Asked): Promise<PageModule.InPage> =>
  (import(/* @vite-ignore */ `${location.origin}/cli/bench/in-page.ts`) as Promise<typeof PageModule>).then(
    ({ measureInPage }) => measureInPage(asked),
  );
