/**
 * The revised NIOSH lifting equation, RWL = LC·HM·VM·DM·AM·FM·CM (DHHS (NIOSH) 94-110, rev. 9/2021).
 *
 * The metric and the US form are two equations, not conversions of each other; a task is computed in one of them. The
 * equation may warn. It does not certify that a lift is safe.
 */
import {
  type Angle,
  asGiven,
  compare,
  length as lengthOf,
  type Length,
  mass,
  type Mass,
  scale,
  valueIn,
} from '../units/index.ts';
import { lifting } from '../words/lifting.ts';
import { type Coupling, couplingFor, couplingMultiplier } from './coupling.ts';
import { type Duration, frequencyMultiplier } from './frequency.ts';
import { refuse } from './refusal.ts';

export type UnitSystem = 'metric' | 'US';

/** Work the equation was not made for. */
export type OutsideValidity = 'one hand' | 'kneeling or seated' | 'constrained space' | 'slippery footing' | 'holding';

/** One end of a lift, the origin or the destination, and the work around it. */
export interface LiftTask {
  readonly load: Mass;
  /** H: from the middle between the ankles to the middle between the hands. */
  readonly horizontal: Length;
  /** V: from the floor to the hands, at the end that is judged. */
  readonly vertical: Length;
  /** V at the origin, which the frequency goes by, where the destination is judged. */
  readonly verticalAtOrigin?: Length;
  /** D: how far the hands move up or down. */
  readonly travel: Length;
  /** A: how far the load is to the side of straight ahead, 0° to 180°. */
  readonly asymmetry: Angle;
  /** Lifts per minute. */
  readonly perMinute: number;
  readonly duration: Duration;
  /** As stated by somebody who looked at the grip; poor where nobody did. */
  readonly coupling?: Coupling;
  readonly gloves: boolean;
  /** The contents move: a component part full of fluid. */
  readonly sloshing: boolean;
  readonly outside?: readonly OutsideValidity[];
}

export interface Multipliers {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly asymmetry: number;
  readonly frequency: number;
  readonly coupling: number;
}

export interface LiftAssessment {
  readonly system: UnitSystem;
  readonly multipliers: Multipliers;
  readonly coupling: Coupling;
  /** Recommended weight limit, in kg or lb. */
  readonly recommendedLimit: Mass;
  /** Lifting index: load over limit; null where the limit is zero and the lift is not allowed. */
  readonly index: number | null;
  readonly risk: 'acceptable' | 'increased' | 'high' | 'not allowed' | 'not covered';
  /** What the index means, in words. */
  readonly sentence: string;
  /** What limits the result; never empty, because the equation only warns. */
  readonly reservations: readonly string[];
}

interface Equation {
  readonly mass: 'kg' | 'lb';
  readonly length: 'cm' | 'in';
  readonly loadConstant: number;
  readonly horizontal: { readonly best: number; readonly most: number };
  readonly vertical: { readonly best: number; readonly slope: number; readonly most: number };
  readonly distance: { readonly slope: number; readonly least: number; readonly most: number };
}

const EQUATIONS: Readonly<Record<UnitSystem, Equation>> = {
  metric: {
    mass: 'kg',
    length: 'cm',
    loadConstant: 23,
    horizontal: { best: 25, most: 63 },
    vertical: { best: 75, slope: 0.003, most: 175 },
    distance: { slope: 4.5, least: 25, most: 175 },
  },
  US: {
    mass: 'lb',
    length: 'in',
    loadConstant: 51,
    horizontal: { best: 10, most: 25 },
    vertical: { best: 30, slope: 0.0075, most: 70 },
    distance: { slope: 1.8, least: 10, most: 70 },
  },
};

/**
 * The recommended limit for one end of a lift, and what the load means against it.
 * @throws Refused `bad-mass` (load not above zero), `bad-distance` (negative), `bad-angle` (not 0° to 180°),
 * `bad-frequency` (negative or not finite), `coupling-not-good` (stated good with gloves or moving contents).
 */
export function assessLift(task: LiftTask, system: UnitSystem): LiftAssessment {
  const equation = EQUATIONS[system];
  if (task.load.value <= 0) refuse('bad-mass', lifting.noLoad(asGiven(task.load)));
  const coupling = couplingFor(task);
  const multipliers = multipliersOf(task, equation, coupling);
  const { horizontal, vertical, distance, asymmetry, frequency, coupling: grip } = multipliers;
  const limit = equation.loadConstant * horizontal * vertical * distance * asymmetry * frequency * grip;
  const index = limit > 0 ? valueIn(task.load, equation.mass) / limit : null;
  const recommendedLimit = mass(limit, equation.mass);
  return {
    system,
    multipliers,
    coupling,
    recommendedLimit,
    index,
    ...judge(task, recommendedLimit),
    reservations: reservations(task),
  };
}

/**
 * H where it cannot be measured, from the width W of the load away from the body: 20 cm + W/2, or 25 cm + W/2 with the
 * hands below 25 cm (8 in and 10 in, below 10 in). Mark a value from here as derived.
 * @throws Refused `bad-distance`.
 */
export function estimateHorizontal(width: Length, vertical: Length, system: UnitSystem): Length {
  const { length, horizontal } = EQUATIONS[system];
  const isLow = distance(vertical, length, 'vertical') < horizontal.best;
  const reach = isLow ? horizontal.best : horizontal.best * 0.8;
  return lengthOf(reach + distance(width, length, 'width') / 2, length);
}

function multipliersOf(task: LiftTask, equation: Equation, coupling: Coupling): Multipliers {
  const { length, horizontal, vertical } = equation;
  const h = distance(task.horizontal, length, 'horizontal');
  const v = distance(task.vertical, length, 'vertical');
  const vAtOrigin = distance(task.verticalAtOrigin ?? task.vertical, length, 'vertical at the origin');
  const d = distance(task.travel, length, 'travel');
  if (!(task.perMinute >= 0 && Number.isFinite(task.perMinute))) {
    refuse('bad-frequency', lifting.badRate(task.perMinute));
  }
  return {
    horizontal: h > horizontal.most ? 0 : horizontal.best / Math.max(h, horizontal.best),
    vertical: v > vertical.most ? 0 : 1 - vertical.slope * Math.abs(v - vertical.best),
    distance: distanceMultiplier(d, equation),
    asymmetry: asymmetryMultiplier(task.asymmetry),
    frequency: frequencyMultiplier(task.perMinute, task.duration, vAtOrigin < vertical.best),
    coupling: couplingMultiplier(coupling, v < vertical.best),
  };
}

const distanceMultiplier = (d: number, { distance: { slope, least, most } }: Equation): number =>
  d > most ? 0 : 0.82 + slope / Math.max(d, least);

function asymmetryMultiplier({ value }: Angle): number {
  if (value < 0 || value > 180) refuse('bad-angle', lifting.badAsymmetry(value));
  return value > 135 ? 0 : 1 - 0.0032 * value;
}

function distance(given: Length, unit: 'cm' | 'in', what: Parameters<typeof lifting.negativeDistance>[0]): number {
  if (given.value < 0) refuse('bad-distance', lifting.negativeDistance(what, asGiven(given)));
  return valueIn(given, unit);
}

/** Weights are compared as everywhere else: the dust of the multipliers is no risk, and one person may carry what is the limit. */
function judge({ load, outside = [] }: LiftTask, limit: Mass): Pick<LiftAssessment, 'risk' | 'sentence'> {
  const as = (risk: keyof typeof lifting.meaning) => ({ risk, sentence: lifting.meaning[risk] });
  if (limit.value <= 0) return as('not allowed');
  if (compare(load, scale(limit, 3)) > 0) return as('high');
  if (compare(load, limit) > 0) return as('increased');
  return as(outside.length === 0 ? 'acceptable' : 'not covered');
}

function reservations({ outside = [], gloves, sloshing, coupling }: LiftTask): string[] {
  return [
    lifting.onlyWarns,
    ...outside.map(lifting.notCovered),
    ...(coupling === 'fair' && (gloves || sloshing) ? [lifting.gripStatedFair] : []),
  ];
}
