// Where a Chromium or Chrome usually is. Shared by the set-up, which has no packages yet, and by the tests.
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome', 'msedge'];
const FIXED = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  `${process.env['PROGRAMFILES'] ?? 'C:/Program Files'}/Google/Chrome/Application/chrome.exe`,
  `${process.env['PROGRAMFILES(X86)'] ?? 'C:/Program Files (x86)'}/Google/Chrome/Application/chrome.exe`,
];

/**
 * @returns {string | null} the program file of a Chromium-class browser, or null; BOTHHANDS_BROWSER wins
 */
export function findBrowser() {
  const asked = process.env['BOTHHANDS_BROWSER'];
  if (asked) return existsSync(asked) ? asked : null;
  const folders = (process.env['PATH'] ?? '').split(delimiter);
  const onPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...onPath, ...FIXED].find((file) => existsSync(file)) ?? null;
}
