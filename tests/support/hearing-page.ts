import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync, zipSync } from 'fflate';
import type { BrowserContext, Page } from 'playwright-core';
import type * as Bench from './hearing-bench.ts';
import type { Sound } from './hearing-bench.ts';

const project = path.resolve(import.meta.dirname, '../..');

declare global {
  /** The bench module, in a page that `benchPage` opened. */
  var hearingBench: typeof Bench;
}

const BENCH = `/@fs${path.join(import.meta.dirname, 'hearing-bench.ts')}`;

/** A model of 1.2 KB: loud is “one” or “two”, quiet is silence. */
export const toyModel = (): Buffer => readFileSync(path.join(import.meta.dirname, 'hearing-toy-model.tar.gz'));

export const REAL_MODEL = 'bothhands-en-small.tar.gz';
export const realModel = (): Buffer => readFileSync(path.join(project, 'models', REAL_MODEL));

const recordings = path.resolve(project, '../shared/speech-model/testset');
/** Recordings of people lie beside the project, not in it. */
export const recordingsAbsent: string | false = existsSync(path.join(recordings, 'manifest.tsv'))
  ? false
  : `no recordings at ${path.relative(project, recordings)}`;

/** A page on the server of the sources with nothing but the bench: the app does not start in it. */
export async function benchPage(context: BrowserContext, modulesUrl: string): Promise<Page> {
  const page = await context.newPage();
  const url = new URL('empty.html', modulesUrl).href;
  await page.route(url, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>Empty</title>' }),
  );
  await page.goto(url);
  // As a string: the test runner would rewrite the import for itself.
  await page.evaluate(`import(${JSON.stringify(BENCH)}).then((module) => void (globalThis.hearingBench = module))`);
  return page;
}

/** Puts the embedded model into this browser, so that the page's ears load it as the kept one. */
export const keepRealModel = (page: Page): Promise<void> =>
  page.evaluate(
    async ({ name, base64 }) => {
      const { hearing } = hearingBench.ear();
      const outcome = await hearing.loadModel(hearingBench.fileOf(name, base64));
      if (!outcome.ok) throw new Error(outcome.failure.detail);
      await hearing.close();
    },
    { name: REAL_MODEL, base64: realModel().toString('base64') },
  );

export interface Spoken {
  readonly file: string;
  readonly transcript: string;
  readonly kind: string;
  readonly sound: Sound;
}

/** The listed recordings, of 16-bit mono WAV. */
export function spoken(...files: readonly string[]): Spoken[] {
  const rows = readFileSync(path.join(recordings, 'manifest.tsv'), 'utf8').trim().split('\n');
  const byFile = new Map(rows.map((row) => [row.split('\t')[0] ?? '', row.split('\t')]));
  return files.map((name) => {
    const file = `wav/${name}.wav`;
    const [, transcript = '', , , , kind = ''] = byFile.get(file) ?? [];
    return { file, transcript, kind, sound: soundOf(readFileSync(path.join(recordings, file))) };
  });
}

function soundOf(wav: Buffer): Sound {
  let rate = 0;
  for (let at = 12; at + 8 <= wav.length;) {
    const [id, size] = [wav.toString('latin1', at, at + 4), wav.readUInt32LE(at + 4)];
    if (id === 'fmt ') rate = wav.readUInt32LE(at + 12);
    if (id === 'data') return { rate, base64: wav.subarray(at + 8, at + 8 + size).toString('base64') };
    at += 8 + size + (size % 2);
  }
  throw new Error('A WAV file without samples.');
}

/** One sound of several, all of the same rate, with this much near-silence before, between and after, in seconds. */
export function joined(sounds: readonly Sound[], gap: number): Sound {
  const rate = sounds[0]?.rate ?? 16_000;
  const quiet = Buffer.alloc(Math.round(gap * rate) * 2);
  for (let at = 0; at < quiet.length; at += 2) quiet.writeInt16LE(((at * 7919) % 9) - 4, at);
  const parts = sounds.flatMap((sound) => [Buffer.from(sound.base64, 'base64'), quiet]);
  return { rate, base64: Buffer.concat([quiet, ...parts]).toString('base64') };
}

/** A WAV file of it with exact zeros after it: a browser’s made-up microphone repeats the end for ever. */
export function wavOf({ base64, rate }: Sound, zeroSeconds: number): Buffer {
  const samples = Buffer.concat([Buffer.from(base64, 'base64'), Buffer.alloc(Math.round(zeroSeconds * rate) * 2)]);
  const head = Buffer.alloc(44);
  head.write('RIFF', 0, 'latin1');
  head.writeUInt32LE(36 + samples.length, 4);
  head.write('WAVEfmt ', 8, 'latin1');
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20); // PCM
  head.writeUInt16LE(1, 22); // mono
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(rate * 2, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36, 'latin1');
  head.writeUInt32LE(samples.length, 40);
  return Buffer.concat([head, samples]);
}

export const secondsOf = (sound: Sound): number => Buffer.byteLength(sound.base64, 'base64') / 2 / sound.rate;

/** The same files as a .zip. */
export function zipOf(tarGz: Buffer): Buffer {
  const tar = gunzipSync(tarGz);
  const text = (from: number, length: number): string =>
    Buffer.from(tar.subarray(from, from + length))
      .toString('latin1')
      .replace(/\0.*$/s, '')
      .trim();
  const files: Record<string, Uint8Array> = {};
  for (let at = 0; at + 512 <= tar.length && text(at, 100);) {
    const size = parseInt(text(at + 124, 12), 8);
    if (text(at + 156, 1) !== '5') files[text(at, 100)] = tar.slice(at + 512, at + 512 + size);
    at += 512 + Math.ceil(size / 512) * 512;
  }
  return Buffer.from(zipSync(files));
}
