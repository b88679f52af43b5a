/** What stands on the app's screen while an utterance may still go on, and since when. */
export class Shown {
  readonly #now: () => number;
  #is: { readonly text: string; readonly since: number } | null = null;

  /** @param now in any unit */
  constructor(now: () => number) {
    this.#now = now;
  }

  /** @param text of what is shown from now on; null takes it away */
  show(text: string | null): void {
    if (text === null) this.#is = null;
    else if (this.#is?.text !== text) this.#is = { text, since: this.#now() };
  }

  /** Since when what these words mean has been shown; null where it is not. It goes with the utterance. */
  since(text: string): number | null {
    const since = this.#is?.text === text ? this.#is.since : null;
    this.#is = null;
    return since;
  }
}
