/** Above any real drift between a sound card and the computer's clock (parts in ten thousand). */
const DRIFT = 2e-4;
/** A delay beyond this is no late message: the audio stood still, as in a sleep of the computer. */
const STANDSTILL_MS = 3_000;

/**
 * Places audio on the `performance.now()` clock. Chunks reach the page late by a varying time, never early: so the smallest
 * delay seen is the best estimate. It excludes the delay inside the microphone and its driver (some 10 to 50 ms).
 */
export class AudioClock {
  readonly #sampleRate: number;
  #offset = Infinity;

  /** @param sampleRate in hertz */
  constructor(sampleRate: number) {
    this.#sampleRate = sampleRate;
  }

  /**
   * @param frame number of the chunk's first sample in its audio context
   * @param arrived when it reached the page, in milliseconds
   * @returns when its first sample was taken, in milliseconds
   */
  timeOf(frame: number, samples: number, arrived: number): number {
    const end = ((frame + samples) / this.#sampleRate) * 1000;
    const seen = arrived - end;
    const allowed = this.#offset + (samples / this.#sampleRate) * 1000 * DRIFT;
    this.#offset = seen - allowed > STANDSTILL_MS ? seen : Math.min(seen, allowed);
    return (frame / this.#sampleRate) * 1000 + this.#offset;
  }
}
