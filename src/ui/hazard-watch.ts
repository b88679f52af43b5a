import type { Meaning } from '../session/intent.ts';
import type { SessionState } from '../session/state.ts';
import {
  afterSaid,
  inSight,
  isStillAhead,
  opensAt,
  outOfSight,
  tells,
  unheard,
  warnsNow,
  type Telling,
  type Unheard,
} from '../language/unheard.ts';

/** Keeps how what warns came to the mechanic: how long it was in sight, and whether it was said to its end. */
export interface HazardWatch {
  /** What is on screen now. */
  shows(state: SessionState): void;
  /** These texts are being said. */
  says(texts: readonly string[], toTheEnd: Promise<boolean>): void;
  /** One text was said to its end: what comes after what warns need not be. */
  readonly said: (text: string) => void;
  /** What is to be heard before an input of that time may go on; null where it may. */
  unheard(state: SessionState, meaning: Meaning, at: number, isAtScreen: boolean): Unheard | null;
}

export function createHazardWatch(): HazardWatch {
  let telling: Telling | null = null;
  /** What went out of sight, and nobody has gone past. */
  let before: readonly Telling[] = [];
  /** The newest announcement that holds it. */
  let newest = 0;
  const said = (...texts: readonly string[]): void => {
    telling = telling && afterSaid(telling, texts, performance.now());
  };
  return {
    shows(state) {
      const warns = warnsNow(state);
      const at = performance.now();
      const isShown = warns?.key === telling?.warns.key;
      const gone = telling && !isShown ? [outOfSight(telling, at)] : [];
      before = [...gone, ...before].filter((each) => isStillAhead(state, each.warns));
      if (isShown) return;
      const again = before.find((each) => each.warns.key === warns?.key);
      telling = warns && inSight(warns, at, again);
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
        if (wasSaid) said(...texts);
      });
    },
    said,
    unheard: (state, meaning, at, isAtScreen) => unheard(state, telling, meaning, at, isAtScreen),
  };
}
