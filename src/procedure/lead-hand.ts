/** What a procedure says about its tools, its lift and its container, in the shape the computing rooms take. */
import {
  assessLift,
  checkContainer,
  handlingMass,
  type ContainerCheck,
  type HandlingMass,
  type LiftAssessment,
  type LiftTask,
} from '../lifting/index.ts';
import { correct, type Adapter, type TorqueTarget } from '../tightening/index.ts';
import { compare, length, subtract, type Torque } from '../units/index.ts';
import type { Procedure } from './schema.ts';
import type { TightenStep } from './steps.ts';

/** The adapter of a step with the lever of its tool; null for a bare wrench. A loaded procedure has both or neither. */
export function adapterOf({ adapters, tools }: Procedure, step: TightenStep): Adapter | null {
  const adapter = adapters.find(({ id }) => id === step.adapter);
  const lever = tools.find(({ id }) => id === step.tool)?.lever;
  return adapter === undefined || lever === undefined ? null : { lever, length: adapter.length, angle: adapter.angle };
}

/**
 * Setting and window on the wrench for a target at the fastener.
 * @param runDown the run-down torque measured on this nut, at the fastener, where the step asks for it
 * @throws Refused `nut-worn`, `bad-run-down`
 */
export function atWrench(procedure: Procedure, step: TightenStep, value: TorqueTarget, runDown?: Torque): TorqueTarget {
  const adapter = adapterOf(procedure, step);
  const minimum = minimumRunningTorque(step) ?? undefined;
  return correct({
    ...value,
    ...(runDown === undefined ? {} : { runDown }),
    ...(runDown === undefined || minimum === undefined ? {} : { minimumRunDown: minimum }),
    ...(adapter === null ? {} : { adapter }),
  }).atWrench;
}

/** What a self-locking nut must turn with before it seats, new or used: a stated limit is a limit; null where there is none. */
export const minimumRunningTorque = ({ runDown }: TightenStep): Torque | null => runDown?.minimum ?? null;

/** Whether a nut has lost its grip and is refused: it turns with less than the step wants. */
export function isWorn(step: TightenStep, runningTorque: Torque): boolean {
  const minimum = minimumRunningTorque(step);
  return minimum !== null && compare(runningTorque, minimum) < 0;
}

/** What is carried: the dry component and the fluid it retains. */
export function carriedMass({ component: { dryMass, fluid, retains } }: Procedure): HandlingMass {
  return handlingMass(dryMass, fluid && retains ? [{ volume: retains, density: fluid.density }] : []);
}

/** Both ends of the lift for the lifting equation, each with the whole load; null where the file describes no lift. */
export function liftTasks(procedure: Procedure): { readonly origin: LiftTask; readonly destination: LiftTask } | null {
  const { lift, component } = procedure;
  if (lift === undefined) return null;
  const { persons: _persons, system: _system, origin, destination, ...work } = lift;
  const rise = subtract(destination.vertical, origin.vertical);
  const shared = {
    ...work,
    load: carriedMass(procedure).total,
    travel: length(Math.abs(rise.value), rise.unit),
    verticalAtOrigin: origin.vertical,
    sloshing: (component.retains?.value ?? 0) > 0,
  };
  return { origin: { ...shared, ...origin }, destination: { ...shared, ...destination } };
}

/** The lift at its worse end, for one person with the whole load; null where the file describes no lift. */
export function assessedLift(procedure: Procedure): LiftAssessment | null {
  const { lift } = procedure;
  const tasks = liftTasks(procedure);
  if (lift === undefined || tasks === null) return null;
  const [origin, destination] = [assessLift(tasks.origin, lift.system), assessLift(tasks.destination, lift.system)];
  return origin.recommendedLimit.value <= destination.recommendedLimit.value ? origin : destination;
}

/** Whether the container holds what drains; null where the file names no container, or does not say what drains. */
export function containerCheck({ container, component }: Procedure): ContainerCheck | null {
  if (container === undefined || component.drains === undefined) return null;
  return checkContainer(container.capacity, [component.drains], container.marginPercent);
}
