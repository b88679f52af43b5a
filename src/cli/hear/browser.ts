import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext } from 'playwright-core';
import { findBrowser } from '../find-browser.mjs';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface Browser {
  readonly context: BrowserContext;
  /** Closes the browser; the profile with its storage goes with it. */
  close(): Promise<void>;
}

/**
 * Starts a real Chromium without a window, with a profile on disk, so that storage behaves as it does for a person.
 * @throws Error when there is none; the message says what to do
 */
export async function openBrowser(args: readonly string[] = []): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath)
    throw new Error(
      'No Chromium or Chrome was found: install one, or set BOTHHANDS_BROWSER to its program file (`npm test` installs one where it may).',
    );
  const profile = await mkdtemp(path.join(tmpdir(), 'bothhands-'));
  const remove = (): void => rmSync(profile, { recursive: true, force: true });
  // Also where the program is interrupted.
  process.once('exit', remove);
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    args: [...QUIET, ...args],
    viewport: { width: 1280, height: 800 },
  });
  return {
    context,
    close: async () => {
      await context.close();
      process.off('exit', remove);
      remove();
    },
  };
}
