/** How many pictures a second are looked at, from their times. Pure. */

/** Reckoned over so long, in milliseconds. */
const OVER_MS = 4000;
/** Below the first, in pictures a second, a nod or a wave is often between two pictures; from the second on it is not. */
const SPARSE = 6.5;
const ENOUGH = 8;

export class PictureRate {
  #times: number[] = [];
  #isSparse = false;

  /** @param time in milliseconds, later than the one before */
  add(time: number): void {
    this.#times.push(time);
    const [first = time] = this.#times;
    if (time - first < OVER_MS) return;
    const rate = ((this.#times.length - 1) * 1000) / (time - first);
    this.#isSparse = rate < (this.#isSparse ? ENOUGH : SPARSE);
    while ((this.#times[0] ?? time) <= time - OVER_MS) this.#times.shift();
  }

  /** What was before a gap tells nothing of what comes. */
  clear(): void {
    this.#times = [];
    this.#isSparse = false;
  }

  /** Gestures are seen, but many are missed. */
  get isSparse(): boolean {
    return this.#isSparse;
  }
}
