/** From a line of a schedule to the values of its passes. */
import { add, type Angle, compare, type Limits, limits, subtract, type Torque, valueIn } from '../units/index.ts';
import { passes } from '../words/passes.ts';
import type { PassSpec, Planned, PlannedPass } from './pass.ts';
import { refuse } from './refusal.ts';
import { share, type TorqueTarget, torqueTarget, written } from './target.ts';

/** What a planned pass is, before it has its order and its place in the schedule. */
export type PassValue<P = PlannedPass> = P extends Planned ? Omit<P, Exclude<keyof Planned, 'name'>> : never;

/**
 * The passes one line of a schedule stands for, each with its value.
 * @throws Refused `no-final-target`, `bad-target`, `bad-percent`, `bad-step`, `bad-angle`, `bad-time`.
 */
export function valuesOf(spec: PassSpec, final: TorqueTarget | undefined): PassValue[] {
  const byHand = { target: null, window: null } as const;
  switch (spec.kind) {
    case 'snug':
      return [{ kind: 'snug', name: spec.name ?? passes.snug, ...byHand }];
    case 'torque': {
      const value = torqueTarget(spec.target, spec.window);
      return [{ kind: 'torque', name: spec.name ?? written(spec.target), ...value }];
    }
    case 'percent':
      return [{ kind: 'torque', name: spec.name ?? passes.percent(spec.percent), ...percentOf(final, spec.percent) }];
    case 'increments': {
      const rounds = increments(needed(final, 'increments'), spec);
      return rounds.map((value, i) => ({
        kind: 'torque',
        name: passes.increment(spec.name, i + 1, rounds.length),
        ...value,
      }));
    }
    case 'angle':
      return [
        {
          kind: 'angle',
          name: namedWith(spec.name, `${spec.angle.value}°`),
          ...byHand,
          ...turn(spec.angle, spec.tolerance),
        },
      ];
    case 'circular check':
      return [{ kind: 'circular check', name: spec.name ?? passes.circularCheck, ...needed(final, spec.kind) }];
    case 're-check': {
      const { afterHours } = spec;
      if (!(afterHours > 0 && Number.isFinite(afterHours))) {
        refuse('bad-time', passes.badHours(afterHours));
      }
      const name = namedWith(spec.name, passes.recheck(afterHours));
      return [{ kind: 're-check', name, afterHours, ...needed(final, spec.kind) }];
    }
  }
}

/** A name of the manual does not take the place of what must be known to do the pass. */
const namedWith = (name: string | undefined, what: string): string =>
  name === undefined ? what : passes.nameAnd(name, what);

function needed(final: TorqueTarget | undefined, what: Parameters<typeof passes.noFinal>[0]): TorqueTarget {
  if (final === undefined) return refuse('no-final-target', passes.noFinal(what));
  return torqueTarget(final.target, final.window);
}

function percentOf(final: TorqueTarget | undefined, percent: number): TorqueTarget {
  if (!(percent > 0 && percent <= 100)) {
    refuse('bad-percent', passes.badPercent(percent));
  }
  return share(needed(final, 'percentage'), percent / 100);
}

/** More increments than this are a slip of the pen. */
export const MOST_ROUNDS = 100;

/** Equal steps that must land on the final target. The windows on the way are in proportion to the final one. */
function increments(final: TorqueTarget, { from, step }: { from: Torque; step: Torque }): TorqueTarget[] {
  if (from.value <= 0 || step.value <= 0) refuse('bad-step', passes.badIncrements);
  const rounds: TorqueTarget[] = [];
  let target = from;
  for (; compare(target, final.target) < 0; target = add(target, step)) {
    const { window } = share(final, valueIn(target, step.unit) / valueIn(final.target, step.unit));
    if (rounds.push({ target, window }) > MOST_ROUNDS) {
      refuse('bad-step', passes.tooManyRounds(written(step), MOST_ROUNDS));
    }
  }
  if (compare(target, final.target) !== 0) {
    refuse('bad-step', passes.missesFinal(written(step), written(from), written(final.target)));
  }
  return [...rounds, final];
}

function turn(angle: Angle, tolerance: Angle): { angle: Angle; angleWindow: Limits<'angle'> } {
  if (angle.value <= 0 || tolerance.value < 0 || compare(tolerance, angle) >= 0) {
    refuse('bad-angle', passes.badAngle(angle.value, tolerance.value));
  }
  return { angle, angleWindow: limits(subtract(angle, tolerance), add(angle, tolerance)) };
}
