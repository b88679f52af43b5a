/** Samples of the path from loudspeaker to microphone: 64 ms at 16 kHz, the direct sound and the first walls. */
const TAPS = 1024;
/** Of the whole way to the best answer, per sample, 0 to 2. Smaller holds still under a person's voice; larger learns sooner. */
const STEP = 0.1;
/** Against division by nearly nothing in the pauses of a voice, in the energy of all taps. */
const LEAST_ENERGY = 1e-3;
/** What is left over and this many times above the usual is a person, not the room: it teaches little. */
const USUAL = 1.2;
/** In a silent room it would learn nothing any more. */
const LEAST_USUAL = 0.003;
/** Share of the newest sample in what is usual: over more than half a second, longer than a word. */
const FORGETS = 1e-4;

/**
 * Takes what is played out of what is heard: normalised least mean squares (Haykin, Adaptive Filter Theory), with an error
 * that is limited, so that a person who speaks over it does not unteach it (Huber). It learns the room as it goes.
 */
export class EchoCanceller {
  readonly #weights = new Float32Array(TAPS);
  /** The newest of what was played, oldest first. */
  #played = new Float32Array(TAPS);
  #usual = 0.02;

  /**
   * @param heard what the microphone gave
   * @param played what the loudspeaker gave meanwhile, as long; it may run ahead of the microphone by up to 64 ms, never behind
   * @returns what is left
   */
  cancel(heard: Float32Array, played: Float32Array): Float32Array<ArrayBuffer> {
    const left = new Float32Array(heard.length);
    const all = new Float32Array(TAPS + played.length);
    all.set(this.#played);
    all.set(played, TAPS);
    const weights = this.#weights;
    let energy = 0;
    for (let tap = 1; tap <= TAPS; tap++) energy += (all[tap - 1] ?? 0) ** 2;
    for (let i = 0; i < heard.length; i++) {
      const from = i + 1;
      energy += (all[i + TAPS] ?? 0) ** 2 - (all[i] ?? 0) ** 2;
      let echo = 0;
      for (let tap = 0; tap < TAPS; tap++) echo += (weights[tap] ?? 0) * (all[from + tap] ?? 0);
      const error = (heard[i] ?? 0) - echo;
      left[i] = error;
      const limit = USUAL * this.#usual;
      const limited = Math.max(-limit, Math.min(limit, error));
      this.#usual = Math.max(LEAST_USUAL, this.#usual + FORGETS * (Math.abs(limited) - this.#usual));
      const by = (STEP * limited) / (Math.max(0, energy) + LEAST_ENERGY);
      for (let tap = 0; tap < TAPS; tap++) weights[tap] = (weights[tap] ?? 0) + by * (all[from + tap] ?? 0);
    }
    this.#played = all.slice(all.length - TAPS);
    return left;
  }
}
