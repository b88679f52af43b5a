/**
 * Everything that `npm test` looks at, after set-up. Types, style and the rooms run beside the browser, at the lowest
 * priority: sound runs in real time and leaves half of two cores idle, and nothing else here measures time.
 *   tsx src/cli/all-tests.ts [--reports FOLDER] [FILTER OR OPTION OF VITEST…]
 * Each run of Vitest writes a report for machines into the folder. With a filter, only what it names is run.
 */
import { Buffer } from 'node:buffer';
import { spawn } from 'node:child_process';
import path from 'node:path';

const given = process.argv.slice(2);
const reports = given[0] === '--reports' ? given.splice(0, 2)[1] : undefined;

const vitest = (name: string, ...options: readonly string[]): string => {
  const file = path.resolve(reports ?? '.', `${name}.json`);
  const report = reports === undefined ? [] : ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  return ['npx --no-install vitest run', ...options, ...report].join(' ');
};

const started = Date.now();

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

const all =
  given.length > 0
    ? [await oneByOne(false, vitest('filtered', ...given))]
    : await Promise.all([
        oneByOne(true, 'npm run --silent typecheck', 'npm run --silent lint', vitest('rooms', '--project rooms')),
        oneByOne(false, vitest('browser', '--project pages', '--project browser')),
      ]);
process.exitCode = all.every(Boolean) ? 0 : 1;
