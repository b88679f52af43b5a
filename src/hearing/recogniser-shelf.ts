import type { Engine } from './engine.ts';
import type { Phrases } from './phrases.ts';
import { Recogniser } from './recogniser.ts';

/** Each holds a decoding graph in memory; a job goes to and fro between few lists. */
const KEPT = 3;

/** Recognisers by their lists of phrases: the few that were used last, so that a list which comes back costs nothing. */
export class RecogniserShelf {
  readonly #engine: Engine;
  readonly #sampleRate: number;
  /** The one used last is at the end. */
  readonly #byList = new Map<string, Recogniser>();

  constructor(engine: Engine, sampleRate: number) {
    this.#engine = engine;
    this.#sampleRate = sampleRate;
  }

  /** @param inUse never removed to make room */
  take(phrases: Phrases, inUse: Recogniser | null): Recogniser {
    const list = JSON.stringify(phrases);
    const recogniser = this.#byList.get(list) ?? new Recogniser(this.#engine, this.#sampleRate, phrases);
    this.#byList.delete(list);
    this.#byList.set(list, recogniser);
    for (const [oldest, unused] of this.#byList) {
      if (this.#byList.size <= KEPT) break;
      if (unused === inUse) continue;
      this.#byList.delete(oldest);
      unused.remove();
    }
    return recogniser;
  }
}
