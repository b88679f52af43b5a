/** Fastener patterns and orders that make no sense, each with the mend. */
import { said } from './said.ts';

const counted = {
  ring: 'fasteners in the ring',
  'outer ring': 'fasteners in the outer ring',
  'inner ring': 'fasteners in the inner ring',
  grid: 'fasteners in the grid',
  columns: 'columns',
  rows: 'rows',
  places: 'places',
};

export const patterns = said('patterns', {
  badCount: (what: keyof typeof counted, most: number, count: number) =>
    `The number of ${counted[what]} must be a whole number from 1 to ${most}; it is ${count}.`,
  badStartAngle: (angle: number) => `The start angle must be a number; it is ${angle}.`,
  edgeTooSmall: 'A rectangle round its edge has at least two columns and two rows.',
  badPlace: 'Every place needs an x and a y that are numbers.',
  sameSpot: (place: number, other: number) => `Places ${place} and ${other} are the same spot.`,
  markedTwice: (number: number) => `Number ${number} is marked on two fasteners.`,
  badNumber: (number: number) => `A fastener number is a whole number from 1 up; "${number}" is not.`,
  tooFewNumbers: (fasteners: number, numbers: number) =>
    `The pattern has ${fasteners} fasteners but only ${numbers} numbers.`,
  tooManyNumbers: (fasteners: number, numbers: number) =>
    `The pattern has ${fasteners} fasteners but ${numbers} numbers.`,
  noFastener: (number: number) => `The pattern has no fastener ${number}.`,

  orderNamesUnknown: (number: number) => `The order names fastener ${number}, which the pattern lacks.`,
  orderNamesTwice: (number: number) => `The order names fastener ${number} twice, expected each fastener once.`,
  orderLeavesOut: (numbers: readonly number[]) =>
    `The order leaves out fastener ${numbers.join(', ')}, expected each fastener once.`,
  needsRounds: (order: 'crosswise' | 'grouped') =>
    `A ${order} order needs a ring or an edge; for this pattern use spiral, or the explicit order of the manual.`,
  needsEqualDistances: (order: 'crosswise' | 'grouped') =>
    `A ${order} order needs fasteners at equal distances; give the explicit order for these.`,
  notInGroups: (fasteners: number, size: number) => `${fasteners} fasteners cannot be cut into groups of ${size}.`,
});
