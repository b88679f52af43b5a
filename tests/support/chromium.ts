import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext } from 'playwright-core';
import { findBrowser } from '../../src/cli/find-browser.mjs';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** Answers every permission question with yes and offers a made-up microphone and camera. */
export const FAKE_DEVICES = ['--use-fake-ui-for-media-stream', '--use-fake-device-for-media-stream'];

/** Plays a WAV file as the microphone, once, from the moment the microphone is opened. */
export const fakeMicrophone = (wav: string): string => `--use-file-for-fake-audio-capture=${wav}%noloop`;

export interface Browser {
  readonly context: BrowserContext;
  /** Closes the browser; the profile with its storage goes with it. */
  close(): Promise<void>;
}

/** Starts a real Chromium with a profile on disk, so that storage behaves as it does for a person. */
export async function openBrowser(args: readonly string[] = []): Promise<Browser> {
  const executablePath = findBrowser();
  if (!executablePath)
    throw new Error('No Chromium or Chrome was found: run `npm test`, which installs one where it may.');
  const profile = await mkdtemp(path.join(tmpdir(), 'bothhands-'));
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
      await rm(profile, { recursive: true, force: true });
    },
  };
}
