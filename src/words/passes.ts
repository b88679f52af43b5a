/** Passes: their names, a whole plan in a sentence, and what is wrong with a schedule. */
import { said } from './said.ts';

const needingFinal = {
  percentage: 'a percentage',
  increments: 'increments',
  'circular check': 'a circular check',
  're-check': 'a re-check',
};

const orders = {
  explicit: 'in the order of the manual',
  crosswise: 'crosswise',
  circular: 'round the pattern',
  spiral: 'from the middle outwards',
  grouped: 'crosswise in groups',
  'in turn': 'part by part',
  reverse: 'in reverse order',
};

const counted = (count: number, what: string, plural = 's'): string => `${count} ${what}${count === 1 ? '' : plural}`;

const inSequence = (parts: readonly string[]): string =>
  parts.length > 1 ? `${parts.slice(0, -1).join(', ')}, then ${parts.at(-1) ?? ''}` : (parts[0] ?? '');

export const passes = said('passes', {
  running: 'running torque',
  snug: 'snug',
  percent: (percent: number) => (percent === 100 ? 'final' : `${percent} %`),
  increment: (name: string | undefined, round: number, of: number) => `${name ?? 'round'} ${round} of ${of}`,
  circularCheck: 'circular check',
  recheck: (hours: number) => `re-check after ${hours} h`,
  /** The manual's own name, and what must be known to do the pass. */
  nameAnd: (name: string, what: string) => `${name}, ${what}`,
  /** How a pattern is freed where the procedure names no stages. */
  stages: ['break loose, a quarter turn each', 'take off'],

  plan: (fasteners: number, count: number, parts: readonly string[]) =>
    `${counted(fasteners, 'fastener')} in ${counted(count, 'pass', 'es')}: ${inSequence(parts)}.`,
  snugByHand: 'snug by hand',
  turnedFurther: (degrees: number) => `${degrees}° further`,
  checkedAt: (torque: string) => `a check at ${torque} until no nut turns`,
  recheckedAt: (torque: string, hours: number) => `a re-check at ${torque} after ${hours} hours`,
  onFasteners: (what: string, numbers: readonly number[]) => `${what} on ${numbers.join(', ')}`,
  inOrder: (what: string, order: keyof typeof orders) => `${what} ${orders[order]}`,

  windowFromZero: (min: string) => `The window must begin above zero; it begins at ${min}.`,
  targetOutside: (target: string) => `The target ${target} is outside its window.`,
  noFinal: (what: keyof typeof needingFinal) => `The schedule has ${needingFinal[what]} but no final target.`,
  badPercent: (percent: number) =>
    `A pass must be above 0 and up to 100 per cent of the final target; it is ${percent}.`,
  badIncrements: 'Increments need a first torque and a step above zero.',
  tooManyRounds: (step: string, most: number) => `Steps of ${step} make more than ${most} rounds.`,
  missesFinal: (step: string, from: string, final: string) => `Steps of ${step} from ${from} do not land on ${final}.`,
  badAngle: (degrees: number, tolerance: number) =>
    `An angle pass turns by more than its tolerance; it is ${degrees}° ± ${tolerance}°.`,
  badHours: (hours: number) => `The time before a re-check must be above zero hours; it is ${hours}.`,
  noPasses: 'A schedule needs at least one pass.',
  noStages: 'Loosening needs at least one stage.',
  goesDown: (pass: number, fastener: number, torque: string, before: string) =>
    `Pass ${pass} goes down: fastener ${fastener} would get ${torque} after ${before}, expected no less than before.`,
  leftOut: (numbers: readonly number[]) =>
    `No pass works fastener ${numbers.join(', ')}, expected each fastener in a pass.`,
});
