import type { Situation } from '../language/situation.ts';
import type { Entry } from '../record/entry.ts';
import { isAgainst, isSameAct, type Act } from './once.ts';

/** The word or gesture that was taken last: what goes with it counts no second time, and a no to it takes it back. */
export class LastTaken {
  readonly #entries: () => readonly Entry[];
  #act: Act | null = null;
  #instead: Situation | null = null;
  #written: readonly Entry[] = [];

  /** @param entries all that is written, now */
  constructor(entries: () => readonly Entry[]) {
    this.#entries = entries;
  }

  /** What might have been said instead of it; null before anything was taken. */
  get instead(): Situation | null {
    return this.#instead;
  }

  /** What was written of it. */
  get written(): readonly Entry[] {
    return this.#written;
  }

  /** Carries out an act, and keeps what is written of it. */
  async keep(act: Act, instead: Situation, work: () => Promise<void>): Promise<void> {
    const before = this.#entries().length;
    this.#act = act;
    await work();
    this.#instead = instead;
    this.#written = this.#entries().slice(before);
  }

  /** Whether an act goes with it: the same was said and shown at once. */
  isSameAs(act: Act): boolean {
    return this.#act !== null && isSameAct(this.#act, act);
  }

  /** Whether an act says no to it, and nobody has gone on since. */
  isDenied(act: Act): boolean {
    const isNewest = this.#written.at(-1)?.hash === this.#entries().at(-1)?.hash;
    return this.#act !== null && this.#instead !== null && isNewest && isAgainst(this.#act, act);
  }
}
