// Set-up for a fresh clone, runnable before anything is installed: packages by the lock file, and with --browser a Chromium to test in.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { findBrowser } from './find-browser.mjs';

const STAMP = 'node_modules/.installed-lock';

function installPackages() {
  const lock = createHash('sha256').update(readFileSync('package-lock.json')).digest('hex');
  if (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === lock) return;
  console.log('Installing packages (once; about a minute)…');
  // Warnings are about packages of packages: nobody who starts the app can do anything about them.
  // One string through the shell: npm is a .cmd file on Windows, which Node runs in no other way.
  execFileSync('npm ci --no-audit --no-fund --loglevel=error', { stdio: 'inherit', shell: true });
  writeFileSync(STAMP, lock);
}

function ensureBrowser() {
  if (findBrowser()) return;
  const mayInstall = process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (mayInstall) {
    console.log('No Chromium found: installing Debian’s package…');
    execFileSync('apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium fonts-dejavu-core', {
      stdio: 'inherit',
      shell: true,
    });
    if (findBrowser()) return;
  }
  console.error(
    'No Chromium or Chrome was found: install one, or set BOTHHANDS_BROWSER to its program file, and run this again.',
  );
  process.exit(1);
}

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Bothhands needs Node 20.19 or newer; this is ${process.versions.node}.`);
  process.exit(1);
}
installPackages();
if (process.argv.includes('--browser')) ensureBrowser();
