/** Weights of what passes across a view, found by logistic regression over drawn films. */
import { CoverWatch } from '../../src/gesture/cover.ts';
import { LEAST_STEP_MS, WHOLE } from '../../src/gesture/frame.ts';
import { PASSAGE_TERMS, type PassageTerm } from '../../src/gesture/passage-sureness.ts';
import { passagesOf, type Passage, type Profile } from '../../src/gesture/passage.ts';
import { pictureOf } from '../../src/gesture/picture.ts';
import { KEPT_MS, WaveWatch } from '../../src/gesture/wave.ts';
import type { Film } from '../support/gesture-clips/film.ts';
import { fitOdds, type Case } from './logistic.ts';

const TERMS = Object.values(PASSAGE_TERMS) as ((found: Passage) => number)[];
export const TERM_NAMES = Object.keys(PASSAGE_TERMS) as readonly PassageTerm[];
const COUNT = TERMS.length;

/** Lines of one time, one after another: of each what is weighed. The surest of them is what would be told. */
export type Lines = Float32Array;

export interface Sample {
  /** Of each wave the lines that follow it. */
  readonly waves: readonly Lines[];
  /** Of each second and direction in which nothing waved, all lines. */
  readonly others: readonly Lines[];
}

/** What the watch for waves sees of a film: the last profiles of each picture, null where the lens is shut. */
export interface Watched {
  readonly acts: Film['acts'];
  readonly steps: readonly { readonly time: number; readonly profile: Profile | null }[];
}

export function watchedOf(film: Pick<Film, 'acts' | 'shots'>): Watched {
  const cover = new CoverWatch(WHOLE);
  const wave = new WaveWatch({ region: WHOLE, mirrored: false });
  const steps: { time: number; profile: Profile | null }[] = [];
  let last: number | null = null;
  for (const { frame, time } of film.shots()) {
    if (last !== null && time - last < LEAST_STEP_MS) continue;
    const picture = pictureOf(frame, false);
    cover.see(picture, last ?? time, time);
    last = time;
    if (cover.isShut) wave.clear(time);
    else wave.see(picture, time, Infinity);
    steps.push({ time, profile: cover.isShut ? null : (wave.profiles.at(-1) ?? null) });
  }
  return { acts: film.acts, steps };
}

/** A line of a wave is in the middle of the view no farther than this from when the hand is, milliseconds. */
const NEAR_MS = 250;
const LATE_MS = 250;

export function linesOf({ acts: all, steps }: Watched): Sample {
  const acts = all.filter(({ gesture }) => gesture?.startsWith('wave'));
  const waves = acts.map((): number[] => []);
  const others = new Map<string, number[]>();
  let profiles: Profile[] = [];
  for (const { time, profile } of steps) {
    profiles = profile ? [...profiles.filter((kept) => kept.time >= time - KEPT_MS), profile] : [];
    for (const line of passagesOf(profiles, -Infinity)) {
      const kind = line.crossing > 0 ? 'wave left' : 'wave right';
      const terms = TERMS.map((valueOf) => valueOf(line));
      const during = acts.findIndex(
        ({ gesture, from, to }) => gesture === kind && time >= from * 1000 && line.from <= to * 1000,
      );
      const act = acts[during];
      if (act) {
        const isIts = Math.abs(line.middle - 500 * (act.from + act.to)) <= NEAR_MS && time <= act.to * 1000 + LATE_MS;
        if (isIts) waves[during]?.push(...terms);
        continue;
      }
      const second = `${kind} ${Math.floor(time / 1000)}`;
      const lines = others.get(second);
      if (lines) lines.push(...terms);
      else others.set(second, terms);
    }
  }
  return {
    waves: waves.map((lines) => Float32Array.from(lines)),
    others: [...others.values()].map((lines) => Float32Array.from(lines)),
  };
}

/** The bias first, then a weight for each term. */
export type Weights = readonly number[];

/** Rough weights to begin with: they only choose the first lines. */
const ROUGH: Readonly<Partial<Record<PassageTerm, number>>> = {
  least: 1,
  contrast: 1,
  came: -10,
  stayed: -10,
  slow: -7,
  quick: -4,
};
export const START: Weights = [-5, ...TERM_NAMES.map((name) => ROUGH[name] ?? 0)];

const logOdds = (weights: Weights, lines: Lines, at: number): number => {
  let sum = weights[0] ?? 0;
  for (let i = 0; i < COUNT; i++) sum += (weights[i + 1] ?? 0) * (lines[at + i] ?? 0);
  return sum;
};

/** The surest of the lines, and its log odds; null where there is none. */
export function surest(weights: Weights, lines: Lines): { readonly at: number; readonly odds: number } | null {
  let best: { at: number; odds: number } | null = null;
  for (let at = 0; at < lines.length; at += COUNT) {
    const odds = logOdds(weights, lines, at);
    if (!best || odds > best.odds) best = { at, odds };
  }
  return best;
}

/** A wave weighs as much as so many seconds in which nothing waves: there are far more of those. */
const WAVE_WEIGHT = 2.5;
const ROUNDS = 8;
/** Keeps weights small that the films say little about. */
const RIDGE = 0.5;

/**
 * Which line of a wave is the wave is not known, and what seems most like one where nothing waves depends on the weights:
 * both are chosen anew by the weights of the round before.
 */
export function fitted({ waves, others }: Sample, start: Weights): Weights {
  let weights = start;
  for (let round = 0; round < ROUNDS; round++) {
    const cases: Case[] = [];
    const add = (lines: Lines, isTrue: boolean): void => {
      const best = surest(weights, lines);
      if (!best) return;
      cases.push({ values: [...lines.subarray(best.at, best.at + COUNT)], isTrue, weight: isTrue ? WAVE_WEIGHT : 1 });
    };
    for (const lines of waves) add(lines, true);
    for (const lines of others) add(lines, false);
    const { bias, slopes } = fitOdds(cases, RIDGE);
    weights = [bias, ...slopes];
  }
  return weights;
}
