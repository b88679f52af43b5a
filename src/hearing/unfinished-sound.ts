import { NO_WORDS_LEAD_MS } from './end-of-utterance.ts';
import type { AudioChunk } from './types.ts';

/** Speech is noticed at most this long after it began: the model's look-ahead, a chunk, and enough of a word. */
export const ONSET_MS = 1500;
/** No single utterance is longer; keeps the memory bounded when the engine takes noise for endless speech. */
const LONGEST_UTTERANCE_MS = 20_000;

/** Sound that was fed and is part of no utterance yet: it is there to be decoded again. */
export class UnfinishedSound {
  #chunks: AudioChunk[] = [];

  get chunks(): readonly AudioChunk[] {
    return this.#chunks;
  }

  push(chunk: AudioChunk): void {
    this.#chunks.push(chunk);
  }

  /**
   * The engine has ended an utterance with this chunk. Where it heard no words in it, its end may be the beginning of one:
   * that is kept, for when what follows is decoded again.
   */
  ended(chunk: AudioChunk, isEmpty: boolean): void {
    const at = this.#chunks.indexOf(chunk);
    const isKept = ({ time }: AudioChunk): boolean => isEmpty && time >= chunk.time - NO_WORDS_LEAD_MS;
    this.#chunks = this.#chunks.filter((each, i) => i > at || isKept(each));
  }

  /** Lets go of what was fed before a time, in milliseconds. */
  dropBefore(time: number): void {
    this.#chunks = this.#chunks.filter((chunk) => chunk.time >= time);
  }

  /** Lets go of what is older than any beginning of what is being said, or that may be about to be noticed. */
  trim(isSpeech: boolean): void {
    const newest = this.#chunks.at(-1);
    if (newest) this.dropBefore(newest.time - (isSpeech ? LONGEST_UTTERANCE_MS : ONSET_MS));
  }

  clear(): void {
    this.#chunks = [];
  }
}
