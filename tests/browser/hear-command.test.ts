import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordingsAbsent } from '../support/hearing-page.ts';
import { gain, join, resample, silence, synthesise, type Sound } from '../support/speech.ts';
import { writeWav } from '../support/wav.ts';

// The command as a person runs it: its own browser, the real engine, the embedded model. Times are not real time.
if (recordingsAbsent) console.warn(`People are not heard: ${recordingsAbsent}.`);

const ROOT = path.join(import.meta.dirname, '../..');
const PEOPLE = path.join(ROOT, '../shared/speech-model/testset/wav');

interface Run {
  readonly code: number | null;
  readonly out: readonly string[];
  readonly err: readonly string[];
}

const hear = (...args: readonly string[]): Promise<Run> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/hear.ts', ...args], { cwd: ROOT });
    let [out, err] = ['', ''];
    child.stdout.on('data', (data) => (out += String(data)));
    child.stderr.on('data', (data) => (err += String(data)));
    child.on('error', reject);
    const lines = (text: string): string[] => text.split('\n').filter(Boolean);
    child.on('close', (code) => resolve({ code, out: lines(out), err: lines(err) }));
  });

interface Line {
  readonly file: string;
  readonly transcript?: string;
  readonly text: string;
  readonly words: readonly { word: string; start: number; end: number; conf: number }[];
  readonly intent: { kind: string; value: string | null } | null;
  readonly outcome: string;
  readonly decisionMs: number | null;
  readonly doneMs: number | null;
}

const json = ({ out }: Run): Line[] => out.map((line) => JSON.parse(line) as Line);

let folder: string;
const at = (name: string): string => path.join(folder, name);
const said = async (text: string): Promise<Sound> => {
  const speech = await synthesise(text, { voice: 'rms' });
  return join(silence(300, speech.rate), speech, silence(300, speech.rate));
};
beforeAll(async () => {
  folder = await mkdtemp(path.join(tmpdir(), 'hear-'));
  await writeWav(at('value.wav'), await said('two four point five'));
  await writeWav(at('value-48k.wav'), resample(await said('two four point five'), 48_000));
  await writeWav(at('value-8k.wav'), resample(await said('two four point five'), 8_000));
  await writeWav(at('loud.wav'), gain(await said('two five'), 20));
  await writeFile(at('broken.wav'), 'This is no sound.');
  await writeWav(at('silent.wav'), silence(1000, 16_000));
  await writeFile(
    at('list.tsv'),
    ['file\ttranscript', 'value.wav\ttwo four point five', 'broken.wav\tone', 'gone.wav\ttwo', ''].join('\n'),
  );
});
afterAll(() => rm(folder, { recursive: true }));

describe('recordings', () => {
  it('are decoded at any rate, and say in one JSON object a line what was heard, meant and done', async () => {
    const run = await hear('--json', at('value.wav'), at('value-48k.wav'), at('value-8k.wav'), at('value.wav'));
    expect(run.err).toEqual([]);
    expect(run.code).toBe(0);
    const lines = json(run);
    expect(lines.map(({ file }) => path.basename(file))).toEqual([
      'value.wav',
      'value-48k.wav',
      'value-8k.wav',
      'value.wav',
    ]);
    for (const { text, words, intent, outcome, decisionMs, doneMs, ...others } of lines) {
      expect(Object.keys(others)).toEqual(['file']);
      expect(text).toBe('two four point five');
      expect(words.map(({ word }) => word).join(' ')).toBe(text);
      expect(intent).toEqual({ kind: 'reading', fastener: null, value: '24.5', unit: 'N·m' });
      expect(outcome).toBe('accepted');
      // The words lie where they were spoken: after 0.3 s of quiet, one after the other, before the end.
      for (const [i, { start, end, conf }] of words.entries()) {
        expect(start).toBeGreaterThanOrEqual(words[i - 1]?.end ?? 0.2);
        expect(end).toBeGreaterThan(start);
        expect(end).toBeLessThan(3);
        expect(conf).toBeGreaterThan(0.7);
      }
      // It cannot be known at once that nothing more will be said, and is known within the engine's own longest wait.
      expect(decisionMs).toBeGreaterThan(0);
      expect(decisionMs).toBeLessThan(3000);
      // The scale shows no more figures: nothing is shown before it is carried out.
      expect(doneMs).toBe(decisionMs);
    }
  });

  it('that are bad are named with the mend, and stop no other', async () => {
    const run = await hear('--json', at('silent.wav'), at('loud.wav'), at('list.tsv'), at('gone.wav'));
    expect(run.code).toBe(1);
    expect(
      json(run).map(({ file, transcript, text, outcome }) => [path.basename(file), transcript, text, outcome]),
    ).toEqual([
      ['loud.wav', undefined, 'two five', 'accepted'],
      ['value.wav', 'two four point five', 'two four point five', 'accepted'],
    ]);
    const told = (file: string, what: string): unknown =>
      expect.stringMatching(new RegExp(`${file}: ${what}.*\\.$`.replaceAll('/', '\\/')));
    expect(run.err).toEqual(
      expect.arrayContaining([
        told('silent.wav', 'it holds no sound'),
        told('loud.wav', 'clipped: \\d+ samples at full scale; decoded all the same'),
        told('broken.wav', 'it is not a WAV file'),
        told('list.tsv', 'line 4: gone.wav: there is no such file'),
        told('gone.wav', 'there is no such file'),
      ]),
    );
  });

  it('of a manifest are scored', async () => {
    const { out } = await hear(at('list.tsv'));
    expect(out).toContainEqual(expect.stringMatching(/^all +1 +100\.0 % \(4\/4\)/));
    expect(out.join('\n')).not.toContain('Confused');
    expect(out).toContain('Nothing was accepted that was not said.');
  });

  it.skipIf(recordingsAbsent)('of people are heard', async () => {
    const run = await hear('--json', path.join(PEOPLE, 'an4_cen3-fjlp-b.wav'), path.join(PEOPLE, 'string_15.wav'));
    expect(json(run).map(({ text }) => text)).toEqual(['one fifty', 'one one zero']);
  });
});

describe('what may be said', () => {
  it('is what a list holds, and the words that the model lacks are told', async () => {
    await writeFile(at('phrases.json'), JSON.stringify(['two four point five', 'zzyzx road', 'stop']));
    const run = await hear('--json', '--phrases', at('phrases.json'), at('value.wav'), at('loud.wav'));
    expect(run.err).toContainEqual('The model lacks zzyzx: phrases with such a word are left out.');
    expect(json(run)).toMatchObject([
      { intent: { kind: 'answer', outcome: 'two four point five' }, outcome: 'accepted' },
      { outcome: 'refused' },
    ]);
  });

  it('cannot be a list that the model has no word of', async () => {
    await writeFile(at('foreign.json'), JSON.stringify(['zzyzx']));
    const { code, out, err } = await hear('--phrases', at('foreign.json'), at('value.wav'));
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err).toContain('No phrase is left that the model can hear. Use other words.');
  });
});

it('a model that is none is refused, and nothing is decoded', async () => {
  await writeFile(at('model.tar.gz'), 'no model');
  for (const model of ['model.tar.gz', 'gone.tar.gz']) {
    const { code, out, err } = await hear('--model', at(model), at('value.wav'));
    expect({ code, out }).toEqual({ code: 2, out: [] });
    expect(err.join('\n')).toContain(at(model));
  }
});
