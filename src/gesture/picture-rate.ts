/** How many pictures a second there are, from their times. Pure. */

/** Reckoned over so long, in milliseconds; a part of it will do at first. */
const OVER_MS = 2000;
const LEAST_MS = 1200;
/**
 * Below the first, in pictures a second, a nod or a wave is between two pictures, and strokes look like a shake; from the
 * second on not. What a gesture is told by was weighed at 7.5 and more: one picture lost in two seconds leaves seven.
 */
const SLOW = 7;
const ENOUGH = 7.4;

export class PictureRate {
  #times: number[] = [];
  #isSlow = false;

  /** @param time in milliseconds, later than the one before */
  add(time: number): void {
    this.#times.push(time);
    while ((this.#times[0] ?? time) < time - OVER_MS) this.#times.shift();
    const over = time - (this.#times[0] ?? time);
    if (over < LEAST_MS) return;
    const rate = ((this.#times.length - 1) * 1000) / over;
    this.#isSlow = rate < (this.#isSlow ? ENOUGH : SLOW);
  }

  /** It is reckoned anew; until then it stays what it was. */
  clear(): void {
    this.#times = [];
  }

  /** Too few to tell a gesture from anything else that moves. */
  get isSlow(): boolean {
    return this.#isSlow;
  }
}
