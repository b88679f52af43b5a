/** The verdict on a torque reading, by a named rule, and what to do next. */
import { add, asGiven, compare, isWithin, type Limits, limits, scale, subtract, type Torque } from '../units/index.ts';
import { wrench } from '../words/wrench.ts';
import { refuse } from './refusal.ts';

/** The acceptance window of a torque, both limits inside. */
export type TorqueWindow = Limits<'torque'>;

/**
 * - simple: the reading itself lies in the window. The rule of maintenance data where nothing else is said.
 * - guard band: the window less `factor` × `uncertainty` on both sides (ISO 14253-1, JCGM 106; factor 1 by default,
 *   uncertainty the expanded one at about 95 %).
 * - relative tool error: the tool may be wrong by m = `errorPercent` of its reading y, so that the true value lies in
 *   y·(1 ± m); the window is shrunk to min/(1−m) … max/(1+m).
 */
export type JudgingRule =
  | { readonly rule: 'simple' }
  | { readonly rule: 'guard band'; readonly uncertainty: Torque; readonly factor?: number }
  | { readonly rule: 'relative tool error'; readonly errorPercent: number };

/** Of a guard band, where none is stated (ISO 14253-1). */
export const USUAL_FACTOR = 1;

export type Outcome = 'in' | 'under' | 'over' | 'not provable';

export interface Verdict {
  readonly outcome: Outcome;
  readonly rule: JudgingRule['rule'];
  /** The window in which the rule accepts; null when the tool is too uncertain to prove anything in the one given. */
  readonly window: TorqueWindow | null;
}

/**
 * The verdict on a reading. Widening the window never turns 'in' into anything else.
 * @throws Refused `bad-uncertainty`, `limits-crossed`.
 */
export function judge(reading: Torque, window: TorqueWindow, rule: JudgingRule): Verdict {
  const { accepted, lowest, highest } = zones(window, rule);
  const outcome = outcomeOf(reading, accepted, lowest, highest);
  return { outcome, rule: rule.rule, window: accepted };
}

/** The window in which a rule accepts, or null when there is none. @throws Refused `bad-uncertainty`. */
export const acceptanceWindow = (window: TorqueWindow, rule: JudgingRule): TorqueWindow | null =>
  zones(window, rule).accepted;

interface Zones {
  readonly accepted: TorqueWindow | null;
  /** Below this the value is proved under, above `highest` proved over. */
  readonly lowest: Torque;
  readonly highest: Torque;
}

function zones(window: TorqueWindow, rule: JudgingRule): Zones {
  const { min, max } = limits(window.min, window.max);
  switch (rule.rule) {
    case 'simple':
      return { accepted: { min, max }, lowest: min, highest: max };
    case 'guard band': {
      const band = guardBand(rule.uncertainty, rule.factor ?? USUAL_FACTOR);
      return {
        accepted: unlessCrossed(add(min, band), subtract(max, band)),
        lowest: subtract(min, band),
        highest: add(max, band),
      };
    }
    case 'relative tool error': {
      const error = errorFraction(rule.errorPercent);
      return {
        accepted: unlessCrossed(scale(min, 1 / (1 - error)), scale(max, 1 / (1 + error))),
        lowest: scale(min, 1 / (1 + error)),
        highest: scale(max, 1 / (1 - error)),
      };
    }
  }
}

function outcomeOf(reading: Torque, accepted: TorqueWindow | null, lowest: Torque, highest: Torque): Outcome {
  if (accepted !== null && isWithin(reading, accepted)) return 'in';
  if (compare(reading, lowest) < 0) return 'under';
  return compare(reading, highest) > 0 ? 'over' : 'not provable';
}

const unlessCrossed = (min: Torque, max: Torque): TorqueWindow | null => (compare(min, max) > 0 ? null : { min, max });

function guardBand(uncertainty: Torque, factor: number): Torque {
  const band = scale(uncertainty, factor);
  if (uncertainty.value < 0 || factor < 0) {
    refuse('bad-uncertainty', wrench.negativeGuardBand(asGiven(band)));
  }
  return band;
}

function errorFraction(percent: number): number {
  if (!(percent >= 0 && percent < 100)) {
    refuse('bad-uncertainty', wrench.badToolError(percent));
  }
  return percent / 100;
}
