import type { Meaning } from '../session/intent.ts';
import type { SessionState } from '../session/state.ts';
import { opensAt, tells, unheard, warnsNow, type Telling, type Unheard } from '../language/unheard.ts';

/** Keeps how what warns came to the mechanic: when it was shown, and whether it was said to its end. */
export interface HazardWatch {
  /** What is on screen now. */
  shows(state: SessionState): void;
  /** These texts are being said. */
  says(texts: readonly string[], toTheEnd: Promise<boolean>): void;
  /** What is to be heard before an input of that time may go on; null where it may. */
  unheard(state: SessionState, meaning: Meaning, at: number, isAtScreen: boolean): Unheard | null;
}

export function createHazardWatch(): HazardWatch {
  let telling: Telling | null = null;
  /** The newest announcement that holds it. */
  let newest = 0;
  return {
    shows(state) {
      const warns = warnsNow(state);
      if (warns?.key === telling?.warns.key) return;
      telling = warns && { warns, shownAt: performance.now(), isBeingSaid: false, saidAt: null };
    },
    says(texts, toTheEnd) {
      if (telling === null || !tells(telling.warns, texts)) return;
      // What may go on already is not held up by saying it once more.
      if (performance.now() >= opensAt(telling, false)) return;
      const mine = ++newest;
      const { key } = telling.warns;
      telling = { ...telling, isBeingSaid: true };
      void toTheEnd.then((wasSaid) => {
        // Something else warns by now.
        if (telling?.warns.key !== key) return;
        if (mine === newest) telling = { ...telling, isBeingSaid: false };
        if (wasSaid) telling = { ...telling, saidAt: telling.saidAt ?? performance.now() };
      });
    },
    unheard: (state, meaning, at, isAtScreen) => unheard(state, telling, meaning, at, isAtScreen),
  };
}
