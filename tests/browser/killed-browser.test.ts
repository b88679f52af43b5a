/**
 * The browser is killed, all of its processes at once, at random moments of a session that is worked through the page. What
 * the page had acknowledged is on disk afterwards. `BOTHHANDS_KILLS=50` kills it fifty times; without, a few times.
 * A killed process leaves what the system has taken from it: this is no cut of the power.
 */
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { findBrowser } from '../../src/cli/find-browser.mjs';
import { verify, type Entry } from '../../src/record/entry.ts';
import { AppPage } from '../support/app-page.ts';

const KILLS = Number(process.env['BOTHHANDS_KILLS'] ?? 4);
/** A kill comes within this of the page being ready for work, in milliseconds. */
const LATEST_KILL = 3000;
const SECONDS_FOR_ONE = 40;

let profile: string;
beforeAll(async () => {
  profile = await mkdtemp(path.join(tmpdir(), 'bothhands-kill-'));
});
afterAll(() => rm(profile, { recursive: true, force: true, maxRetries: 5 }));

interface Running {
  readonly browser: Browser;
  readonly page: Page;
  /** Ends every process of the browser at once, none of which gets to run any more. */
  kill(): Promise<void>;
}

async function start(): Promise<Running> {
  const port = path.join(profile, 'DevToolsActivePort');
  await rm(port, { force: true });
  const flags = ['--headless=new', '--no-sandbox', '--no-first-run', '--mute-audio', '--remote-debugging-port=0'];
  // A group of its own: the browser has many processes, and all of them are to go.
  const child = spawn(findBrowser() ?? '', [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: 'ignore',
  });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portIn(port, child)}`);
  const page = await browser.contexts()[0]?.newPage();
  if (!page) throw new Error('The browser has no window.');
  return {
    browser,
    page,
    async kill() {
      if (child.pid !== undefined) process.kill(-child.pid, 'SIGKILL');
      await gone;
      await browser.close().catch(() => undefined);
    },
  };
}

/** The port that the browser listens at, once it has written it down. */
async function portIn(file: string, child: ChildProcess): Promise<string> {
  while (child.exitCode === null) {
    const text = await readFile(file, 'utf8').catch(() => '');
    const [port] = text.split('\n');
    if (port) return port;
    await sleep(20);
  }
  throw new Error('The browser did not start.');
}

/** Tells from inside the page, at the moment it is drawn, the number of the newest entry that is shown as logged. */
async function watchAcknowledged(page: Page, told: (seq: number) => void): Promise<void> {
  await page.exposeBinding('acknowledged', (_, seq: number) => told(seq));
  await page.evaluate(() => {
    const tell = (): void => {
      const shown = /^Logged (\d+)/.exec(document.querySelector('.logged')?.textContent ?? '')?.[1];
      if (shown !== undefined)
        void (window as unknown as { acknowledged(seq: number): void }).acknowledged(Number(shown));
    };
    new MutationObserver(tell).observe(document.body, { subtree: true, childList: true, characterData: true });
    tell();
  });
}

test(
  `killed ${KILLS} times, everything that was acknowledged is there`,
  { retry: 0, timeout: KILLS * SECONDS_FOR_ONE * 1000 },
  async () => {
    let address = '';
    let acknowledged = -1;
    let before: readonly Entry[] = [];
    for (let kill = 0; kill <= KILLS; kill++) {
      const { page, ...running } = await start();
      const app = new AppPage(page, inject('appUrl'));
      if (address === '') {
        await page.goto(app.url);
        await app.begin(/Oil cooler/, { mechanic: 'A. Invented' });
        address = page.url();
      } else {
        await page.goto(address);
        await page.locator('main.work').waitFor();
      }
      const found = await app.entries();
      expect(verify(found)).toMatchObject({ kind: 'intact' });
      // Nothing that was there is gone or other, and nothing that was shown as logged is missing.
      expect(found.slice(0, before.length).map(({ hash }) => hash)).toEqual(before.map(({ hash }) => hash));
      expect(found.length).toBeGreaterThan(acknowledged);
      before = found;
      if (kill === KILLS) {
        await running.kill();
        break;
      }
      await watchAcknowledged(page, (seq) => (acknowledged = Math.max(acknowledged, seq)));
      const wait = Math.random() * LATEST_KILL;
      let isKilled = false;
      const work = (async () => {
        while (!isKilled) await app.answer();
      })().catch(() => undefined);
      await sleep(wait);
      isKilled = true;
      await running.kill();
      await work;
    }
    // Something was seen as acknowledged, and work went on between the kills, or they would prove nothing.
    expect(acknowledged).toBeGreaterThan(0);
    expect(before.filter(({ body }) => body.kind !== 'reopened').length).toBeGreaterThan(KILLS / 2);
    console.log(`${KILLS} kills; the newest entry that was acknowledged is ${acknowledged}, all of them are there.`);
  },
);
