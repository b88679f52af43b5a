/** How well the hands hold the load: coupling of the NIOSH lifting equation (tables 6 and 7 of 94-110, rev. 9/2021). */
import { lifting } from '../words/lifting.ts';
import { refuse } from './refusal.ts';

export type Coupling = 'good' | 'fair' | 'poor';

/** Hands below 75 cm (30 in), and from there up. */
const MULTIPLIERS: Readonly<Record<Coupling, { readonly low: number; readonly high: number }>> = {
  good: { low: 1, high: 1 },
  fair: { low: 0.95, high: 1 },
  poor: { low: 0.9, high: 0.9 },
};

export const couplingMultiplier = (coupling: Coupling, isLow: boolean): number =>
  MULTIPLIERS[coupling][isLow ? 'low' : 'high'];

/**
 * The coupling to reckon with: the stated one, else poor. With gloves or unstable contents it is poor by table 6, note 5;
 * 'fair' then needs somebody to state it, and 'good' is never so.
 * @throws Refused `coupling-not-good`.
 */
export function couplingFor(grip: {
  readonly coupling?: Coupling;
  readonly gloves: boolean;
  readonly sloshing: boolean;
}): Coupling {
  if (grip.coupling === 'good' && (grip.gloves || grip.sloshing)) {
    refuse('coupling-not-good', lifting.gripNeverGood);
  }
  return grip.coupling ?? 'poor';
}
