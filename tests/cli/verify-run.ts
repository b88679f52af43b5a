/** A command as a process of its own. */
import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';

const ROOT = path.join(import.meta.dirname, '../..');

export interface Run {
  readonly code: number | null;
  readonly out: readonly string[];
  readonly err: string;
}

/**
 * Runs a command of src/cli to its end.
 * @param input what it is given on standard input
 * @param node options for Node itself
 */
export const run = (
  command: 'verify' | 'replay' | 'fleet' | 'stamp',
  args: readonly string[],
  input = '',
  node: readonly string[] = [],
): Promise<Run> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...node, '--import', 'tsx', `src/cli/${command}.ts`, ...args], {
      cwd: ROOT,
    });
    let [out, err] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out: out.split('\n').filter(Boolean), err }));
    child.stdin.end(input);
  });

/** The demonstration with one value of its record changed, and the entry that it is in. */
export async function forgedDemo(): Promise<{ readonly bytes: Buffer; readonly at: number }> {
  const text = (await readFile(DEMO_SESSION_FILE)).toString('latin1');
  const [, seq] = /"value":"27".*"seq":(\d+),/.exec(text) ?? [];
  return { bytes: Buffer.from(text.replace('"value":"27"', '"value":"24"'), 'latin1'), at: Number(seq) };
}
