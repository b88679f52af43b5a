/** Thousands of sealed files, one after another: whether memory stays flat, seen from outside the process. */
import { spawn } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { EXTENSION } from '../../record/sealed-file.ts';
import { say } from './measure.ts';
import { entriesOf, eventsOf, fileOf, makeKey } from './sealed.ts';

const [FEW, MANY] = [200, 2000];
/** Sessions in the stream that is verified: each file is read several times. */
const [SHORT, LONG] = [1000, 10_000];
/** Small sessions, so that many are made soon. */
const STUDS = 3;
const COMMANDS = path.join(import.meta.dirname, '..');

export async function benchFiles(): Promise<void> {
  const folder = await mkdtemp(path.join(tmpdir(), 'bench-'));
  try {
    const names = await makeFiles(folder);
    const stream = Array.from({ length: LONG / MANY }, () => names).flat();
    console.log(`A stream of ${LONG} sealed files against ${SHORT}:`);
    const [short, long] = [await verifyAll(stream.slice(0, SHORT)), await verifyAll(stream)];
    say('verify, time', ratio(short.seconds, long.seconds, LONG / SHORT));
    say('verify, memory at 10 %, 50 % and 100 % of the files (expected: flat)', long.memory.map(megabytes).join(', '));
    console.log(`${MANY} sealed files against ${FEW}:`);
    const [fewTables, manyTables] = [await fleet(path.join(folder, 'few')), await fleet(folder)];
    say('fleet, time', ratio(fewTables.seconds, manyTables.seconds, MANY / FEW));
    say('fleet, most memory (expected: flat)', `${megabytes(fewTables.peak)} and ${megabytes(manyTables.peak)}`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const ratio = (few: number, many: number, times: number): string =>
  `ratio ${(many / few).toFixed(1)} for ${times} times the files (expected up to ${times}: linear, after a start); ${many.toFixed(1)} s`;
const megabytes = (bytes: number | null): string =>
  bytes === null ? 'unknown here' : `${Math.round(bytes / 2 ** 20)} MiB`;

/** Files of sessions that differ in name alone; the first of them in a folder of their own. */
async function makeFiles(folder: string): Promise<readonly string[]> {
  const [events, key] = [await eventsOf(STUDS), await makeKey()];
  await Promise.all(['few', 'rest'].map((each) => mkdir(path.join(folder, each))));
  const names: string[] = [];
  for (let i = 0; i < MANY; i++) {
    const session = `session-${i}`;
    const name = path.join(folder, i < FEW ? 'few' : 'rest', `${session}${EXTENSION}`);
    await writeFile(name, await fileOf((await entriesOf(events, session)).entries, session, key));
    names.push(name);
  }
  return names;
}

async function verifyAll(names: readonly string[]) {
  const from = performance.now();
  const child = command('verify', ['-']);
  child.stdin.end(names.join('\n'));
  const memory: (number | null)[] = [];
  let told = 0;
  for await (const _line of createInterface({ input: child.stdout })) {
    told += 1;
    if ([0.1, 0.5, 1].some((share) => told === Math.floor(share * names.length)))
      memory.push(await memoryOf(child.pid));
  }
  if (told !== names.length) throw new Error(`verify told of ${told} files, not of ${names.length}.`);
  return { seconds: (performance.now() - from) / 1000, memory };
}

async function fleet(folder: string) {
  const from = performance.now();
  const child = command('fleet', [folder]);
  child.stdin.end();
  child.stdout.resume();
  let peak: number | null = null;
  const watch = setInterval(() => {
    void memoryOf(child.pid).then((now) => (peak = Math.max(peak ?? 0, now ?? 0) || null));
  }, 50);
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  clearInterval(watch);
  if (code !== 0) throw new Error(`fleet ended with ${code}.`);
  return { seconds: (performance.now() - from) / 1000, peak: peak as number | null };
}

const command = (name: string, args: readonly string[]) =>
  spawn(process.execPath, ['--import', 'tsx', path.join(COMMANDS, `${name}.ts`), ...args], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });

/** Memory that a process has in use now (resident set), in bytes; null where the system does not tell it so. */
async function memoryOf(pid: number | undefined): Promise<number | null> {
  try {
    const status = await readFile(`/proc/${pid}/status`, 'utf8');
    const [, kibibytes] = /^VmRSS:\s+(\d+) kB$/m.exec(status) ?? [];
    return kibibytes === undefined ? null : Number(kibibytes) * 1024;
  } catch {
    return null;
  }
}
