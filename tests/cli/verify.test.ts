import { copyFile, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
import type { VerdictObject } from '../../src/cli/verify-file.ts';
import { forgedDemo, run } from './verify-run.ts';

let folder: string;
let at: number;
let changed: string;
let foreign: string;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'verify-'));
  changed = path.join(folder, 'changed.bhsession');
  foreign = path.join(folder, 'letter.bhsession');
  const forged = await forgedDemo();
  at = forged.at;
  await writeFile(changed, forged.bytes);
  await writeFile(foreign, 'Dear all');
});
afterAll(() => rm(folder, { recursive: true }));

describe('verify', () => {
  it('says of a file that is as it was sealed: intact, with its key, and ends with 0', async () => {
    const { code, out, err } = await run('verify', [DEMO_SESSION_FILE]);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toEqual([
      expect.stringMatching(
        /: intact: \d+ entries, closed 2026-03-12T\S+Z, sounds: \d+ there, sealed by key [A-Za-z0-9_-]{43}$/,
      ),
    ]);
  });

  it('names the first bad entry of a file that is not, and ends with 1', async () =>
    expect(await run('verify', [changed, DEMO_SESSION_FILE])).toEqual({
      code: 1,
      out: [
        `${changed}: NOT INTACT at entry ${at}: its content was changed after it was written`,
        expect.stringContaining(': intact: ') as string,
      ],
      err: '',
    }));

  it('says of what is no sealed file that it is not readable, goes on, and ends with 2', async () => {
    const missing = path.join(folder, 'missing');
    const { code, out } = await run('verify', [foreign, missing, folder, changed, DEMO_SESSION_FILE]);
    expect(code).toBe(2);
    expect(out).toEqual([
      `${foreign}: NOT READABLE: It is not a sealed session file: it does not begin as a zip archive does.`,
      `${missing}: NOT READABLE: It cannot be opened (ENOENT).`,
      `${folder}: NOT READABLE: It is no file.`,
      expect.stringContaining(`NOT INTACT at entry ${at}`),
      expect.stringContaining(': intact: '),
    ]);
  });

  it('gives one object a line with --json', async () => {
    const { code, out } = await run('verify', ['--json', changed, foreign, DEMO_SESSION_FILE]);
    expect(code).toBe(2);
    const [first, second, third] = out.map((line) => JSON.parse(line) as VerdictObject);
    expect(first).toMatchObject({ file: changed, verdict: 'not intact', at, head: null, thumbprint: null });
    expect(second).toMatchObject({ file: foreign, verdict: 'not readable', at: null, session: null });
    expect(third).toMatchObject({ verdict: 'intact', session: '2026-03-12-demonstration', at: null, why: null });
    expect(third?.head).toMatch(/^[0-9a-f]{64}$/);
  });

  it('holds a file to a key that is known', async () => {
    const [line = ''] = (await run('verify', [DEMO_SESSION_FILE])).out;
    const thumbprint = line.split(' ').at(-1) ?? '';
    expect(await run('verify', ['--key', 'another', '--key', thumbprint, DEMO_SESSION_FILE])).toMatchObject({
      code: 0,
    });
    expect(await run('verify', ['--key', 'another', DEMO_SESSION_FILE])).toMatchObject({
      code: 1,
      out: [expect.stringContaining(`NOT INTACT: it is sealed by another key, ${thumbprint}`)],
    });
  });

  it('takes names of files from standard input, hundreds in a small heap', async () => {
    const names = Array.from({ length: 300 }, (_, i) => (i === 150 ? changed : DEMO_SESSION_FILE));
    // Read together, these would be many times as much.
    const { code, out } = await run('verify', ['-'], `${names.join('\n')}\n`, ['--max-old-space-size=48']);
    expect(code).toBe(1);
    expect(out.length).toBe(300);
    expect(out.flatMap((line, i) => (line.includes(': intact: ') ? [] : [i]))).toEqual([150]);
  });

  it('keeps each file on one line, whatever it is called', async () => {
    const odd = path.join(folder, `odd\n${String.fromCharCode(0x1b)}[31m.bhsession`);
    await copyFile(foreign, odd);
    const { out } = await run('verify', [odd]);
    expect(out).toEqual([expect.stringContaining('odd\\u{000a}\\u{001b}[31m.bhsession: NOT READABLE')]);
  });

  it.each([[[]], [['--fast', 'x']], [['--key']]])('explains itself and ends with 2 for %j', async (args) => {
    const { code, out, err } = await run('verify', args);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('Usage: npm run verify -- ');
  });

  it('explains itself on request and ends with 0', async () => {
    const { code, out } = await run('verify', ['--help']);
    expect(code).toBe(0);
    expect(out[0]).toContain('Usage: npm run verify -- ');
  });
});
