/** The container under what drains, and the weight that is carried. */
import {
  capacityOf,
  carriers,
  checkContainer,
  leastHandling,
  type ContainerCheck,
  type Handling,
  type LiftAssessment,
} from '../../lifting/index.ts';
import { assessedLift, carriedMass } from '../../procedure/lead-hand.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { display, valueIn, type Mass, type Unit, type Volume } from '../../units/index.ts';
import { stop, warn, type Finding } from './finding.ts';
import { typedQuantity } from './typed.ts';

/** In which unit the container is asked for: its own in the file, else that of what drains. */
export const capacityUnit = ({ container, component }: Procedure): Unit<'volume'> | null =>
  container?.capacity.unit ?? component.drains?.unit ?? null;

/** The container that stands here, else that of the file; null where neither is known or nothing drains. */
export function containerHere({ container, component }: Procedure, typed: Volume | null): ContainerCheck | null {
  const capacity = typed ?? container?.capacity;
  if (capacity === undefined || component.drains === undefined) return null;
  return checkContainer(capacity, [component.drains], container?.marginPercent);
}

export function containerFindings(procedure: Procedure, text: string): readonly Finding[] {
  const { drains } = procedure.component;
  const unit = capacityUnit(procedure);
  if (drains === undefined || drains.value === 0 || unit === null) return [];
  const typed = typedQuantity('volume', text, unit);
  if (typed.kind === 'wrong') return [stop('container', `Container: ${typed.why}`)];
  const check = containerHere(procedure, typed.kind === 'value' ? typed.value : null);
  if (check === null) {
    const amount = display(drains, drains.unit, 1, 'up');
    return [
      warn('container', `${amount} may drain, and no container is named. Enter what the one that stands here holds.`),
    ];
  }
  return check.isEnough
    ? []
    : [stop('container', `${check.sentence} Put a larger one under it and enter what it holds.`)];
}

/** The weight in the hands, what the lifting equation says of it, and the least that carries it. */
export interface Carrying {
  readonly load: Mass;
  /** Null where the file describes no lift. */
  readonly lift: {
    readonly assessment: LiftAssessment;
    readonly least: Handling;
    /** What follows, in a sentence. */
    readonly follows: string;
  } | null;
}

export function carryingOf(procedure: Procedure): Carrying {
  const load = carriedMass(procedure).total;
  const assessment = assessedLift(procedure);
  if (assessment === null) return { load, lift: null };
  const least = leastHandling(load, assessment.recommendedLimit);
  return { load, lift: { assessment, least, follows: followsFrom(load, assessment, least) } };
}

/** Rounded on the safe side: a load up, a limit down. */
const heavy = (mass: Mass, unit = mass.unit): string => display(mass, unit, 1, 'up');
const light = (mass: Mass, unit = mass.unit): string => display(mass, unit, 1, 'down');

function followsFrom(load: Mass, { recommendedLimit: limit }: LiftAssessment, least: Handling): string {
  if (limit.value <= 0) {
    return 'At this reach, height, turn or rate nothing may be lifted by hand: use a sling, a hoist or a stand.';
  }
  const persons = carriers(least);
  if (persons === null) {
    const three = light(capacityOf(3, limit));
    return `${heavy(load, limit.unit)} is above the ${three} that three may carry together: use a sling, a hoist or a stand.`;
  }
  const capacity = light(capacityOf(persons, limit));
  return persons === 1
    ? `${heavy(load, limit.unit)} is within the ${capacity} recommended for one person.`
    : `${heavy(load, limit.unit)} is above the ${light(limit)} recommended for one person; ${COUNTS[persons] ?? persons} may carry ${capacity} together by common practice.`;
}

const COUNTS: Readonly<Record<number, string>> = { 1: 'one', 2: 'two', 3: 'three' };

/** The load constant of the lifting equation in its best posture, above which nobody should lift without being asked how. */
const ASKED_FROM_KG = 23;

/**
 * @param people how many are named
 */
export function liftFindings(procedure: Procedure, handling: Handling | null, people: number): readonly Finding[] {
  const { load, lift } = carryingOf(procedure);
  if (lift === null || procedure.lift === undefined) {
    return valueIn(load, 'kg') > ASKED_FROM_KG
      ? [
          warn(
            'lift',
            `The component weighs ${heavy(load)}, and the file does not say how it is lifted. Agree on it first.`,
          ),
        ]
      : [];
  }
  if (handling === null)
    return [stop('lift', `It is not said yet how the ${heavy(load)} are carried. ${lift.follows}`)];
  const persons = carriers(handling);
  if (persons === null) return [];
  const { assessment, least, follows } = lift;
  if (assessment.recommendedLimit.value <= 0) return [stop('lift', follows)];
  if (persons < procedure.lift.persons) {
    return [
      stop(
        'lift',
        `The procedure lifts it with ${procedure.lift.persons} persons, not with ${persons}. Do as it says, or use a sling.`,
      ),
    ];
  }
  if (people < persons) {
    return [
      stop(
        'lift',
        `${persons} persons are to carry, and ${people} ${people === 1 ? 'is' : 'are'} named. Name the others, or use a sling.`,
      ),
    ];
  }
  const enough = carriers(least);
  return [
    ...(enough === null || enough > persons
      ? [warn('lift', `Carried by ${handling}, it is too heavy. ${follows}`)]
      : []),
    // The first holds for every lift, and stands beside the weight.
    ...assessment.reservations.slice(1).map((sentence) => warn('lift', sentence)),
  ];
}
