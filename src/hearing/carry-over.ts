import type { AudioChunk } from './types.ts';

/** Longer than any utterance; more would be heard too late to be of use. */
const LONGEST_MS = 20_000;

/**
 * Sound for the engine that comes after one that stopped: what that one had not finished, and what comes until the next is
 * ready. So an utterance that the stop fell into is heard all the same, and once.
 */
export class CarryOver {
  /** null while an engine takes the sound itself. */
  #chunks: AudioChunk[] | null = null;
  /** What was carried over already and is not decoded yet: should the engine stop at it again, it is let go. */
  #isBeingTried = false;

  /** The engine has stopped. @param unfinished sound that is part of no delivered utterance */
  begin(unfinished: readonly AudioChunk[]): void {
    this.#chunks = this.#isBeingTried ? [] : [...unfinished];
    this.#isBeingTried = false;
  }

  /** Sound that no engine took. */
  keep(chunk: AudioChunk): void {
    if (!this.#chunks) return;
    this.#chunks.push(chunk);
    const from = chunk.time - LONGEST_MS;
    if ((this.#chunks[0]?.time ?? from) < from) this.#chunks = this.#chunks.filter(({ time }) => time >= from);
  }

  /** The ear was closed, or the sound cut off: what was being said is dropped. */
  drop(): void {
    if (this.#chunks) this.#chunks = [];
  }

  /** No other engine follows. */
  end(): void {
    this.#chunks = null;
  }

  /** Another engine is ready, and takes what was kept in order; the sound of later goes to it directly. */
  async giveTo(feed: (chunk: AudioChunk) => Promise<void>): Promise<void> {
    const chunks = this.#chunks ?? [];
    this.#chunks = null;
    if (chunks.length === 0) return;
    this.#isBeingTried = true;
    await Promise.all(chunks.map(feed));
    this.#isBeingTried = false;
  }
}
