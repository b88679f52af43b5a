/**
 * Everything that `npm test` looks at, after set-up. Types, style and the rooms run beside the browser, at the lowest
 * priority: sound runs in real time and leaves half of two cores idle, and nothing else here measures time.
 *   tsx src/cli/all-tests.ts [--reports FOLDER] [FILTER OR OPTION OF VITEST…]
 * Each run of Vitest writes a report for machines into the folder. With a filter, only what it names is run.
 */
import { Buffer } from 'node:buffer';
import { spawn } from 'node:child_process';
import { constants, setPriority } from 'node:os';
import path from 'node:path';

const given = process.argv.slice(2);
const reports = given[0] === '--reports' ? given.splice(0, 2)[1] : undefined;

const vitest = (name: string, ...options: readonly string[]): string => {
  const file = path.resolve(reports ?? '.', `${name}.json`);
  const report = reports === undefined ? [] : ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  return ['npx --no-install vitest run', ...options, ...report].join(' ');
};

const started = Date.now();

/** Runs a command to its end; beside others, at the lowest priority, and printed when it is over. @returns whether all is in order */
function run(command: string, isBeside: boolean): Promise<boolean> {
  return new Promise((resolve) => {
    const output = isBeside ? 'pipe' : 'inherit';
    // One string through the shell: npm is a .cmd file on Windows, which Node runs in no other way.
    const child = spawn(command, { shell: true, stdio: ['ignore', output, output] });
    if (isBeside && child.pid !== undefined) setPriority(child.pid, constants.priority.PRIORITY_LOW);
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
