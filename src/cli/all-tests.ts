/**
 * Everything that `npm test` looks at, after set-up. Types, style and the rooms run beside the browser, at the lowest
 * priority: sound runs in real time and leaves half of two cores idle, and nothing else here measures time.
 *   tsx src/cli/all-tests.ts [--reports FOLDER] [FILTER OR OPTION OF VITEST…]
 * Each run of Vitest writes a report for machines into the folder. With a filter, only what it names is run. What failed in the
 * browser is run once more, whole files and alone: tests that share one spoken session cannot go back in it, and a fault fails
 * again. Nothing is run again that must hold each time (src/cli/once-more.ts). Both runs are printed.
 */
import { Buffer } from 'node:buffer';
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import * as v from 'valibot';
import { ONCE_MORE } from './once-more.ts';

const given = process.argv.slice(2);
const wanted = given[0] === '--reports' ? given.splice(0, 2)[1] : undefined;
const reports = path.resolve(wanted ?? mkdtempSync(path.join(tmpdir(), 'bothhands-')));

const reportOf = (name: string): string => path.join(reports, `${name}.json`);
const vitest = (name: string, ...options: readonly string[]): string =>
  ['npx --no-install vitest run', ...options]
    .concat('--reporter=default', '--reporter=json', `--outputFile.json="${reportOf(name)}"`)
    .join(' ');

const onceMore = path.join(mkdtempSync(path.join(tmpdir(), 'bothhands-')), 'files.json');

/** The files of the run in the browser that may be run once more; none where it did not come to its end. */
function filesToRunAgain(): readonly string[] {
  if (!existsSync(onceMore)) return [];
  const files = v.parse(v.array(v.string()), JSON.parse(readFileSync(onceMore, 'utf8')));
  return files.map((file) => path.relative('.', file));
}

const started = Date.now();
process.env[ONCE_MORE] = onceMore;

/** A process lowers itself before it begins anything: what it has begun sooner would keep the priority of before. */
const AT_LOWEST_PRIORITY = `
  const { setPriority, constants } = require('node:os');
  setPriority(constants.priority.PRIORITY_LOW);
  require('node:child_process')
    .spawn(process.argv[1], { shell: true, stdio: 'inherit' })
    .on('close', (code) => (process.exitCode = code ?? 1));
`;

/** Runs a command to its end; beside others, at the lowest priority, and printed when it is over. @returns whether all is in order */
function run(command: string, isBeside: boolean): Promise<boolean> {
  return new Promise((resolve) => {
    // One string through the shell: npm is a .cmd file on Windows, which Node runs in no other way.
    const child = isBeside
      ? spawn(process.execPath, ['--eval', AT_LOWEST_PRIORITY, command], { stdio: ['ignore', 'pipe', 'pipe'] })
      : spawn(command, { shell: true, stdio: ['ignore', 'inherit', 'inherit'] });
    const printed: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr]) stream?.on('data', (text: Buffer) => printed.push(text));
    child.on('close', (code) => {
      const seconds = Math.round((Date.now() - started) / 1000);
      console.log(
        `${Buffer.concat(printed).toString()}\n${command}: ${code === 0 ? 'in order' : 'NOT in order'} (after ${seconds} s)`,
      );
      resolve(code === 0);
    });
  });
}

async function oneByOne(isBeside: boolean, ...commands: readonly string[]): Promise<boolean> {
  let isInOrder = true;
  for (const command of commands) isInOrder = (await run(command, isBeside)) && isInOrder;
  return isInOrder;
}

const BROWSER = ['--project pages', '--project browser'] as const;

/** Everything, and then once more what failed in the browser. */
async function everything(): Promise<boolean> {
  const [beside, browser] = await Promise.all([
    oneByOne(true, 'npm run --silent typecheck', 'npm run --silent lint', vitest('1-rooms', '--project rooms')),
    oneByOne(
      false,
      vitest('2-browser', ...BROWSER, `--reporter="${path.resolve(import.meta.dirname, 'once-more.ts')}"`),
    ),
  ]);
  if (browser) return beside;
  const again = filesToRunAgain();
  if (again.length === 0) return false;
  console.log(`Once more, alone: ${again.join(', ')}`);
  return (await oneByOne(false, vitest('3-browser-alone', ...BROWSER, '--no-file-parallelism', ...again))) && beside;
}

const isInOrder = given.length > 0 ? await oneByOne(false, vitest('filtered', ...given)) : await everything();
rmSync(path.dirname(onceMore), { recursive: true });
if (wanted === undefined) rmSync(reports, { recursive: true });
process.exitCode = isInOrder ? 0 : 1;
