// Runs in the page: announcements with the app's own voice in the microphone, and when the word that hushes it is noticed.
import { HushEar } from '../../hearing/hush-ear.ts';
import { powerOf } from '../../hearing/level.ts';
import { loadModel, type LoadedModel } from '../../hearing/load-model.ts';
import { keptModel } from '../../hearing/model-cache.ts';
import { OwnSound, WORD_RATE } from '../../hearing/own-sound.ts';

/** As long as the microphone's chunks at 48 kHz. */
const CHUNK_S = 2048 / 48_000;

let loaded: LoadedModel | null = null;

async function engine(): Promise<LoadedModel> {
  const kept = await keptModel();
  if (!kept) throw new Error('The browser kept no model.');
  return (loaded ??= await loadModel({ kind: 'kept', ...kept }, () => undefined, new AbortController().signal));
}

export interface Hushed {
  readonly word: string;
  /** What had to be heard until it was noticed, in seconds of the sound. */
  readonly at: number;
  /** And how long the engine's answer to that took, by the clock, in seconds. */
  readonly answer: number;
}

export interface Listened {
  /** Null where nothing was noticed. */
  readonly hushed: Hushed | null;
  /** Whether anything was listened for at all. */
  readonly isListening: boolean;
}

/** The room is learned from one announcement to the next, as in the app. */
let own: OwnSound | null = null;
/** Announcements follow one another on one time line, in milliseconds. */
let time = 0;

export interface Announced {
  readonly words: readonly string[];
  /** The words that are listened for. */
  readonly hush: readonly string[];
  readonly voice: Float32Array;
  /** When the voice was given to the loudspeaker, in milliseconds of the sound; null where it is to be heard as it is. */
  readonly from: number | null;
}

/** @param samples what the microphone hears @throws Error when the engine stops */
export async function listenForHush(
  samples: Float32Array,
  rate: number,
  { words, hush, voice, from }: Announced,
): Promise<Listened> {
  const { engine: running, info } = await engine();
  let hushed: Hushed | null = null;
  let [sounded, began] = [0, 0];
  const begins = (time += 10_000 + (samples.length / rate) * 1000);
  const sound = from === null ? null : (own ??= new OwnSound(rate));
  if (from !== null) sound?.plays(voice, rate, begins + from);
  const ear = HushEar.for(
    running,
    sound ? WORD_RATE : rate,
    info.words,
    { words, hush },
    {
      hush: (word) => (hushed = { word, at: sounded, answer: (performance.now() - began) / 1000 }),
      fault: (detail) => {
        throw new Error(detail);
      },
    },
  );
  const size = Math.round(CHUNK_S * rate);
  for (let first = 0; ear && first < samples.length && !hushed; first += size) {
    sounded = (first + size) / rate;
    const chunk = { samples: samples.slice(first, first + size), time: begins + (first / rate) * 1000 };
    const beside = sound ? sound.without(chunk) : { ...chunk, heardPower: powerOf(chunk.samples) };
    began = performance.now();
    await ear.feed(beside);
  }
  ear?.end();
  return { hushed, isListening: ear !== null };
}
