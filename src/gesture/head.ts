/**
 * Nodding and shaking of the head: what fills a window of the picture goes to and fro together, a few times, at the pace
 * of a head, between two moments of stillness, and is back where it was. No face is looked for: a visor, a beard or a
 * mask change nothing. Pure.
 */
import type { Gesture } from './gesture.ts';
import { headCandidates } from './head-candidates.ts';
import { measureHead, type HeadMeasures } from './head-measures.ts';
import { runOf, type Run } from './head-run.ts';
import { headSureness, type HeadKind } from './head-sureness.ts';
import type { Step } from './history.ts';

/** What is searched for gestures: as long as one with its ends. */
const SEARCHED_MS = 4300;
/** Less, and it is left: a gesture that was missed is made again, one that was none has answered for somebody. */
export const LEAST_SURENESS = 0.73;

export interface HeadOptions {
  /** Windows that are watched, 1 for each. */
  readonly watched: Uint8Array;
  /** Motion before this time has been answered already, or belongs to something else. */
  readonly notBefore: number;
}

/** Swings that a head may have made, and what was measured of them. */
export interface HeadRun {
  readonly kind: HeadKind;
  readonly run: Run;
  readonly found: HeadMeasures;
}

/** The gesture of the head that has just ended with the last step; null where there is none. */
export function headGesture(steps: readonly Step[], options: HeadOptions): Gesture | null {
  let best: Gesture | null = null;
  for (const run of headRuns(steps, options)) {
    const confidence = headSureness(run.kind, run.found);
    if (confidence >= LEAST_SURENESS && confidence > (best?.confidence ?? 0)) best = gestureOf(run, confidence);
  }
  return best;
}

/** All that may be one. */
export function headRuns(steps: readonly Step[], { watched, notBefore }: HeadOptions): readonly HeadRun[] {
  const now = steps.at(-1)?.to ?? 0;
  const recent = steps.filter(({ from }) => from >= Math.max(now - SEARCHED_MS, notBefore));
  if (recent.length < 4) return [];
  return (['down', 'right'] as const).flatMap((axis) =>
    headCandidates(recent, axis, watched).flatMap((candidate): readonly HeadRun[] => {
      const run = runOf(candidate.common, recent);
      if (!run) return [];
      return [{ kind: axis === 'down' ? 'nod' : 'shake', run, found: measureHead(candidate, run, recent, axis) }];
    }),
  );
}

function gestureOf({ kind, run, found }: HeadRun, confidence: number): Gesture {
  const ways = kind === 'nod' ? 'up and down' : 'from side to side';
  return {
    kind,
    confidence,
    from: run.from,
    to: run.to,
    why:
      `what fills ${found.size} × ${found.size} pixels went ${ways}, ${found.swings} ways of about ` +
      `${found.way.toFixed(1)} pixels in ${((run.to - run.from) / 1000).toFixed(1)} s, with ${found.area} places ` +
      `around it, and ${Math.round(100 * found.before)} % as fast before`,
  };
}
