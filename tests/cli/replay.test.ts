import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
import { storyOf, storyText } from '../../src/cli/replay-text.ts';
import { recordIn, recordOf } from '../record/sealed.ts';
import { eventOf } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { forgedDemo, run, type Run } from './verify-run.ts';

let folder: string;
let told: Run;
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'replay-'));
  told = await run('replay', [DEMO_SESSION_FILE]);
});
afterAll(() => rm(folder, { recursive: true }));

describe('replay', () => {
  it('says first whether the file is intact, and ends with 0', () => {
    expect(told).toMatchObject({ code: 0, err: '' });
    expect(told.out[0]).toContain(': intact: ');
  });

  it('tells each entry in words, with its time, whose it is, and what was heard', () => {
    expect(told.out.find((line) => line.includes('21 N·m, over'))).toMatch(
      /^ +\d+ {2}2026-03-12 0[78]:\d\d:\d\dZ {2}Ida Falk \(invented\), by voice: Stud 3, pass 1: 21 N·m, over the window 11\.0 to 13\.0 N·m\. In doubt: digits swapped \(heard: “stud three at two one”\)$/,
    );
    expect(told.out.filter((line) => /^ +\d+ {2}2026-03-12 /.test(line)).length).toBe(
      Number(/intact: (\d+) entries/.exec(told.out[0] ?? '')?.[1]),
    );
  });

  it('says of words that were not spoken how they came in', async () => {
    const heard = { text: '12', words: [{ word: '12', confidence: '1.00' }] };
    const inputs = (['voice', 'key', 'pedal', 'gesture'] as const).map((source, seq) => ({
      ...eventOf({ kind: 'repeat asked' }, seq),
      source,
      heard,
    }));
    const lines = [...storyOf(await recordIn(await recordOf(smallProcedure, inputs)))].map(storyText);
    expect(lines.slice(-4).map((line) => /by .*/.exec(line)?.[0])).toEqual([
      'by voice: Asked to say again (heard: “12”)',
      'by key: Asked to say again (typed: “12”)',
      'by pedal: Asked to say again (entered: “12”)',
      'by gesture: Asked to say again (entered: “12”)',
    ]);
  });

  it('shows which value stands for each fastener in each pass, its verdict, and whose', () => {
    const at = told.out.indexOf('Tighten the main ring');
    expect(told.out[at + 1]).toMatch(/^stud {2}pass 1: first +pass 2: final$/);
    expect(told.out[at + 5]).toBe('4     12 N·m, in, Ida Falk (invented)  24.5 N·m, in, Ida Falk (invented)');
    expect(told.out).toContain('bolt  pass 1: snug by hand  pass 2: final');
  });

  it('shows every other reading as well, with what became of it', () => {
    const others = told.out.filter((line) => line.startsWith('  entry '));
    expect(others.map((line) => line.replace(/^ {2}entry \d+: /, ''))).toEqual([
      'stud 3, pass 1: first: 21 N·m, over, Ida Falk (invented): rejected at its read-back',
      'stud 8, pass 1: first: 11 N·m, in, Ida Falk (invented): corrected',
      'stud 4, pass 2: final: 27 N·m, over, Ida Falk (invented): confirmed, then read again',
    ]);
  });

  it('tells of a file that is not intact only what comes before the first bad entry, and ends with 1', async () => {
    const forged = await forgedDemo();
    const file = path.join(folder, 'forged.bhsession');
    await writeFile(file, forged.bytes);
    const { code, out } = await run('replay', [file]);
    expect(code).toBe(1);
    expect(out[0]).toContain(`NOT INTACT at entry ${forged.at}: its content was changed`);
    expect(out).toContain(`What follows, from entry ${forged.at} on, cannot be trusted and is not told.`);
    expect(out.filter((line) => /^ +\d+ {2}2026-/.test(line)).length).toBe(forged.at);
    const at = out.indexOf('Tighten the main ring');
    expect(out[at + 5]).toBe('4     12 N·m, in, Ida Falk (invented)  open');
  });

  it('gives one object a line with --json', async () => {
    const { code, out } = await run('replay', ['--json', DEMO_SESSION_FILE]);
    expect(code).toBe(0);
    const objects = out.map((line) => JSON.parse(line) as { kind: string; what?: string; rows?: unknown[] });
    expect(objects[0]).toMatchObject({ kind: 'verdict', verdict: 'intact' });
    expect(objects.filter(({ kind }) => kind === 'entry').at(-1)).toMatchObject({
      what: 'All steps are done: record closed',
    });
    expect(objects.filter(({ kind }) => kind === 'readings').map(({ rows }) => rows?.length)).toEqual([10, 3, 6]);
  });

  it('says of what is no sealed file that it is not readable, and ends with 2', async () => {
    const missing = path.join(folder, 'missing');
    expect(await run('replay', [missing])).toEqual({
      code: 2,
      out: [`${missing}: NOT READABLE: It cannot be opened (ENOENT).`],
      err: '',
    });
  });

  it.each([[[]], [['a', 'b']], [['--fast', 'a']]])('explains itself and ends with 2 for %j', async (args) => {
    const { code, out, err } = await run('replay', args);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('Usage: npm run replay -- ');
  });

  it('explains itself on request and ends with 0', async () =>
    expect(await run('replay', ['--help'])).toMatchObject({ code: 0 }));
});
