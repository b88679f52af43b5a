/**
 * Finds the weights by which nods and shakes are told from work, and writes them to src/gesture/head-weights.ts:
 * `npx tsx tests/simulation/fit-heads.ts && npm run format`. It draws films, takes all swings in them that a head may
 * have made, and fits the odds by logistic regression. The work in these films and in those of a second range says where it is
 * sure enough.
 */
import { writeFileSync } from 'node:fs';
import { LEAST_STEP_MS, WHOLE } from '../../src/gesture/frame.ts';
import { headRuns, type HeadRun } from '../../src/gesture/head.ts';
import { TERMS, type Term } from '../../src/gesture/head-sureness.ts';
import { History } from '../../src/gesture/history.ts';
import { MotionWatch } from '../../src/gesture/motion.ts';
import { pictureOf, type Picture } from '../../src/gesture/picture.ts';
import { windowsIn } from '../../src/gesture/windows.ts';
import { busyFilm, gestureFilm, strokesFilm, type Film } from '../support/gesture-clips/film.ts';
import { LATEST_MS } from '../support/gesture-clips/score.ts';
import { countSure, fitHead, type Row } from './head-fit.ts';

interface Range {
  readonly seed: number;
  readonly films: number;
}

interface Ranges {
  readonly heads: readonly Range[];
  readonly work: readonly Range[];
  readonly strokes: readonly Range[];
}

const LEARNED: Ranges = {
  heads: [
    { seed: 3_000_000, films: 50 },
    { seed: 3_200_000, films: 50 },
    { seed: 3_300_000, films: 25 },
    { seed: 3_350_000, films: 25 },
  ],
  work: [
    { seed: 3_500_000, films: 40 },
    { seed: 3_700_000, films: 40 },
  ],
  strokes: [
    { seed: 3_600_000, films: 24 },
    { seed: 3_650_000, films: 24 },
  ],
};
/** Also looked at while terms were tried: no figure of these says how good it is. */
const CHOSEN: Ranges = {
  heads: [{ seed: 2_000_000, films: 40 }],
  work: [{ seed: 2_500_000, films: 20 }],
  strokes: [],
};
const [HEAD_GESTURES, MINUTE] = [4, 60];
/** What comes sooner, while the scene is learned, is not looked at. */
const SCENE_LEARNED_MS = 1300;
const MOTION_FROM_MS = 400;
/** A stretch in which only the surest swings count. */
const STRETCH_MS = 700;
/** What is told so long after a gesture of its kind is none, and no mistake either. */
const LATE_MS = 700;

function* rowsOf(film: Film, name: string, isWork: boolean): Generator<Row> {
  const [motion, history, watched] = [new MotionWatch(), new History(), windowsIn(WHOLE)];
  let last: { readonly picture: Picture; readonly time: number } | null = null;
  for (const { frame, time } of film.shots()) {
    if (last && time - last.time < LEAST_STEP_MS) continue;
    const picture = pictureOf(frame, false);
    if (last) history.add({ from: last.time, to: time, motion: motion.see(last.picture, picture, time - last.time) });
    last = { picture, time };
    if (time < SCENE_LEARNED_MS) continue;
    for (const run of headRuns(history.steps, { watched, notBefore: MOTION_FROM_MS })) {
      const part = partOf(film, run, time);
      if (part)
        yield { kind: run.kind, of: `${name} ${part.of}`, isGesture: part.isGesture, isWork, terms: termsOf(run) };
    }
  }
}

function termsOf({ kind, found }: HeadRun): Row['terms'] {
  const values = Object.entries(TERMS).map(([name, valueOf]) => [name, valueOf(found, kind)]);
  return Object.fromEntries(values) as Readonly<Record<Term, number>>;
}

/** The gesture or the stretch of the film that swings belong to; null for what is neither. */
function partOf(
  { acts }: Film,
  { kind, run }: HeadRun,
  time: number,
): { readonly of: string; readonly isGesture: boolean } | null {
  const same = acts.map((act) => ({ ...act, begin: act.from * 1000, end: act.to * 1000 }));
  const meant = same.findIndex(
    ({ gesture, begin, end }) => gesture === kind && time >= begin && time <= end + LATEST_MS,
  );
  if (meant >= 0) return { of: `gesture ${meant}`, isGesture: true };
  const isLate = same.some(
    ({ gesture, end }) => gesture === kind && time > end && time < end + LATE_MS && run.from < end,
  );
  return isLate ? null : { of: `stretch ${Math.floor(time / STRETCH_MS)}`, isGesture: false };
}

function rowsOfAll({ heads, work, strokes }: Ranges): readonly Row[] {
  const each = (ranges: readonly Range[], rowsOfSeed: (seed: number) => Iterable<Row>): readonly Row[] =>
    ranges.flatMap(({ seed, films }) => Array.from({ length: films }, (_, i) => [...rowsOfSeed(seed + i)]).flat());
  return [
    ...each(heads, (seed) => rowsOf(gestureFilm(seed, HEAD_GESTURES, ['nod', 'shake']), `heads ${seed}`, false)),
    ...each(work, (seed) => rowsOf(busyFilm(seed, MINUTE), `work ${seed}`, true)),
    // More of what goes to and fro than any work has: it teaches, but says nothing of how often work is mistaken.
    ...each(strokes, (seed) => rowsOf(strokesFilm(seed, MINUTE), `strokes ${seed}`, false)),
  ];
}

const [learned, chosen] = [rowsOfAll(LEARNED), rowsOfAll(CHOSEN)];
const minutes = [...LEARNED.work, ...CHOSEN.work].reduce((sum, { films }) => sum + films, 0);
const fitted = {
  nod: fitHead('nod', learned, chosen, minutes),
  shake: fitHead('shake', learned, chosen, minutes),
};
for (const kind of ['nod', 'shake'] as const) {
  console.log(`fitted on, ${countSure(kind, learned, fitted[kind])}`);
  console.log(`chosen on, ${countSure(kind, chosen, fitted[kind])}`);
}
writeFileSync(
  new URL('../../src/gesture/head-weights.ts', import.meta.url),
  `/** Written by tests/simulation/fit-heads.ts, which names the films that they are fitted to: not to be edited. */
import type { HeadKind, HeadWeights } from './head-sureness.ts';

export const HEAD_WEIGHTS: Readonly<Record<HeadKind, HeadWeights>> = ${JSON.stringify(fitted, null, 2)};
`,
);
