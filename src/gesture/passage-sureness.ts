/** How sure it is that what passes is a wave: the odds, by logistic regression over what was measured of drawn films. Pure. */
import type { Passage } from './passage.ts';

/** Of a part of the view, 0 to 1; less than nothing counts as nothing. */
const logOf = (part: number): number => Math.log(0.05 + Math.max(0, part));

/** What is weighed. What can grow without bounds is kept within those that were met while the weights were found. */
export const PASSAGE_TERMS = {
  least: ({ least }) => logOf(least),
  contrast: ({ height, ahead, behind }) => Math.log((height + 0.03) / (ahead + behind + 0.03)),
  came: ({ came }) => Math.min(came, 0.5),
  stayed: ({ stayed }) => Math.min(stayed, 0.5),
  excess: ({ excess }) => logOf(excess),
  lowExcess: ({ lowExcess }) => logOf(lowExcess),
  before: ({ before }) => Math.min(before, 0.5),
  after: ({ after }) => Math.min(after, 0.5),
  added: ({ before, after }) => Math.min(Math.max(0, after - before), 0.5),
  left: ({ left }) => Math.min(left, 0.5),
  late: ({ late }) => late,
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
  bias: 11.47,
  least: 1.77,
  contrast: -0.56,
  came: -2.83,
  stayed: -11.62,
  excess: 2.61,
  lowExcess: 1.72,
  before: -20.82,
  after: 15.67,
  added: -36.19,
  left: -4.07,
  late: -4.51,
  slow: -9.32,
  quick: -3.94,
  two: -2.26,
  three: -2.48,
  pictures: 1.9,
};

const TERMS = Object.entries(PASSAGE_TERMS) as [PassageTerm, (found: Passage) => number][];

/** The odds that it is a wave, 0 to 1. */
export function passageSureness(found: Passage, weights: PassageWeights = WEIGHTS): number {
  let sum = weights.bias;
  for (const [term, valueOf] of TERMS) sum += weights[term] * valueOf(found);
  return 1 / (1 + Math.exp(-sum));
}
