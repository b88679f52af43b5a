// Runs in the page: a long shift of listening, faster than it sounds.
import { createHearing } from '../../hearing/hearing.ts';
import { keptModel } from '../../hearing/model-cache.ts';
import type { AudioSink, AudioSource, Hearing } from '../../hearing/types.ts';
import { SITUATION_NAMES, stateIn } from '../../language/named-situations.ts';
import { recogniserPhrases } from '../../language/phrases.ts';
import { situationOf } from '../../language/situation.ts';

/** As long as the microphone's chunks at 48 kHz. */
const CHUNK_S = 2048 / 48_000;
/** In a job the phrase list changes with each answer; this often is brisk. In seconds of sound. */
const LIST_CHANGES_S = 10;
/** The app itself speaks at each change, and the ear is closed. */
const MUTED_S = 2;

export interface Listened {
  /** Utterances so far, and how often the phrase list changed. */
  readonly utterances: number;
  readonly lists: number;
  /** What was wrong with the ear, each once. */
  readonly failures: readonly string[];
}

const LISTS = SITUATION_NAMES.map((name) => situationOf(stateIn(name))).map((situation) =>
  situation.dictation ? null : recogniserPhrases(situation),
);

/** One ear for the whole shift, as in the app. */
export class Shift {
  readonly #hearing: Hearing;
  readonly #samples: Float32Array;
  readonly #rate: number;
  readonly #sink: AudioSink;
  readonly #failures = new Set<string>();
  #utterances = 0;
  #lists = 0;
  /** Chunks so far. */
  #chunks = 0;

  private constructor(hearing: Hearing, sink: AudioSink, samples: Float32Array, rate: number) {
    this.#hearing = hearing;
    this.#sink = sink;
    this.#samples = samples;
    this.#rate = rate;
    hearing.onUtterance(() => this.#utterances++);
    hearing.subscribe((state) => {
      if (state.kind === 'failed') this.#failures.add(`${state.failure.code}: ${state.failure.detail}`);
    });
  }

  /** @param samples what is heard, over and over, of this rate in hertz; @throws Error when the kept model does not start */
  static async begin(samples: Float32Array, rate: number): Promise<Shift> {
    let sink: AudioSink | null = null;
    const source: AudioSource = {
      open: (opened) => {
        sink = opened;
        return Promise.resolve({ sampleRate: rate, retry: () => Promise.resolve(), close: () => Promise.resolve() });
      },
    };
    const hearing = createHearing({ source });
    const kept = await keptModel();
    if (!kept) throw new Error('The browser kept no model.');
    const outcome = await hearing.loadModel({ kind: 'kept', ...kept });
    if (!outcome.ok) throw new Error(outcome.failure.detail);
    await hearing.listen();
    if (!sink) throw new Error('The ear did not open.');
    return new Shift(hearing, sink, samples, rate);
  }

  /** Goes on for so many seconds of sound, decoded as fast as this machine can. */
  async listen(seconds: number): Promise<Listened> {
    const size = Math.round(CHUNK_S * this.#rate);
    const every = Math.round(LIST_CHANGES_S / CHUNK_S);
    const muted = Math.round(MUTED_S / CHUNK_S);
    for (const end = this.#chunks + Math.round(seconds / CHUNK_S); this.#chunks < end; this.#chunks++) {
      if (this.#chunks % every === 0) {
        this.#hearing.mute('own voice');
        this.#hearing.setPhrases(LISTS[this.#lists++ % LISTS.length] ?? null);
      }
      if (this.#chunks % every === muted) this.#hearing.unmute('own voice');
      const samples = Float32Array.from(
        { length: size },
        (_, i) => this.#samples[(this.#chunks * size + i) % this.#samples.length] ?? 0,
      );
      // Times run ahead of the clock, so that no mute holds back sound of later.
      await this.#sink.chunk({ samples, time: performance.now() + this.#chunks * CHUNK_S * 1000 });
    }
    return { utterances: this.#utterances, lists: this.#lists, failures: [...this.#failures] };
  }
}
