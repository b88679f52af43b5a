/** What a watcher finds in a film, held against what was in it. */
import type { Gesture } from '../../../src/gesture/gesture.ts';
import { createWatcher, type WatcherOptions } from '../../../src/gesture/watcher.ts';
import type { Act } from './acts.ts';
import type { Film } from './film.ts';

export interface Found {
  readonly gesture: Gesture;
  /** When it was told, milliseconds. */
  readonly told: number;
}

export interface Score {
  /** Gestures of the film, each with what was told of it. */
  readonly acts: readonly { readonly act: Act; readonly found: Found | null; readonly lateMs: number }[];
  readonly wrong: readonly Found[];
}

/** A decision may come so long after the end of the gesture. */
export const LATEST_MS = 250;

/** @param costs takes what each picture cost, milliseconds */
export function watch(film: Film, options: WatcherOptions = {}, costs: number[] = []): readonly Found[] {
  const watcher = createWatcher(options);
  const found: Found[] = [];
  for (const { frame, time } of film.shots()) {
    const from = performance.now();
    const seen = watcher.see(frame, time);
    costs.push(performance.now() - from);
    if (seen.kind === 'refused') throw new Error(seen.why);
    if (seen.kind === 'gesture') found.push({ gesture: seen.gesture, told: time });
  }
  return found;
}

/** @param costs takes what each picture cost, milliseconds */
export function score(film: Film, options: WatcherOptions = {}, costs: number[] = []): Score {
  const open = [...watch(film, options, costs)];
  const acts = film.acts
    .filter(({ gesture }) => gesture !== null)
    .map((act) => {
      const at = open.findIndex(
        ({ gesture, told }) =>
          gesture.kind === act.gesture && told >= act.from * 1000 && told <= act.to * 1000 + LATEST_MS,
      );
      const found = at < 0 ? null : (open.splice(at, 1)[0] ?? null);
      return { act, found, lateMs: found ? found.told - act.to * 1000 : NaN };
    });
  return { acts, wrong: open };
}
