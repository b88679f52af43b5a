/** A torque to reach and the window around it. */
import { add, isWithin, limits, scale, subtract, type Torque } from '../units/index.ts';
import { passes } from '../words/passes.ts';
import { refuse } from './refusal.ts';
import type { TorqueWindow } from './verdict.ts';

export interface TorqueTarget {
  readonly target: Torque;
  readonly window: TorqueWindow;
}

/** @throws Refused `bad-target` unless 0 < min ≤ target ≤ max. */
export function torqueTarget(target: Torque, window: TorqueWindow): TorqueTarget {
  if (window.min.value <= 0) refuse('bad-target', passes.windowFromZero(written(window.min)));
  if (!isWithin(target, limits(window.min, window.max))) {
    refuse('bad-target', passes.targetOutside(written(target)));
  }
  return { target, window };
}

/** Target ± tolerance, as in '150 ± 20 N·m'. */
export const plusMinus = (target: Torque, tolerance: Torque): TorqueTarget =>
  torqueTarget(target, limits(subtract(target, tolerance), add(target, tolerance)));

/** Target ± per cent of it. */
export const plusMinusPercent = (target: Torque, percent: number): TorqueTarget =>
  torqueTarget(target, limits(scale(target, (100 - percent) / 100), scale(target, (100 + percent) / 100)));

/** A range of the manual: the target is its middle, the same for all bolts of one flange (NAVEDTRA 14008). */
export function middleOf(min: Torque, max: Torque): TorqueTarget {
  return torqueTarget(scale(add(min, max), 0.5), limits(min, max));
}

/** A share of the way to a target, its window in proportion. */
export const share = ({ target, window }: TorqueTarget, fraction: number): TorqueTarget =>
  torqueTarget(scale(target, fraction), limits(scale(window.min, fraction), scale(window.max, fraction)));

/** For sentences: six digits are enough to recognise a value. */
export const written = ({ value, unit }: Torque): string => `${Number(value.toPrecision(6))} ${unit}`;
