/**
 * The browser is killed, all of its processes at once, at random moments of a session that is spoken: real engine, real
 * stores, synthetic speech into the microphone of the page. What the page had acknowledged is on disk afterwards, with the
 * sound that it names. `BOTHHANDS_KILLS=50` kills it fifty times; without, a few times.
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
import { namedSounds } from '../../src/record/sounds.ts';
import { AppPage, ofKind } from '../support/app-page.ts';
import { passPreparation } from '../support/pass-preparation.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { installMicrophone } from '../support/spoken-microphone.ts';

const KILLS = Number(process.env['BOTHHANDS_KILLS'] ?? 3);
/** A kill comes within this of the first time that the ear is open, in milliseconds: about two readings with their answers. */
const LATEST_KILL = 10_000;
const SECONDS_FOR_ONE = 90;

/** More readings than are taken between all kills. */
const BOLTS = 90;
const manyBolts = {
  ...smallProcedure,
  patterns: [{ ...smallProcedure.patterns[0], layout: { shape: 'ring', count: BOLTS }, order: { kind: 'crosswise' } }],
};

let profile: string;
/** Ends the browser that runs, where a test fails. */
let endRunning: () => Promise<void> = () => Promise.resolve();
beforeAll(async () => {
  profile = await mkdtemp(path.join(tmpdir(), 'bothhands-kill-'));
});
afterAll(async () => {
  await endRunning();
  await rm(profile, { recursive: true, force: true, maxRetries: 5 });
});

interface Running {
  readonly browser: Browser;
  readonly page: Page;
  /** Ends every process of the browser at once, none of which gets to run any more. */
  kill(): Promise<void>;
}

async function start(): Promise<Running> {
  const port = path.join(profile, 'DevToolsActivePort');
  await rm(port, { force: true });
  const flags = [
    ...['--headless=new', '--no-sandbox', '--no-first-run', '--mute-audio', '--remote-debugging-port=0'],
    // A page that is opened again speaks and listens before anybody has touched it.
    '--autoplay-policy=no-user-gesture-required',
  ];
  // A group of its own: the browser has many processes, and all of them are to go.
  const child = spawn(findBrowser() ?? '', [...flags, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: 'ignore',
  });
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  endRunning = async () => {
    if (child.pid !== undefined && child.exitCode === null && child.signalCode === null)
      process.kill(-child.pid, 'SIGKILL');
    await gone;
  };
  const browser = await chromium.connectOverCDP(`http://127.0.0.1:${await portIn(port, child)}`);
  const [context] = browser.contexts();
  if (!context) throw new Error('The browser has no window.');
  await installMicrophone(context);
  const page = await context.newPage();
  return {
    browser,
    page,
    async kill() {
      await endRunning();
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

/** What the page shows: the number of the newest entry that stands there as logged, and what the ear does. */
interface Seen {
  readonly logged: number;
  readonly ear: string;
}

/** Tells from inside the page, at the moment it is drawn, what it shows. */
async function watch(page: Page, told: (seen: Seen) => void): Promise<void> {
  await page.exposeBinding('tellSeen', (_, seen: Seen) => told(seen));
  await page.evaluate(() => {
    const tell = (): void => {
      const logged = /^Logged (\d+)/.exec(document.querySelector('.logged')?.textContent ?? '')?.[1];
      const ear = document.querySelector('.hearing')?.className.replace('hearing ', '') ?? '';
      if (logged !== undefined)
        void (window as unknown as { tellSeen(seen: Seen): void }).tellSeen({ logged: Number(logged), ear });
    };
    new MutationObserver(tell).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
      attributes: true,
      attributeFilter: ['class'],
    });
    tell();
  });
}

/** The sounds that are on disk: the hash that each is kept by, and the one that it has. */
const soundsOnDisk = (page: Page): Promise<readonly (readonly [kept: string, found: string])[]> =>
  page.evaluate(async () => {
    const settled = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(new Error('The sounds cannot be read.'));
      });
    const opening = indexedDB.open('bothhands-sounds');
    opening.onupgradeneeded = () => opening.result.createObjectStore('sounds');
    const store = (await settled(opening)).transaction('sounds').objectStore('sounds');
    const [keys, sounds] = await Promise.all([settled(store.getAllKeys()), settled(store.getAll())]);
    opening.result.close();
    return Promise.all(
      (keys as [string, string][]).map(async ([, kept], i) => {
        const hash = new Uint8Array(await crypto.subtle.digest('SHA-256', sounds[i] as BufferSource));
        return [kept, Array.from(hash, (byte) => byte.toString(16).padStart(2, '0')).join('')] as const;
      }),
    );
  });

async function begin(app: AppPage): Promise<void> {
  await app.page.goto(app.url);
  await app.page.getByLabel('Mechanic').fill('A. Invented');
  await app.page.getByLabel('Everybody named here agrees').check();
  const buffer = Buffer.from(JSON.stringify(manyBolts));
  const file = { name: 'many-bolts.json', mimeType: 'application/json', buffer };
  await app.page.getByLabel('Open a procedure file').setInputFiles(file);
  await passPreparation(app.page);
}

/** Says what the page asks for. */
async function answerAloud(app: AppPage): Promise<void> {
  if (await app.page.getByRole('button', { name: 'Affirm', exact: true }).isEnabled()) await app.utter('affirm');
  else await app.utter(/bolt\s+\d/.test(await app.wanted()) ? 'one two' : 'next');
}

const confirmedIn = (entries: readonly Entry[]): number =>
  ofKind(entries, 'reading confirmed').filter(({ source }) => source === 'voice').length;

/** Nothing that was there is gone or other, nothing that was acknowledged is missing, and no sound that is named. */
async function checked(app: AppPage, before: readonly Entry[], acknowledged: number): Promise<readonly Entry[]> {
  const found = await app.entries();
  expect(verify(found)).toMatchObject({ kind: 'intact' });
  expect(found.slice(0, before.length).map(({ hash }) => hash)).toEqual(before.map(({ hash }) => hash));
  expect(found.length).toBeGreaterThan(acknowledged);
  const sounds = await soundsOnDisk(app.page);
  expect(sounds.filter(([kept, hash]) => kept !== hash)).toEqual([]);
  const there = new Set(sounds.map(([kept]) => kept));
  expect(namedSounds(found).filter(({ sha256 }) => !there.has(sha256))).toEqual([]);
  return found;
}

test(
  `killed ${KILLS} times while readings are spoken and read back, everything that was acknowledged is there`,
  { retry: 0, timeout: (KILLS + 1) * SECONDS_FOR_ONE * 1000 },
  async () => {
    let address = '';
    let acknowledged = -1;
    let ear = '';
    let before: readonly Entry[] = [];
    const killedWhile: string[] = [];

    /** Opens the session, checks what is there, and listens. */
    async function open(): Promise<{ readonly app: AppPage; readonly running: Running }> {
      const running = await start();
      const app = new AppPage(running.page, inject('appUrl'));
      if (address === '') await begin(app);
      else await app.page.goto(address);
      await app.page.locator('main.work').waitFor();
      address = app.page.url();
      before = await checked(app, before, acknowledged);
      await watch(app.page, (seen) => {
        acknowledged = Math.max(acknowledged, seen.logged);
        ({ ear } = seen);
      });
      await app.page.locator('.hearing.listening').waitFor();
      return { app, running };
    }

    for (let kill = 0; kill < KILLS; kill++) {
      const { app, running } = await open();
      let isKilled = false;
      const work = (async () => {
        while (!isKilled) await answerAloud(app);
      })().catch(() => undefined);
      // The first goes on to a reading that is confirmed, or the kills might all come before anything was said.
      if (kill === 0) await expect.poll(async () => confirmedIn(await app.entries()), { timeout: 120_000 }).toBe(1);
      await sleep(Math.random() * LATEST_KILL);
      isKilled = true;
      await running.kill();
      await work;
      killedWhile.push(ear);
      if (KILLS > 10)
        console.log(
          `kill ${kill + 1}: ${ear}; ${acknowledged + 1} acknowledged, ${before.length} found when it was opened.`,
        );
    }

    // The session goes on after the last.
    const { app, running } = await open();
    const confirmed = confirmedIn(before);
    while (confirmedIn(await app.entries()) === confirmed) await answerAloud(app);
    before = await checked(app, before, acknowledged);
    await running.kill();

    expect(confirmed).toBeGreaterThan(0);
    const times = (state: string): number => killedWhile.filter((each) => each.startsWith(state)).length;
    console.log(
      `${KILLS} kills: ${times('hearing')} while words were heard, ${times('muted')} while the app spoke, ${times('listening')} in between; ` +
        `${acknowledged + 1} entries acknowledged, none missing; ${confirmedIn(before)} readings confirmed by voice, ` +
        `${namedSounds(before).length} sounds kept.`,
    );
  },
);
