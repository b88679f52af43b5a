/** How probable it is that a value lies in its window, given a reading and its standard uncertainty. */
import { compare, type Torque, valueIn } from '../units/index.ts';
import { wrench } from '../words/wrench.ts';
import { refuse } from './refusal.ts';
import type { TorqueWindow } from './verdict.ts';

/**
 * Conformity probability, 0 to 1: Φ((max − y)/u) − Φ((min − y)/u) for a normal distribution about the reading
 * (JCGM 106, clause 7). `standardUncertainty` is u = U/2 for the usual U at about 95 %.
 * @throws Refused `bad-uncertainty` unless it is above zero; `limits-crossed` never: crossed limits give 0.
 */
export function conformityProbability(
  reading: Torque,
  { min, max }: TorqueWindow,
  standardUncertainty: Torque,
): number {
  const u = valueIn(standardUncertainty, reading.unit);
  if (u <= 0) refuse('bad-uncertainty', wrench.noUncertainty(`${u} ${reading.unit}`));
  if (compare(min, max) > 0) return 0;
  const from = (limit: Torque) => (valueIn(limit, reading.unit) - reading.value) / u;
  return normalBelow(from(max)) - normalBelow(from(min));
}

/** Beyond this many standard deviations the tail is below the last bit of a number near 1. */
const TAIL = 8.3;

/**
 * Φ, the standard normal distribution, by its Taylor series about 0:
 * Φ(x) = ½ + φ(x)·(x + x³/3 + x⁵/(3·5) + …) (G. Marsaglia, Evaluating the Normal Distribution, 2004).
 * Absolute error below 1e-14.
 */
function normalBelow(x: number): number {
  if (x < -TAIL) return 0;
  if (x > TAIL) return 1;
  let sum = x;
  let term = x;
  for (let odd = 3; Math.abs(term) > Number.EPSILON * Math.abs(sum); odd += 2) {
    term *= (x * x) / odd;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}
