import type { Engine } from './engine.ts';
import type { Reply } from './engine-reply.ts';
import type { Phrases } from './phrases.ts';
import { Timeline } from './timeline.ts';
import type { AudioChunk, Utterance, Word } from './types.ts';

/** Speech that is in no phrase of the list. Without it the engine would press every noise into some phrase. */
export const UNKNOWN = '[unk]';

/** Kaldi takes samples on the scale of 16-bit integers. */
const FULL_SCALE = 32768;

export type Heard =
  | { readonly kind: 'partial'; readonly text: string }
  | { readonly kind: 'utterance'; readonly utterance: Omit<Utterance, 'again'> | null }
  | { readonly kind: 'fault'; readonly detail: string };

/** One recogniser of the engine, for one phrase list. */
export class Recogniser {
  readonly #engine: Engine;
  readonly #id: string;
  readonly #sampleRate: number;
  readonly #timeline: Timeline;
  /** Seconds of audio after which the present utterance began. */
  #from = 0;

  /** @param sampleRate in hertz; the engine resamples to the model's own */
  constructor(engine: Engine, sampleRate: number, phrases: Phrases) {
    this.#engine = engine;
    this.#id = engine.newRecogniserId();
    this.#sampleRate = sampleRate;
    this.#timeline = new Timeline(sampleRate);
    const grammar = phrases && { grammar: JSON.stringify([...phrases, UNKNOWN]) };
    // Should this fail, the first chunk reports it: it has no recogniser to go to.
    void engine.ask({ action: 'create', recognizerId: this.#id, sampleRate, ...grammar });
    engine.wantWordTimes(this.#id);
  }

  async accept({ samples, time }: AudioChunk): Promise<Heard> {
    this.#timeline.append(samples.length, time);
    const data = scaled(samples);
    const question = { action: 'audioChunk', recognizerId: this.#id, data, sampleRate: this.#sampleRate } as const;
    return this.#heard(await this.#engine.ask(question, [data.buffer]));
  }

  /** Ends the utterance here. The next chunk begins afresh, on the same timeline. */
  async finish(): Promise<Heard> {
    const end = this.#timeline.length;
    const heard = this.#heard(await this.#engine.ask({ action: 'retrieveFinalResult', recognizerId: this.#id }));
    this.#from = end;
    return heard;
  }

  /** Frees it; take its final result before. */
  remove(): void {
    void this.#engine.ask({ action: 'remove', recognizerId: this.#id });
  }

  #heard(reply: Reply): Heard {
    switch (reply.kind) {
      case 'partial':
        return { kind: 'partial', text: reply.text };
      case 'utterance': {
        const words = reply.words.map((word): Word => ({
          word: word.word,
          // Rounded to frames, the first word may seem to begin in audio of before, which was taken at quite another time.
          start: this.#timeline.timeAt(Math.max(word.start, this.#from)),
          end: this.#timeline.timeAt(Math.max(word.end, this.#from)),
          confidence: word.confidence,
        }));
        const last = reply.words.at(-1);
        if (last) this.#timeline.forgetBefore(last.end);
        return { kind: 'utterance', utterance: reply.text ? { text: reply.text, words } : null };
      }
      case 'fault':
        return reply;
      case 'done':
        return { kind: 'fault', detail: 'The engine gave an empty answer to audio.' };
    }
  }
}

/** A copy on the engine's scale. A single NaN would end the engine, so what is no number becomes silence. */
function scaled(samples: Float32Array): Float32Array<ArrayBuffer> {
  const data = new Float32Array(samples.length);
  samples.forEach((sample, at) => (data[at] = Number.isFinite(sample) ? sample * FULL_SCALE : 0));
  return data;
}
