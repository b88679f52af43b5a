import type { Engine } from './engine.ts';
import { Recogniser, UNKNOWN, type Heard } from './recogniser.ts';
import type { AudioChunk, Word } from './types.ts';

/** Sound that is kept for a second hearing, in milliseconds: longer utterances are heard once. */
const KEPT_MS = 12_000;
/** A recogniser wants a little of what came before the first word and after the last one. */
const MARGIN_MS = 300;
/** Sound that went on for longer before it looked like a number is no beginning of one. In milliseconds. */
const LONGEST_ONSET_MS = 3000;
/** What was begun before the words were known serves where it began, and ends, so near to where they do. In milliseconds. */
const NEAR_MS = 250;

/** A hearing that was begun before the words are known: it takes each chunk as it comes. Times in milliseconds. */
interface Begun {
  readonly from: number;
  until: number;
  readonly heard: Promise<Heard>[];
}

/**
 * Hears an utterance a second time without the list of phrases. A list presses other people's talk into its numbers, with
 * full confidence; heard freely, it is something else, and a number that was said is the same number again.
 */
export class SecondHearing {
  readonly #engine: Engine;
  readonly #sampleRate: number;
  #recogniser: Recogniser | null = null;
  readonly #chunks: AudioChunk[] = [];
  #begun: Begun | null = null;
  /** What was heard last, or is being heard. */
  #last: { readonly of: string; readonly heard: Promise<string | null> } | null = null;

  /** @param sampleRate in hertz */
  constructor(engine: Engine, sampleRate: number) {
    this.#engine = engine;
    this.#sampleRate = sampleRate;
  }

  /** Keeps what was fed to the first hearing. Chunks have to come in order of time. */
  keep(chunk: AudioChunk): void {
    this.#chunks.push(chunk);
    const first = this.#chunks.findIndex(({ time }) => time >= chunk.time - KEPT_MS);
    this.#chunks.splice(0, first);
    if (this.#begun) this.#take(chunk, this.#begun);
    if (this.#begun && chunk.time - this.#begun.from > KEPT_MS) this.drop();
  }

  /** Whether it was begun before the words are known. */
  get isBegun(): boolean {
    return this.#begun !== null;
  }

  /**
   * Begins to hear what will be words, so that the answer is there when they are. Not where their sound began long ago.
   * @param onset when their sound began, in milliseconds
   */
  begin(onset: number): void {
    const newest = this.#chunks.at(-1)?.time ?? -Infinity;
    if (this.#begun || newest - onset > LONGEST_ONSET_MS) return;
    const chunks = this.since(onset - MARGIN_MS);
    const [first] = chunks;
    if (!first) return;
    this.#begun = { from: Math.max(first.time, onset - MARGIN_MS), until: -Infinity, heard: [] };
    for (const chunk of chunks) this.#take(chunk, this.#begun);
  }

  /** What was begun is of no use. */
  drop(): void {
    if (this.#begun) void this.#free.finish();
    this.#begun = null;
  }

  /** What is kept from this time on, in milliseconds: the chunk it falls into is the first. */
  since(time: number): readonly AudioChunk[] {
    return this.#chunks.filter((chunk) => chunk.time + this.#lengthOf(chunk) > time);
  }

  /**
   * Begins while the utterance may still go on: the engine has nothing else to do then. Asked again about the same words, it
   * has the answer in hand.
   * @returns the words as heard freely, '' for none; null where the sound of these words is no longer kept
   */
  hear(words: readonly Word[]): Promise<string | null> {
    const of = JSON.stringify(words);
    if (this.#last?.of !== of) this.#last = { of, heard: this.#hear(words) };
    return this.#last.heard;
  }

  async #hear(words: readonly Word[]): Promise<string | null> {
    const [first, last] = [words[0], words.at(-1)];
    if (!first || !last) return null;
    const to = last.end + MARGIN_MS;
    const chunks = this.since(first.start - MARGIN_MS).filter((chunk) => chunk.time < to);
    if ((chunks[0]?.time ?? Infinity) > first.start) return null;
    const begun = this.#begun;
    const serves =
      begun !== null && Math.abs(begun.from - (first.start - MARGIN_MS)) <= NEAR_MS && begun.until <= to + NEAR_MS;
    if (!serves) this.drop();
    this.#begun = null;
    const taken = serves ? begun.heard : chunks.map((chunk) => this.#free.accept(chunk));
    const heard = await Promise.all([...taken, this.#free.finish()]);
    if (heard.some(({ kind }) => kind === 'fault')) return null;
    return heard
      .flatMap((each) => (each.kind === 'utterance' && each.utterance ? each.utterance.words : []))
      .flatMap(({ word }) => (word === UNKNOWN ? [] : [word]))
      .join(' ');
  }

  #take(chunk: AudioChunk, begun: Begun): void {
    begun.heard.push(this.#free.accept(chunk));
    begun.until = chunk.time + this.#lengthOf(chunk);
  }

  /** Made when it is first wanted. */
  get #free(): Recogniser {
    return (this.#recogniser ??= new Recogniser(this.#engine, this.#sampleRate, null));
  }

  /** In milliseconds. */
  #lengthOf({ samples }: AudioChunk): number {
    return (samples.length / this.#sampleRate) * 1000;
  }
}
