/** The mass in the hands: dry component plus the fluid it still holds. */
import {
  add,
  asGiven,
  compare,
  convert,
  type Density,
  mass,
  type Mass,
  rounded,
  scale,
  valueIn,
  type Volume,
  type Written,
} from '../units/index.ts';
import { lifting } from '../words/lifting.ts';
import { refuse } from './refusal.ts';

/** Fluid that stays in the component. A density given as a range counts with its upper end: heavier is the safe side. */
export interface RetainedFluid {
  readonly volume: Volume;
  readonly density: Density | { readonly low: Density; readonly high: Density };
}

export interface HandlingMass {
  readonly total: Mass;
  readonly fluid: Mass;
}

/**
 * m = m_dry + Σ V·ρ, in the unit of the dry mass.
 * @throws Refused `bad-mass` (dry mass not above zero), `bad-volume` (negative), `bad-density` (not above zero, or a
 * range the wrong way round).
 */
export function handlingMass(dry: Mass, retained: readonly RetainedFluid[]): HandlingMass {
  if (dry.value <= 0) refuse('bad-mass', lifting.noDryMass(asGiven(dry)));
  const fluid = retained.map(fluidMass).reduce((sum, part) => add(sum, part), mass(0, dry.unit));
  return { total: add(dry, fluid), fluid };
}

/** The mass of a volume of fluid, in kg. @throws Refused `bad-volume`, `bad-density`. */
export function fluidMass({ volume, density }: RetainedFluid): Mass {
  if (volume.value < 0) refuse('bad-volume', lifting.negativeVolume(asGiven(volume)));
  return scale(mass(valueIn(upper(density), 'kg/L'), 'kg'), valueIn(volume, 'L'));
}

function upper(density: RetainedFluid['density']): Density {
  const { low, high } = 'low' in density ? density : { low: density, high: density };
  if (low.value <= 0) refuse('bad-density', lifting.noDensity(asGiven(low)));
  if (compare(low, high) > 0) refuse('bad-density', lifting.densitiesCrossed);
  return high;
}

/** Masses of a lift as they are shown, said and recorded: to one place, rounded on the safe side, a load up and a limit down. */
export const shownLoad = (load: Mass, unit = load.unit): Written<'mass'> => rounded(load, unit, 1, 'up');
export const shownLimit = (limit: Mass, unit = limit.unit): Written<'mass'> => rounded(limit, unit, 1, 'down');

/** What two people can lift together of the sum of what each can alone, and three (common practice). */
const TEAM_SHARE = [1, 2 / 3, 1 / 2] as const;

/**
 * What a team of one to three can lift, from what each may lift alone, in the unit of the first (common practice, no
 * standard).
 * @throws Refused `bad-team` for nobody or for more than three, `bad-mass` for a capacity below zero.
 */
export function teamCapacity(alone: readonly Mass[]): Mass {
  const [first] = alone;
  const part = TEAM_SHARE[alone.length - 1];
  if (first === undefined || part === undefined) {
    return refuse('bad-team', lifting.badTeam(alone.length));
  }
  for (const each of alone) {
    if (each.value < 0) refuse('bad-mass', lifting.nobodyLifts(asGiven(each)));
  }
  const sum = alone.map((each) => convert(each, first.unit)).reduce((total, each) => add(total, each));
  return scale(sum, part);
}
