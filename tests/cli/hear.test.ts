import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// What ends before any browser is needed; the rest is in tests/browser/hear-command.test.ts.
const ROOT = path.join(import.meta.dirname, '../..');

interface Run {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** The command as a process of its own; no browser is to be found. */
const hear = (...args: readonly string[]): Promise<Run> =>
  new Promise((resolve, reject) => {
    const env = { ...process.env, BOTHHANDS_BROWSER: path.join(ROOT, 'no-such-browser') };
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/hear.ts', ...args], { cwd: ROOT, env });
    let [out, err] = ['', ''];
    child.stdout.on('data', (data) => (out += String(data)));
    child.stderr.on('data', (data) => (err += String(data)));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
  });

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'hear-'));
  await writeFile(path.join(folder, 'manifest.tsv'), 'name\twords\n');
});
afterAll(() => rm(folder, { recursive: true }));

describe('hear', () => {
  it('explains itself on request and ends with 0', async () => {
    const { code, out } = await hear('--help');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Usage: npm run hear -- \[--phrases SITUATION\|FILE\] \[--model FILE\] \[--json\] FILE-OR-FOLDER…/,
    );
    expect(out).toContain('decisionMs: from the end of speech to when the decision that stood was shown');
  });

  it.each([[[]], [['--loud', 'a.wav']], [['a.wav', '--phrases']]])(
    'explains itself and ends with 2 for %j',
    async (args) => {
      const { code, out, err } = await hear(...args);
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain('Usage: npm run hear');
    },
  );

  it('names the situations that exist, and ends with 2, for one that does not', async () => {
    const { code, err } = await hear('--phrases', 'lunch', folder);
    expect(code).toBe(2);
    expect(err).toContain('There is no situation "lunch", and no file of that name. There are: step, warning,');
  });

  it('names each file that cannot be used, and ends with 1', async () => {
    const missing = path.join(folder, 'gone.wav');
    expect(await hear('--json', missing, folder)).toEqual({
      code: 1,
      out: '',
      err: [
        `${missing}: there is no such file; see that its name and folder are right.`,
        `${path.join(folder, 'manifest.tsv')}: line 1: there is no column "file"; the first line names the columns, separated by tabs, and has at least file and transcript.`,
        '',
      ].join('\n'),
    });
  });

  it('says what to do where there is no browser, and ends with 2', async () => {
    const { code, out, err } = await hear(import.meta.filename);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(/^No Chromium or Chrome was found: install one, or set BOTHHANDS_BROWSER/);
  });
});
