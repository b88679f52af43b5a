/** A pass, as a line of the manual's schedule and as it is worked. */
import type { Angle, Limits, Torque } from '../units/index.ts';
import type { Order } from './order.ts';
import type { TorqueTarget } from './target.ts';
import type { TorqueWindow } from './verdict.ts';

/**
 * One line of a schedule.
 * - snug: by hand, no value.
 * - torque: an absolute target with its window.
 * - percent: of the final target, window in proportion; 100 is the final target itself.
 * - increments: from a first torque in equal steps to the final target, one pass each (20 → 90 step 10 = 8 passes).
 * - angle: turned on by an angle ± tolerance.
 * - circular check: at the final target round the pattern, again and again until no nut turns.
 * - re-check: the same after a time.
 * `order` replaces the order of the schedule for this line; `only` limits it to some fasteners.
 */
export type PassSpec = PassScope &
  (
    | { readonly kind: 'snug' }
    | { readonly kind: 'torque'; readonly target: Torque; readonly window: TorqueWindow }
    | { readonly kind: 'percent'; readonly percent: number }
    | { readonly kind: 'increments'; readonly from: Torque; readonly step: Torque }
    | { readonly kind: 'angle'; readonly angle: Angle; readonly tolerance: Angle }
    | { readonly kind: 'circular check' }
    | { readonly kind: 're-check'; readonly afterHours: number }
  );

interface PassScope {
  /** Spoken and shown; a plain name is made where it is absent. */
  readonly name?: string;
  readonly order?: Order;
  readonly only?: readonly number[];
}

export interface Planned {
  /** k of n, from 1. */
  readonly index: number;
  readonly of: number;
  readonly name: string;
  /** Fastener numbers in the order they are worked. */
  readonly order: readonly number[];
  /** The same in the groups it falls into: crosses of four, pairs, parts. */
  readonly groups: readonly (readonly number[])[];
  readonly orderKind: Order['kind'];
}

interface ByHand {
  readonly target: null;
  readonly window: null;
}

/** A pass as it is worked. Passes without a torque target take no reading. */
export type PlannedPass = Planned &
  (
    | (ByHand & { readonly kind: 'snug' })
    | (TorqueTarget & { readonly kind: 'torque' })
    /** Round the pattern again and again until no nut turns. */
    | (TorqueTarget & { readonly kind: 'circular check' })
    | (TorqueTarget & { readonly kind: 're-check'; readonly afterHours: number })
    | (ByHand & { readonly kind: 'angle'; readonly angle: Angle; readonly angleWindow: Limits<'angle'> })
    | (ByHand & { readonly kind: 'loosen' })
  );
