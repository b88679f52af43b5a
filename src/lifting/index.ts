/** The door of the room: the mass in the hands, what may be lifted, and whether the container is large enough. */
export { checkContainer, type ContainerCheck, USUAL_MARGIN_PERCENT } from './container.ts';
export type { Coupling } from './coupling.ts';
export { averageRate, type Duration } from './frequency.ts';
export { capacityOf, carriers, HANDLINGS, type Handling, leastHandling } from './handling.ts';
export {
  fluidMass,
  type HandlingMass,
  handlingMass,
  type RetainedFluid,
  shownLimit,
  shownLoad,
  teamCapacity,
} from './mass.ts';
export {
  assessLift,
  estimateHorizontal,
  type LiftAssessment,
  type LiftTask,
  type Multipliers,
  type OutsideValidity,
  type UnitSystem,
} from './niosh.ts';
export type { LiftingRefusal } from './refusal.ts';
