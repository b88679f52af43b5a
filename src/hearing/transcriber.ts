import type { Engine } from './engine.ts';
import { Recogniser, type Heard } from './recogniser.ts';
import type { AudioChunk, Utterance } from './types.ts';

/** Each holds a decoding graph in memory; a job goes to and fro between few lists. */
const RECOGNISERS_KEPT = 3;
/** Speech is noticed at most this long after it began: the model's look-ahead, a chunk, and enough of a word. */
const ONSET_MS = 1500;
/** No single utterance is longer; keeps the memory bounded when the engine takes noise for endless speech. */
const LONGEST_UTTERANCE_MS = 20_000;

const keyOf = (phrases: readonly string[]): string => JSON.stringify(phrases);

export interface TranscriberEvents {
  utterance(utterance: Utterance): void;
  /** Empty when nobody speaks. */
  partial(text: string): void;
  fault(detail: string): void;
}

/** Audio to utterances, with a phrase list that may change at any time. It knows no microphone and no clock. */
export class Transcriber {
  readonly #engine: Engine;
  readonly #sampleRate: number;
  readonly #events: TranscriberEvents;
  /** By phrase list; the one used last is at the end. */
  readonly #recognisers = new Map<string, Recogniser>();
  #phrases: readonly string[];
  #current: Recogniser;
  /** Fed, but not yet part of a delivered utterance. */
  #unfinished: AudioChunk[] = [];
  #speaking = false;
  #switching: Promise<void> | null = null;
  /** Goes up at each interruption; partial results from before it mean nothing any more. */
  #epoch = 0;

  constructor(engine: Engine, sampleRate: number, phrases: readonly string[], events: TranscriberEvents) {
    this.#engine = engine;
    this.#sampleRate = sampleRate;
    this.#events = events;
    this.#phrases = phrases;
    this.#current = this.#recogniserFor(phrases);
  }

  /** Resolves when the chunk is decoded. Chunks have to come in order of time. */
  async feed(chunk: AudioChunk): Promise<void> {
    this.#unfinished.push(chunk);
    if (this.#switching) return this.#switching;
    await this.#decode(chunk);
  }

  /**
   * Takes a new phrase list from the next chunk on. What is being said at that moment is decoded again from its beginning
   * under the new list, so that no utterance is cut in two and none is delivered twice.
   */
  setPhrases(phrases: readonly string[]): void {
    const same = keyOf(phrases) === keyOf(this.#phrases);
    this.#phrases = phrases;
    if (!same) this.#switching ??= this.#switch();
  }

  /** Drops what is being said and begins afresh with the next chunk. Utterances that had ended before are still delivered. */
  interrupt(): void {
    this.#epoch++;
    this.#unfinished = [];
    this.#say('');
    void this.#current.finish();
  }

  /** The audio has ended: what was said last is a whole utterance. */
  async end(): Promise<void> {
    await this.#switching;
    this.#deliver(await this.#current.finish());
    this.#unfinished = [];
  }

  async #switch(): Promise<void> {
    // The answer comes after those to all chunks on their way: an utterance that ended in them is delivered before, and is
    // unfinished no longer. What remains is done again by the recogniser whose list is the newest by then.
    await this.#current.finish();
    this.#current = this.#recogniserFor(this.#phrases);
    this.#switching = null;
    await Promise.all(this.#unfinished.map((chunk) => this.#decode(chunk)));
  }

  async #decode(chunk: AudioChunk): Promise<void> {
    const epoch = this.#epoch;
    const heard = await this.#current.accept(chunk);
    if (heard.kind === 'utterance') {
      const at = this.#unfinished.indexOf(chunk);
      this.#unfinished.splice(0, at + 1);
    }
    if (heard.kind !== 'partial' || epoch === this.#epoch) this.#deliver(heard);
  }

  #deliver(heard: Heard): void {
    switch (heard.kind) {
      case 'utterance':
        this.#say('');
        if (heard.utterance) this.#events.utterance(heard.utterance);
        break;
      case 'partial':
        this.#say(heard.text);
        this.#trim();
        break;
      case 'fault':
        this.#events.fault(heard.detail);
        break;
    }
  }

  #say(partial: string): void {
    if (!partial && !this.#speaking) return;
    this.#speaking = partial !== '';
    this.#events.partial(partial);
  }

  #trim(): void {
    const newest = this.#unfinished.at(-1);
    if (!newest) return;
    const from = newest.time - (this.#speaking ? LONGEST_UTTERANCE_MS : ONSET_MS);
    const keep = this.#unfinished.findIndex((chunk) => chunk.time >= from);
    if (keep > 0) this.#unfinished.splice(0, keep);
  }

  #recogniserFor(phrases: readonly string[]): Recogniser {
    const key = keyOf(phrases);
    const recogniser = this.#recognisers.get(key) ?? new Recogniser(this.#engine, this.#sampleRate, phrases);
    this.#recognisers.delete(key);
    this.#recognisers.set(key, recogniser);
    for (const [oldest, unused] of this.#recognisers) {
      if (this.#recognisers.size <= RECOGNISERS_KEPT) break;
      if (unused === this.#current) continue;
      this.#recognisers.delete(oldest);
      unused.remove();
    }
    return recogniser;
  }
}
