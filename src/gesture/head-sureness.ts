/**
 * How sure a nod or a shake is: the odds, by logistic regression over what was measured of swings in drawn films of gestures
 * and of work. Pure.
 */
import type { HeadMeasures } from './head-measures.ts';
import { HEAD_WEIGHTS } from './head-weights.ts';

export type HeadKind = 'nod' | 'shake';

const within = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));
/** How far a ratio is from what is expected, whichever way. */
const off = (ratio: number, expected: number): number => Math.abs(Math.log(within(0.2, ratio, 3) / expected));

/** Milliseconds that a head takes one way. */
const USUAL_MS = 280;

/** What is weighed, measures of the motion kept within the bounds of what a head can do. */
export const TERMS = {
  straight: ({ straight }) => Math.log(within(0.3, straight, 10)),
  alike: ({ alike }) => alike,
  away: ({ away }) => Math.min(away, 2),
  before: ({ before }) => Math.min(before, 1),
  after: ({ after }) => Math.min(after, 1),
  across: ({ across }) => within(-0.2, across, 0.6),
  along: ({ along }) => within(0, along, 1),
  slant: ({ slant }) => Math.min(slant, 1),
  area: ({ area }) => Math.log(1 + area),
  follow: ({ follow }) => follow,
  fill: ({ fill }) => fill,
  stillAround: ({ stillAround }) => stillAround,
  pace: ({ perSwing }) => Math.log(within(100, perSwing, 700) / USUAL_MS) ** 2,
  /** Hands do small work faster than a head is shaken. */
  fast: ({ perSwing }) => within(0, 230 - perSwing, 130) / 100,
  slow: ({ perSwing }) => within(0, perSwing - 450, 300) / 100,
  /** Who goes on and on is at work. */
  swings: ({ swings }) => Math.max(0, swings - 6),
  /** Who nods goes down from where the head rests; who shakes it goes to both sides of that. */
  aside: ({ above }, kind) => (kind === 'nod' ? above : Math.abs(above - 0.5)),
  changeBefore: ({ changeBefore }) => Math.min(changeBefore, 1),
  uneven: ({ uneven }) => Math.min(uneven, 1),
  oneSided: ({ oneSided }) => Math.min(oneSided, 1.5),
  /** A nod begins and ends with a whole way, a shake with about half of one. */
  first: ({ firstWay }, kind) => off(firstWay, kind === 'nod' ? 1 : 0.6),
  last: ({ lastWay }, kind) => off(lastWay, kind === 'nod' ? 1 : 0.6),
  waited: ({ waited }) => waited / 100,
  together: ({ together }) => Math.log(1 + together),
  small: ({ way }) => Math.max(0, Math.log(3 / within(0.5, way, 40))),
  large: ({ way }) => Math.max(0, Math.log(within(0.5, way, 40) / 10)),
  /** The way over the size of what goes it. */
  relative: ({ way, size }) => Math.log(within(0.03, way / size, 1)),
  /** A head was still before it is shaken or nods; a hand came from somewhere. */
  drift: ({ drift }) => Math.log(0.2 + Math.min(drift, 5)),
  /** These seven: a head is round and goes as one, over shoulders that stay; what swings on a pivot, on an arm, does not. */
  offCentre: ({ offCentre }) => Math.min(offCentre, 1),
  long: ({ long }) => Math.min(long, 4),
  diagonal: ({ diagonal }) => diagonal,
  sloping: ({ sloping }) => sloping,
  sideways: ({ sideways }) => Math.min(sideways, 1.5),
  fromBelow: ({ fromBelow }) => fromBelow,
  below: ({ below }) => below,
  /** What is hardly more than noise says little. */
  change: ({ change }) => Math.log(0.01 + change),
} satisfies Readonly<Record<string, (found: HeadMeasures, kind: HeadKind) => number>>;

export type Term = keyof typeof TERMS;

export interface HeadWeights {
  readonly bias: number;
  readonly terms: Readonly<Record<Term, number>>;
}

/** 0 to 1. */
export function headSureness(kind: HeadKind, found: HeadMeasures): number {
  const { bias, terms } = HEAD_WEIGHTS[kind];
  let odds = bias;
  for (const term of Object.keys(TERMS) as Term[]) odds += terms[term] * TERMS[term](found, kind);
  return 1 / (1 + Math.exp(-odds));
}
