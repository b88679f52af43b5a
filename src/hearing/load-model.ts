import { Engine } from './engine.ts';
import { HearingError, needSecureContext } from './failures.ts';
import { fetchArchive, readArchive, type Archive, type Progress } from './model-archive.ts';
import { addressOf, forget, hasFile, isKept, keepOnly, readTexts, seed, sizeOf } from './model-cache.ts';
import { Recogniser } from './recogniser.ts';
import type { ModelInfo, ModelSource } from './types.ts';

/** For a small model, on a slow machine; a large one gets more. */
const START_MS = 9_000;
const START_MS_PER_MEGABYTE = 500;

const SHA256 = /^[0-9a-f]{64}$/;
/** Two tabs that unpack at the same time would delete each other's files. */
const LOCK = 'speech-model';

export interface LoadedModel {
  readonly engine: Engine;
  readonly info: ModelInfo;
}

/**
 * Gets a model running and makes it the only kept one. A model already kept is used without any request.
 * @throws HearingError of any `model …` code, or `engine unreachable`; nothing of the failed model stays behind
 */
export async function loadModel(source: ModelSource, progress: Progress, signal: AbortSignal): Promise<LoadedModel> {
  needSecureContext();
  return navigator.locks.request(LOCK, async () => {
    switch (source.kind) {
      case 'kept':
        if (!SHA256.test(source.sha256) || !(await isKept(source.sha256))) throw new HearingError('model not kept');
        return startKept(source.name, source.sha256, signal);
      case 'file': {
        const archive = await readArchive(source.file, progress);
        return (await isKept(archive.sha256))
          ? startKept(archive.name, archive.sha256, signal)
          : plant(archive, signal);
      }
      case 'served': {
        if (!SHA256.test(source.sha256)) {
          throw new HearingError('model checksum', `${source.file}: “${source.sha256}” is no SHA-256 value`);
        }
        if (await isKept(source.sha256)) {
          try {
            return await startKept(source.file, source.sha256, signal);
          } catch (error) {
            // What the browser kept has rotted and is gone now: fetch it afresh.
            if (!isUnreadable(error)) throw error;
          }
        }
        return plant(await fetchArchive(source, progress, signal), signal);
      }
    }
  });
}

const isUnreadable = (error: unknown): boolean =>
  error instanceof HearingError && error.failure.code === 'model unreadable';

async function plant({ name, sha256, bytes }: Archive, signal: AbortSignal): Promise<LoadedModel> {
  try {
    await seed(sha256, name, bytes);
    return await start(name, sha256, bytes.length, signal);
  } catch (error) {
    await forget(sha256);
    throw error;
  }
}

/** A model that has worked before is not thrown away because the machine is busy or the person went on. */
async function startKept(name: string, sha256: string, signal: AbortSignal): Promise<LoadedModel> {
  try {
    return await start(name, sha256, await sizeOf(sha256), signal);
  } catch (error) {
    if (isUnreadable(error)) await forget(sha256);
    throw error;
  }
}

async function start(name: string, sha256: string, bytes: number, signal: AbortSignal): Promise<LoadedModel> {
  const patience = START_MS + (bytes / 2 ** 20) * START_MS_PER_MEGABYTE;
  const engine = await Engine.start(addressOf(sha256), patience, signal);
  try {
    if (!(await hasFile(sha256, '/HCLr.fst'))) throw new HearingError('model without phrase lists', name);
    const words = await vocabularyOf(sha256);
    await smokeTest(engine, words);
    await keepOnly(sha256);
    return { engine, info: { name, sha256, words } };
  } catch (error) {
    engine.stop();
    throw error;
  }
}

/** The list has a word and its number a line; names in brackets and with a hash are the decoder's own. */
async function vocabularyOf(sha256: string): Promise<ReadonlySet<string>> {
  const [list = ''] = await readTexts(sha256, '/words.txt');
  const words = list.split('\n').map((line) => line.split(/\s/, 1)[0] ?? '');
  return new Set(words.filter((word) => word && !/^[<[#!]/.test(word)));
}

/** Bad graphs go unnoticed until a recogniser is made, and used. */
async function smokeTest(engine: Engine, words: ReadonlySet<string>): Promise<void> {
  const [word] = words;
  if (!word) throw new HearingError('model unreadable', 'It has no list of words.');
  const recogniser = new Recogniser(engine, 16_000, [word]);
  const heard = await Promise.race([
    recogniser.accept({ samples: new Float32Array(4096), time: 0 }),
    new Promise<null>((resolve) => setTimeout(() => resolve(null), START_MS)),
  ]);
  if (!heard) throw new HearingError('model timeout', 'It did not answer to a trial.');
  if (heard.kind === 'fault') throw new HearingError('model unreadable', heard.detail);
  recogniser.remove();
}
