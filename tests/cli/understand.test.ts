import { spawn } from 'node:child_process';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { SITUATION_NAMES } from '../../src/language/named-situations.ts';

const ROOT = path.join(import.meta.dirname, '../..');

interface Run {
  readonly code: number | null;
  readonly out: readonly string[];
  readonly err: string;
}

/** The command as a process of its own, with this text on its standard input. */
const run = (args: readonly string[], input = ''): Promise<Run> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/understand.ts', ...args], { cwd: ROOT });
    let [out, err] = ['', ''];
    child.stdout.on('data', (data) => (out += String(data)));
    child.stderr.on('data', (data) => (err += String(data)));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out: out.split('\n').filter(Boolean), err }));
    child.stdin.end(input);
  });
const json = async (...args: readonly string[]): Promise<unknown[]> =>
  (await run(['--json', ...args])).out.map((line): unknown => JSON.parse(line));

const several = 'That can be understood in more than one way. Say stud, its number, at, and the value.';

describe('understand', () => {
  it('says what each utterance means, and what is asked', async () => {
    const texts = ['stud four at two four', 'twenty four five', 'next week', '4 24.5', 'correction two four', 'next'];
    expect(await run(texts)).toEqual({
      code: 0,
      out: [
        'stud four at two four: reading, number 4 at 24 N·m',
        `twenty four five: reading, 245 N·m; or reading, 24.5 N·m. Asks: ${several}`,
        'next week: nothing',
        '4 24.5: reading, number 4 at 24.5 N·m',
        'correction two four: correction, 24 N·m',
        'next: next',
      ],
      err: '',
    });
  });

  it('gives one JSON object a line, with values as decimal text', async () => {
    const of = (kind: string, value: string, fastener: string | null) => ({ kind, fastener, value, unit: 'N·m' });
    expect(
      await json('stud four at two four point five zero', 'twenty four five', 'one eight foot pounds', 'yes'),
    ).toEqual([
      {
        text: 'stud four at two four point five zero',
        intents: [of('reading', '24.50', '4')],
        ambiguous: false,
        ask: null,
      },
      {
        text: 'twenty four five',
        intents: [of('reading', '245', null), of('reading', '24.5', null)],
        ambiguous: true,
        ask: several,
      },
      {
        text: 'one eight foot pounds',
        intents: [],
        ambiguous: false,
        ask: 'The tool reads newton metres. Say the value that it shows.',
      },
      { text: 'yes', intents: [], ambiguous: false, ask: null },
    ]);
  });

  it('takes the situation by its name', async () => {
    const none = { fastener: null, value: null, unit: null };
    expect(await json('--phrases', 'confirm', 'negative', 'roger')).toEqual([
      { text: 'negative', intents: [{ kind: 'negative', ...none }], ambiguous: false, ask: null },
      { text: 'roger', intents: [], ambiguous: false, ask: 'Say affirm or negative.' },
    ]);
    expect(await json('--phrases', 'click', 'six click')).toMatchObject([
      { intents: [{ kind: 'click', fastener: '6' }] },
    ]);
    expect(await json('--phrases', 'check', 'fit a new one')).toMatchObject([
      { intents: [{ kind: 'answer', outcome: 'replace' }] },
    ]);
    expect(await json('--phrases', 'inches', 'two one seven')).toMatchObject([
      { intents: [{ value: '217', unit: 'lbf·in' }] },
    ]);
  });

  it('reads lines from standard input where no text is given', async () => {
    expect(await run([], 'next\n\n  two four  \n')).toEqual({
      code: 0,
      out: ['next: next', 'two four: reading, 24 N·m'],
      err: '',
    });
    expect(await run([])).toEqual({ code: 0, out: [], err: '' });
  });

  it('names the situations that exist, and ends with 2, for one that does not', async () => {
    const { code, out, err } = await run(['--phrases', 'toString', 'next']);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('There is no situation "toString".');
    for (const name of SITUATION_NAMES) expect(err).toContain(name);
  });

  it.each([[['--fast', 'next']], [['--phrases']]])('explains itself and ends with 2 for %j', async (args) => {
    const { code, out, err } = await run(args);
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('Usage: npm run understand');
  });

  it('explains itself on request and ends with 0', async () => {
    const { code, out } = await run(['--help']);
    expect(code).toBe(0);
    expect(out[0]).toBe('Usage: npm run understand -- [--phrases SITUATION] [--json] TEXT…');
  });
});
