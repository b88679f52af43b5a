/** Lifting: the load, the lifting equation and what it does not say, and the container underneath. */
import { said } from './said.ts';

/** Work that the lifting equation was not made for. */
const outside = {
  'one hand': 'lifting with one hand',
  'kneeling or seated': 'lifting while kneeling or seated',
  'constrained space': 'lifting in a constrained space',
  'slippery footing': 'lifting on slippery ground',
  holding: 'holding a load',
};

const distances = {
  width: 'width',
  horizontal: 'horizontal distance',
  vertical: 'vertical distance',
  'vertical at the origin': 'vertical distance at the origin',
  travel: 'travel',
};

export const lifting = said('lifting', {
  noCapacity: (amount: string) => `A container cannot hold ${amount}.`,
  badMargin: (percent: number) => `The margin must be zero per cent or more; it is ${percent}.`,
  containerHolds: (holds: string, needed: string, drains: string, marginPercent: number) =>
    `The container holds ${holds}; ${needed} may be needed: ${drains} and a margin of ${marginPercent} %.`,
  containerTooSmall: (holds: string, needed: string, drains: string, marginPercent: number) =>
    `The container is too small: it holds ${holds}, but ${needed} may be needed: ${drains} and a margin of ${marginPercent} %.`,

  noDryMass: (amount: string) => `The dry mass must be above zero; it is ${amount}.`,
  noLoad: (amount: string) => `The load must be above zero; it is ${amount}.`,
  negativeVolume: (amount: string) => `A volume cannot be negative; it is ${amount}.`,
  noDensity: (amount: string) => `A density must be above zero; it is ${amount}.`,
  densitiesCrossed: 'The lower density of the range is above the upper one.',
  badTeam: (people: number) => `The rule is for one to three people, not ${people}; use a hoist.`,
  nobodyLifts: (amount: string) => `Nobody can lift ${amount}.`,

  gripNeverGood: 'With gloves or moving contents a grip is never good; state fair or poor.',
  badRate: (perMinute: number) => `The lifts per minute must be zero or more; they are ${perMinute}.`,
  badAsymmetry: (degrees: number) => `The asymmetry is from 0° to 180°; it is ${degrees}°.`,
  negativeDistance: (what: keyof typeof distances, amount: string) =>
    `The ${distances[what]} cannot be negative; it is ${amount}.`,

  meaning: {
    acceptable: 'The load is within the recommended limit.',
    increased: 'The load is above the limit recommended for one person: increased risk for some people.',
    high: 'The load is more than three times the limit recommended for one person: many people are at risk.',
    'not allowed': 'This lift is not allowed by hand: at this reach, height, turn or rate the limit is zero.',
    'not covered':
      'The equation does not cover this work, so a load within its limit is no promise; use a stand or a hoist.',
  },
  onlyWarns: 'The lifting equation may warn; it does not certify that a lift is safe.',
  notCovered: (work: keyof typeof outside) => `The equation does not cover ${outside[work]}; the true limit is lower.`,
  gripStatedFair:
    'The grip is stated fair although gloves or moving contents make it poor by the manual of the equation.',
});
