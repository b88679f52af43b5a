/** The container under what drains, and the weight that is carried. */
import {
  capacityOf,
  carriers,
  checkContainer,
  leastHandling,
  shownLimit,
  shownLoad,
  type ContainerCheck,
  type Handling,
  type LiftAssessment,
} from '../../lifting/index.ts';
import { assessedLift, carriedMass } from '../../procedure/lead-hand.ts';
import type { Procedure } from '../../procedure/procedure.ts';
import { display, valueIn, type Mass, type Unit, type Volume, type Written } from '../../units/index.ts';
import { preparation } from '../../words/preparation.ts';
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
  if (typed.kind === 'wrong') return [stop('container', preparation.container.wrong(typed.why))];
  const check = containerHere(procedure, typed.kind === 'value' ? typed.value : null);
  if (check === null) {
    return [warn('container', preparation.container.none(display(drains, drains.unit, 1, 'up')))];
  }
  return check.isEnough ? [] : [stop('container', preparation.container.tooSmall(check.sentence))];
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

const shown = ({ value, unit }: Written<'mass'>): string => `${value} ${unit}`;
const heavy = (...load: Parameters<typeof shownLoad>): string => shown(shownLoad(...load));
const light = (limit: Mass): string => shown(shownLimit(limit));

function followsFrom(load: Mass, { recommendedLimit: limit }: LiftAssessment, least: Handling): string {
  if (limit.value <= 0) return preparation.lift.notByHand;
  const weight = heavy(load, limit.unit);
  const persons = carriers(least);
  if (persons === null) return preparation.lift.aboveThree(weight, light(capacityOf(3, limit)));
  const capacity = light(capacityOf(persons, limit));
  return persons === 1
    ? preparation.lift.withinOne(weight, capacity)
    : preparation.lift.together(weight, light(limit), persons, capacity);
}

/** The load constant of the lifting equation in its best posture, above which nobody should lift without being asked how. */
const ASKED_FROM_KG = 23;

/**
 * @param people how many are named
 */
export function liftFindings(procedure: Procedure, handling: Handling | null, people: number): readonly Finding[] {
  const { load, lift } = carryingOf(procedure);
  if (lift === null || procedure.lift === undefined) {
    return valueIn(load, 'kg') > ASKED_FROM_KG ? [warn('lift', preparation.lift.notDescribed(heavy(load)))] : [];
  }
  if (handling === null) return [stop('lift', preparation.lift.notSaid(heavy(load), lift.follows))];
  const persons = carriers(handling);
  if (persons === null) return [];
  const { assessment, least, follows } = lift;
  if (assessment.recommendedLimit.value <= 0) return [stop('lift', follows)];
  if (persons < procedure.lift.persons) {
    return [stop('lift', preparation.lift.fewerThanFile(procedure.lift.persons, persons))];
  }
  if (people < persons) return [stop('lift', preparation.lift.fewerNamed(persons, people))];
  const enough = carriers(least);
  return [
    ...(enough === null || enough > persons
      ? [warn('lift', preparation.lift.procedureHolds(procedure.lift.persons, follows))]
      : []),
    // The first holds for every lift, and stands beside the weight.
    ...assessment.reservations.slice(1).map((sentence) => warn('lift', sentence)),
  ];
}
