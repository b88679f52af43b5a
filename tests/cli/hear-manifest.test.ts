import fc from 'fast-check';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inputsOf } from '../../src/cli/hear/inputs.ts';
import { readManifest } from '../../src/cli/hear/manifest.ts';
import { phrasesIn, sayableOf } from '../../src/cli/hear/sayable.ts';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('a manifest', () => {
  it('names recordings and what was said in them, in columns of any order, beside others', () => {
    expect(readManifest(utf8('kind\ttranscript\tspeaker\tfile\nloud\t Two  FOUR \tA\twav/1.wav\n'))).toEqual({
      rows: [{ line: 2, file: 'wav/1.wav', transcript: 'two four', kind: 'loud' }],
      faults: [],
    });
  });

  it('may end its lines in any way, begin with a byte order mark, and have empty lines and empty transcripts', () => {
    const { rows, faults } = readManifest(utf8('\ufefffile\ttranscript\r\na.wav\t\r\n\r\nb.wav\tone\r\n'));
    expect(faults).toEqual([]);
    expect(rows).toEqual([
      { line: 2, file: 'a.wav', transcript: '', kind: null },
      { line: 4, file: 'b.wav', transcript: 'one', kind: null },
    ]);
  });

  it('gives back whatever rows were written', () => {
    const cell = fc.stringMatching(/^[a-z0-9./ ]{1,12}$/).filter((text) => text.trim() === text && !/ {2}/.test(text));
    fc.assert(
      fc.property(fc.array(fc.record({ file: cell, transcript: cell }), { minLength: 1 }), (rows) => {
        const text = ['file\ttranscript', ...rows.map(({ file, transcript }) => `${file}\t${transcript}`)].join('\n');
        expect(readManifest(utf8(text)).rows.map(({ file, transcript }) => ({ file, transcript }))).toEqual(rows);
      }),
    );
  });

  it('tells a wrong row by its line, and keeps the others', () => {
    const { rows, faults } = readManifest(utf8('file\ttranscript\na.wav one\nb.wav\ttwo\n\tthree\nc.wav\tfour\tfive'));
    expect(rows).toMatchObject([{ file: 'b.wav' }]);
    expect(faults).toEqual([
      'line 2: 1 cells, and the header has 2; put a tab between cells',
      'line 4: the file is not named; name it relative to the manifest',
      'line 5: 3 cells, and the header has 2; put a tab between cells',
    ]);
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['without a header', utf8('a.wav\tone\n'), /^line 1: there is no column "file"; the first line names the columns/],
    ['without transcripts', utf8('file\na.wav\n'), /^line 1: there is no column "transcript"/],
    ['with a column twice', utf8('file\tfile\ttranscript\n'), /^line 1: there are 2 columns "file"; keep one$/],
    ['without rows', utf8('file\ttranscript\n'), /^it lists no recordings; add a line for each$/],
    ['that is empty', utf8(''), /^line 1: there is no column "file"/],
    ['that is no text', Uint8Array.of(0xff, 0xfe, 0x66, 0x00), /^it is not UTF-8 text/],
  ])('%s is refused', (_, bytes, message) => {
    expect(() => readManifest(bytes)).toThrow(message);
  });
});

describe('the names on the command line', () => {
  let folder: string;
  const at = (...names: readonly string[]): string => path.join(folder, ...names);
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'hear-'));
    for (const name of ['plain', 'listed/wav', 'none']) await mkdir(at(name), { recursive: true });
    await writeFile(at('plain/b.wav'), '');
    await writeFile(at('plain/a.WAV'), '');
    await writeFile(at('plain/notes.txt'), '');
    await writeFile(at('listed/wav/1.wav'), '');
    await writeFile(at('listed/manifest.tsv'), 'file\ttranscript\nwav/1.wav\tone\nwav/2.wav\ttwo\n');
    await writeFile(at('none/notes.txt'), '');
  });
  afterAll(() => rm(folder, { recursive: true }));

  it('stand for a file, all WAV files of a folder, or what a manifest lists', async () => {
    expect(await inputsOf(at('plain/notes.txt'))).toEqual([{ file: at('plain/notes.txt'), listed: null }]);
    expect(await inputsOf(at('plain'))).toEqual([
      { file: at('plain/a.WAV'), listed: null },
      { file: at('plain/b.wav'), listed: null },
    ]);
    const listed = await inputsOf(at('listed'));
    expect(listed).toEqual(await inputsOf(at('listed/manifest.tsv')));
    expect(listed).toEqual([
      { file: at('listed/wav/1.wav'), listed: { transcript: 'one', kind: null } },
      {
        file: at('listed/manifest.tsv'),
        trouble: 'line 3: wav/2.wav: there is no such file; see that its name and folder are right',
      },
    ]);
  });

  it('are told where they stand for nothing', async () => {
    const trouble = async (name: string) => (await inputsOf(name)).flatMap((each) => ('trouble' in each ? each : []));
    expect(await trouble(at('none'))).toEqual([
      {
        file: at('none'),
        trouble: 'there is no WAV file in this folder, and no manifest.tsv; name a folder that has some',
      },
    ]);
    expect(await trouble(at('missing.wav'))).toMatchObject([{ trouble: /^there is no such file/ }]);
  });
});

describe('what may be said', () => {
  it('is a situation by its name, or the phrases of a JSON list', async () => {
    expect(await sayableOf('confirm')).toEqual({ kind: 'situation', name: 'confirm' });
    expect(phrasesIn('[" One  two", "STOP", "stop"]')).toEqual(['one two', 'stop']);
  });

  it.each([
    ['{"one": 1}', 'it holds no list'],
    ['[]', 'its list is empty'],
    ['["one", 2]', 'entry 2 of the list is no text'],
    ['["one", " "]', 'entry 2 of the list is empty'],
    ['["24.5"]', 'entry 1 of the list is "24.5"; write words of letters alone'],
    [JSON.stringify(['a'.repeat(201)]), 'entry 1 of the list has 201 characters; at most 200'],
    ['["one"', 'it is not JSON'],
    [JSON.stringify(new Array(2001).fill('one')), 'its list has 2001 phrases; at most 2000'],
  ])('%.20s is refused: %s', (text, message) => {
    expect(() => phrasesIn(text)).toThrow(message);
  });

  it('names the situations there are for one that is not, and the file for a file', async () => {
    await expect(sayableOf('toString')).rejects.toThrow(
      /^There is no situation "toString", and no file of that name\. There are: step, /,
    );
    await expect(sayableOf('no/such.json')).rejects.toThrow('no/such.json: there is no such file');
  });
});
