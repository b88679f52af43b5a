/** From a line of a schedule to the values of its passes. */
import { add, type Angle, compare, type Limits, limits, subtract, type Torque, valueIn } from '../units/index.ts';
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
      return [{ kind: 'snug', name: spec.name ?? 'snug', ...byHand }];
    case 'torque': {
      const value = torqueTarget(spec.target, spec.window);
      return [{ kind: 'torque', name: spec.name ?? written(spec.target), ...value }];
    }
    case 'percent':
      return [{ kind: 'torque', name: spec.name ?? percentName(spec.percent), ...percentOf(final, spec.percent) }];
    case 'increments': {
      const rounds = increments(needed(final, 'increments'), spec);
      return rounds.map((value, i) => ({
        kind: 'torque',
        name: `${spec.name ?? 'round'} ${i + 1} of ${rounds.length}`,
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
      return [{ kind: 'circular check', name: spec.name ?? 'circular check', ...needed(final, 'a circular check') }];
    case 're-check': {
      const { afterHours } = spec;
      if (!(afterHours > 0 && Number.isFinite(afterHours))) {
        refuse('bad-time', `The time before a re-check must be above zero hours; it is ${afterHours}.`);
      }
      const name = namedWith(spec.name, `re-check after ${afterHours} h`);
      return [{ kind: 're-check', name, afterHours, ...needed(final, 'a re-check') }];
    }
  }
}

/** A name of the manual does not take the place of what must be known to do the pass. */
const namedWith = (name: string | undefined, what: string): string => (name === undefined ? what : `${name}, ${what}`);

const percentName = (percent: number): string => (percent === 100 ? 'final' : `${percent} %`);

function needed(final: TorqueTarget | undefined, what: string): TorqueTarget {
  if (final === undefined) return refuse('no-final-target', `The schedule has ${what} but no final target.`);
  return torqueTarget(final.target, final.window);
}

function percentOf(final: TorqueTarget | undefined, percent: number): TorqueTarget {
  if (!(percent > 0 && percent <= 100)) {
    refuse('bad-percent', `A pass must be above 0 and up to 100 per cent of the final target; it is ${percent}.`);
  }
  return share(needed(final, 'a percentage'), percent / 100);
}

/** More increments than this are a slip of the pen. */
export const MOST_ROUNDS = 100;

/** Equal steps that must land on the final target. The windows on the way are in proportion to the final one. */
function increments(final: TorqueTarget, { from, step }: { from: Torque; step: Torque }): TorqueTarget[] {
  if (from.value <= 0 || step.value <= 0) refuse('bad-step', 'Increments need a first torque and a step above zero.');
  const rounds: TorqueTarget[] = [];
  let target = from;
  for (; compare(target, final.target) < 0; target = add(target, step)) {
    const { window } = share(final, valueIn(target, step.unit) / valueIn(final.target, step.unit));
    if (rounds.push({ target, window }) > MOST_ROUNDS) {
      refuse('bad-step', `Steps of ${written(step)} make more than ${MOST_ROUNDS} rounds.`);
    }
  }
  if (compare(target, final.target) !== 0) {
    refuse('bad-step', `Steps of ${written(step)} from ${written(from)} do not land on ${written(final.target)}.`);
  }
  return [...rounds, final];
}

function turn(angle: Angle, tolerance: Angle): { angle: Angle; angleWindow: Limits<'angle'> } {
  if (angle.value <= 0 || tolerance.value < 0 || compare(tolerance, angle) >= 0) {
    refuse(
      'bad-angle',
      `An angle pass turns on by more than its tolerance; it is ${angle.value}° ± ${tolerance.value}°.`,
    );
  }
  return { angle, angleWindow: limits(subtract(angle, tolerance), add(angle, tolerance)) };
}
