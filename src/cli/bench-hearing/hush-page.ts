// Runs in the page: announcements with the app's own voice in the microphone, and when the word that hushes it is noticed.
import { HushEar } from '../../hearing/hush-ear.ts';
import { loadModel, type LoadedModel } from '../../hearing/load-model.ts';
import { keptModel } from '../../hearing/model-cache.ts';

/** As long as the microphone's chunks at 48 kHz. */
const CHUNK_S = 2048 / 48_000;

let loaded: LoadedModel | null = null;

async function engine(): Promise<LoadedModel> {
  const kept = await keptModel();
  if (!kept) throw new Error('The browser kept no model.');
  return (loaded ??= await loadModel({ kind: 'kept', ...kept }, () => undefined, new AbortController().signal));
}

export interface Hushed {
  /** In seconds of the sound, with the time that the decision took added; null where nothing was noticed. */
  readonly at: number | null;
  /** Whether anything was listened for at all. */
  readonly isListening: boolean;
}

/** @param words of the announcement @throws Error when the engine stops */
export async function hush(samples: Float32Array, rate: number, words: readonly string[]): Promise<Hushed> {
  const { engine: running, info } = await engine();
  let at: number | null = null;
  let [sounded, began] = [0, 0];
  const own = { words, hush: ['stop'] };
  const ear = HushEar.for(running, rate, info.words, own, {
    hush: () => (at = sounded + (performance.now() - began) / 1000),
    fault: (detail) => {
      throw new Error(detail);
    },
  });
  const size = Math.round(CHUNK_S * rate);
  for (let from = 0; ear && from < samples.length && at === null; from += size) {
    [sounded, began] = [(from + size) / rate, performance.now()];
    await ear.feed({ samples: samples.slice(from, from + size), time: (from / rate) * 1000 });
  }
  ear?.end();
  return { at, isListening: ear !== null };
}
