import { execFile } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoPath, edited, type Json } from '../procedure/demo-files.ts';

const ROOT = path.join(import.meta.dirname, '../..');
const ROPEWAY = 'ropeway-oil-cooler';
let folder: string;
beforeAll(async () => void (folder = await mkdtemp(path.join(tmpdir(), 'check-'))));
afterAll(() => rm(folder, { recursive: true }));

interface Run {
  readonly code: number;
  readonly out: readonly string[];
  readonly err: string;
}

/** The command as a process of its own. */
const check = (...args: readonly string[]): Promise<Run> =>
  new Promise((resolve) => {
    const command = ['--import', 'tsx', 'src/cli/check.ts', ...args];
    execFile(process.execPath, command, { cwd: ROOT }, (error, out, err) =>
      resolve({ code: typeof error?.code === 'number' ? error.code : 0, out: out.split('\n').filter(Boolean), err }),
    );
  });

async function file(name: string, content: Json | Uint8Array): Promise<string> {
  const place = path.join(folder, name);
  await writeFile(place, content instanceof Uint8Array ? content : JSON.stringify(content));
  return place;
}

describe('check', () => {
  it('says ok for sound files, one line each, and ends with 0', async () => {
    const files = [demoPath(ROPEWAY), demoPath('fire-boat-pump-cover')];
    expect(await check(...files)).toEqual({ code: 0, out: files.map((name) => `${name}: ok`), err: '' });
  });

  it('gives one line for each error, with its path, and ends with 1', async () => {
    const faulty = await file(
      'faulty.json',
      edited(ROPEWAY, { title: undefined, 'steps.tighten-ring.passes.0.target.unit': 'Nm' }),
    );
    expect(await check(faulty)).toEqual({
      code: 1,
      out: [
        `${faulty}: title: missing, expected words in quotes`,
        `${faulty}: steps.9.passes.0.target.unit: found "Nm", expected a unit of torque: N·m, kgf·m, kgf·cm, lbf·in, lbf·ft, ozf·in`,
      ],
      err: '',
    });
  });

  it('gives warnings as warnings and still ends with 0', async () => {
    const undated = await file('undated.json', edited(ROPEWAY, { 'source.issued': undefined }));
    expect(await check(undated)).toEqual({
      code: 0,
      out: [
        `${undated}: source.issued: warning: the source document has no date; state it, so that an old issue is noticed`,
      ],
      err: '',
    });
  });

  it('keeps each fault on one line, whatever the fields and the file are called', async () => {
    const escape = String.fromCharCode(0x1b);
    const [one, other] = [`a\n${escape}[31m`, `b${String.fromCharCode(0x9b)}2J`];
    const odd = await file(
      'odd\nname.json',
      edited(ROPEWAY, { [`component.${one}`]: '1', [`component.${other}`]: '2' }),
    );
    const { out } = await check(odd);
    const name = JSON.stringify(odd);
    expect(out).toEqual([
      expect.stringContaining(
        `${name}: component."a\\n\\u001b[31m": unknown field (as are "b\\u009b2J"), expected one of: name`,
      ),
    ]);
  });

  it('goes on to the next file after a bad one', async () => {
    const broken = path.join(folder, 'broken.json');
    await writeFile(broken, '{\n  "format": \n}');
    const { code, out } = await check(broken, demoPath(ROPEWAY));
    expect(code).toBe(1);
    expect(out).toEqual([
      `${broken}: not readable as JSON at line 3, column 1: found "}", expected a value`,
      `${demoPath(ROPEWAY)}: ok`,
    ]);
  });

  it('tells a file that is not there, and one that is not text', async () => {
    const missing = path.join(folder, 'missing.json');
    const noText = await file('picture.json', Uint8Array.of(0x7b, 0xff, 0xfe, 0x7d));
    expect(await check(missing, noText)).toMatchObject({
      code: 1,
      out: [`${missing}: cannot be opened (ENOENT)`, `${noText}: not readable as text, expected UTF-8`],
    });
  });

  it.each([[[]], [['--fast', demoPath(ROPEWAY)]]])('explains itself and ends with 2 for %j', async (args) => {
    const { code, out, err } = await check(...args);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('Usage: npm run check -- FILE…');
  });

  it('explains itself on request and ends with 0', async () => {
    const { code, out } = await check('--help');
    expect(code).toBe(0);
    expect(out[0]).toBe('Usage: npm run check -- FILE…');
  });
});
