import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync, zipSync } from 'fflate';
import type { BrowserContext, Page } from 'playwright-core';
import { readManifest } from '../../src/cli/hear/manifest.ts';
import { decodeWav } from '../../src/speaking/wav.ts';
import { encodeWav } from './wav.ts';
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

/** The listed recordings. */
export function spoken(...files: readonly string[]): Spoken[] {
  const { rows } = readManifest(readFileSync(path.join(recordings, 'manifest.tsv')));
  const byFile = new Map(rows.map((row) => [row.file, row]));
  return files.map((name) => {
    const file = `wav/${name}.wav`;
    const { transcript, kind } = byFile.get(file) ?? { transcript: '', kind: null };
    return { file, transcript, kind: kind ?? '', sound: soundOf(readFileSync(path.join(recordings, file))) };
  });
}

function soundOf(wav: Buffer): Sound {
  const { samples, rate } = decodeWav(wav);
  return { rate, base64: Buffer.from(Int16Array.from(samples, (sample) => sample * 32_768).buffer).toString('base64') };
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
  const samples = new Int16Array(Uint8Array.from(Buffer.from(base64, 'base64')).buffer);
  const all = new Float32Array(samples.length + Math.round(zeroSeconds * rate));
  samples.forEach((sample, at) => (all[at] = sample / 32_768));
  return Buffer.from(encodeWav({ samples: all, rate }));
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
