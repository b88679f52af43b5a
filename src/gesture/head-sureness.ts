/**
 * How sure a nod or a shake is: the odds, by logistic regression over what was measured of drawn films of gestures and
 * of work. Each weight has the sign that a head gives it: ways alike, straight, still before, back where it was. Pure.
 */
import type { HeadMeasures } from './head-run.ts';

/** What is weighed, each kept within the bounds that were met while the weights were found. */
const TERMS = {
  straight: ({ straight }) => Math.min(straight, 8),
  alike: ({ alike }) => alike,
  away: ({ away }) => Math.min(away, 2),
  before: ({ before }) => Math.min(before, 1),
  after: ({ after }) => Math.min(after, 1),
  across: ({ across }) => Math.min(across, 0.6),
  slant: ({ slant }) => Math.min(slant, 1),
  area: ({ area }) => Math.log(1 + area),
  follow: ({ follow }) => follow,
  /** A way of 0.3 s is a head's. */
  pace: ({ perSwing }) => (Math.min(7, Math.max(1, perSwing / 100)) - 3) ** 2,
  /** Who goes on and on is at work. */
  swings: ({ swings }) => Math.max(0, swings - 6),
} satisfies Readonly<Record<string, (found: HeadMeasures) => number>>;

type Term = keyof typeof TERMS;

interface Weights {
  readonly bias: number;
  /** Who nods goes down from where the head rests; who shakes it goes to both sides of that. */
  readonly aside: number;
  readonly terms: Readonly<Record<Term, number>>;
}

const WEIGHTS: Readonly<Record<'nod' | 'shake', Weights>> = {
  nod: {
    bias: -2.09,
    aside: -6.93,
    terms: {
      straight: 0.1,
      alike: 1.11,
      away: -3.12,
      before: -8.6,
      after: 0,
      across: -7.58,
      slant: -5.44,
      area: 1.2,
      follow: 1.86,
      pace: -0.41,
      swings: -1.62,
    },
  },
  shake: {
    bias: -5.09,
    aside: -4.68,
    terms: {
      straight: 0.45,
      alike: 1.69,
      away: 0,
      before: -2.68,
      after: -5.86,
      across: -6.06,
      slant: -3.52,
      area: 1.75,
      follow: 0,
      pace: -1.14,
      swings: -2.55,
    },
  },
};

/** 0 to 1. */
export function headSureness(kind: 'nod' | 'shake', found: HeadMeasures): number {
  const { bias, aside, terms } = WEIGHTS[kind];
  const off = kind === 'nod' ? found.above : Math.abs(found.above - 0.5);
  let sum = bias + aside * off;
  for (const term of Object.keys(TERMS) as Term[]) sum += terms[term] * TERMS[term](found);
  return 1 / (1 + Math.exp(-sum));
}
