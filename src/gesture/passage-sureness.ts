/** How sure it is that what passes is a wave: the odds, by logistic regression over what was measured of drawn films. Pure. */
import type { Passage } from './passage.ts';

/** What is weighed. What can grow without bounds is kept within those that were met while the weights were found. */
export const PASSAGE_TERMS = {
  height: ({ height }) => height,
  low: ({ low }) => Math.log(0.05 + low),
  least: ({ least }) => Math.log(0.05 + least),
  contrast: ({ height, ahead, behind }) => Math.log((height + 0.03) / (ahead + behind + 0.03)),
  ahead: ({ ahead }) => Math.min(ahead, 0.5),
  behind: ({ behind }) => Math.min(behind, 0.5),
  came: ({ came }) => Math.min(came, 0.5),
  stayed: ({ stayed }) => Math.min(stayed, 0.5),
  before: ({ before }) => Math.min(before, 0.5),
  after: ({ after }) => Math.min(after, 0.5),
  lain: ({ lain }) => Math.min(lain, 1),
  rest: ({ rest }) => Math.min(rest, 1),
  late: ({ late }) => late,
  short: ({ short }) => short,
  /** Who walks by is slower; what seems to cross in a wink is light, or two things that have nothing to do with each other. */
  slow: ({ crossing }) => Math.max(0, (Math.abs(crossing) - 450) / 300),
  quick: ({ crossing }) => Math.max(0, (200 - Math.abs(crossing)) / 100),
  two: ({ pictures }) => (pictures === 2 ? 1 : 0),
  three: ({ pictures }) => (pictures === 3 ? 1 : 0),
  pictures: ({ pictures }) => Math.min(7, pictures) / 4,
} satisfies Readonly<Record<string, (found: Passage) => number>>;

export type PassageTerm = keyof typeof PASSAGE_TERMS;

export type PassageWeights = Readonly<Record<'bias' | PassageTerm, number>>;

/** Printed by tests/simulation/fit-waves.ts. */
const WEIGHTS: PassageWeights = {
  bias: 7.99,
  height: 2.1,
  low: -1.69,
  least: 5.44,
  contrast: 0.37,
  ahead: -5.23,
  behind: -1.25,
  came: -17.31,
  stayed: -21.06,
  before: -5.99,
  after: -7.47,
  lain: -2.81,
  rest: -4.46,
  late: -5.83,
  short: -2.95,
  slow: -9.65,
  quick: -4.66,
  two: -0.02,
  three: 0.05,
  pictures: 1.67,
};

const TERMS = Object.entries(PASSAGE_TERMS) as [PassageTerm, (found: Passage) => number][];

/** The odds that it is a wave, 0 to 1. */
export function passageSureness(found: Passage, weights: PassageWeights = WEIGHTS): number {
  let sum = weights.bias;
  for (const [term, valueOf] of TERMS) sum += weights[term] * valueOf(found);
  return 1 / (1 + Math.exp(-sum));
}
