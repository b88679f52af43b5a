/**
 * Finds the weights of src/gesture/passage-sureness.ts anew, from drawn films: `npx tsx tests/simulation/fit-waves.ts`. It
 * fits on one range of seeds and shows what another makes of that; neither says how good it is on films that were never
 * looked at (`npm run bench:gestures` does). It takes about a quarter of an hour.
 */
import { busyFilm, gestureFilm, ringFilm, type Film } from '../support/gesture-clips/film.ts';
import { LEAST_SURENESS } from '../../src/gesture/wave.ts';
import { fitted, linesOf, START, surest, TERM_NAMES, watchedOf, type Sample } from './wave-fit.ts';

interface Seeds {
  readonly from: number;
  readonly gestures: number;
  /** Films of waves only, in which one follows another. */
  readonly waves: number;
  readonly work: number;
  readonly ring: number;
}
const FIT: Seeds = { from: 510_000, gestures: 40, waves: 40, work: 14, ring: 15 };
const CHOICE: Seeds = { from: 520_000, gestures: 10, waves: 10, work: 6, ring: 6 };
const MINUTE = 60;

function* filmsOf({ from, gestures, waves, work, ring }: Seeds): Generator<Film> {
  for (let i = 0; i < gestures; i++) yield gestureFilm(from + i);
  for (let i = 0; i < waves; i++) yield gestureFilm(from + 1000 + i, 8, ['wave left', 'wave right']);
  for (let i = 0; i < work; i++) yield busyFilm(from + 5000 + i, MINUTE);
  for (let i = 0; i < ring; i++) yield ringFilm(from + 6000 + i, MINUTE);
}

function sampleOf(seeds: Seeds): Sample {
  const parts = [...filmsOf(seeds)].map((film) => linesOf(watchedOf(film)));
  return { waves: parts.flatMap(({ waves }) => waves), others: parts.flatMap(({ others }) => others) };
}

const sample = sampleOf(FIT);
const weights = fitted(sample, START);
for (const [at, name] of ['bias', ...TERM_NAMES].entries()) console.log(`  ${name}: ${(weights[at] ?? 0).toFixed(2)},`);
for (const [what, of] of [
  ['fitted on', sample],
  ['to choose by', sampleOf(CHOICE)],
] as const) {
  for (const least of [0.5, 0.6, 0.7, LEAST_SURENESS, 0.8, 0.9]) {
    const isOver = (lines: Float32Array): boolean =>
      (surest(weights, lines)?.odds ?? -Infinity) >= Math.log(least / (1 - least));
    console.log(
      `${what}, ${least} and more: ${of.waves.filter(isOver).length} of ${of.waves.length} waves, ` +
        `${of.others.filter(isOver).length} of ${of.others.length} seconds and directions without one`,
    );
  }
}
