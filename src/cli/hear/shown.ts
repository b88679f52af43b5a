/** What stands on the app's screen while an utterance may still go on, and since when. */
import type { Meaning } from '../../session/intent.ts';
import { isReadBack } from '../../ui/provisional.ts';

export class Shown {
  readonly #now: () => number;
  #is: { readonly text: string; readonly since: number } | null = null;

  /** @param now in any unit */
  constructor(now: () => number) {
    this.#now = now;
  }

  /** @param heard what is shown from now on, as far as the app shows what it means; null takes it away */
  show(heard: { readonly text: string; readonly meaning: Meaning } | null): void {
    this.#is = heard && isReadBack(heard.meaning) ? { text: heard.text, since: this.#now() } : null;
  }

  /** Since when what these words mean has been shown; null where it is not. It goes with the utterance. */
  since(text: string): number | null {
    const since = this.#is?.text === text ? this.#is.since : null;
    this.#is = null;
    return since;
  }
}
