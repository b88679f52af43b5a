/**
 * From the torque the manual asks for to the value the wrench must show. The nut's own run-down torque is added first,
 * then the sum is corrected for an adapter (AC 43.13-1B, 7-40 d and h).
 */
import { add, type Angle, asGiven, compare, type Length, limits, scale, type Torque, valueIn } from '../units/index.ts';
import { wrench } from '../words/wrench.ts';
import { refuse } from './refusal.ts';
import { type TorqueTarget, torqueTarget, written } from './target.ts';
import type { TorqueWindow } from './verdict.ts';

/** An adapter between wrench and fastener. An extension along the drive axis is none: it needs no correction. */
export interface Adapter {
  /** Centre of the drive to the point of the grip where the hand pulls. */
  readonly lever: Length;
  /** Centre of the drive to the centre of the fastener. */
  readonly length: Length;
  /** Between adapter and wrench: 0° straight ahead, 90° square, 180° pointing back along the handle. */
  readonly angle: Angle;
}

/**
 * Wrench setting over fastener torque: L / (L + E·cos θ). Exactly 1 at 90°.
 * @throws Refused `bad-lever` (L ≤ 0), `bad-adapter` (E < 0, or θ outside 0° to 180°), `adapter-past-the-drive`
 * (L + E·cos θ ≤ 0: the fastener would lie behind the hand).
 */
export function settingRatio({ lever, length, angle }: Adapter): number {
  if (lever.value <= 0) refuse('bad-lever', wrench.noLever(asGiven(lever)));
  if (length.value < 0) refuse('bad-adapter', wrench.badAdapterLength(asGiven(length)));
  if (angle.value < 0 || angle.value > 180) {
    refuse('bad-adapter', wrench.badAdapterAngle(angle.value));
  }
  const effective = lever.value + valueIn(length, lever.unit) * cosine(angle.value);
  if (effective <= 0) refuse('adapter-past-the-drive', wrench.adapterPastTheDrive);
  return lever.value / effective;
}

/** What the wrench must show for a torque at the fastener. @throws Refused as `settingRatio` does. */
export const settingFor = (torqueAtFastener: Torque, adapter: Adapter): Torque =>
  scale(torqueAtFastener, settingRatio(adapter));

/** The torque at the fastener when the wrench shows a setting. @throws Refused as `settingRatio` does. */
export const torqueAtFastener = (setting: Torque, adapter: Adapter): Torque =>
  scale(setting, 1 / settingRatio(adapter));

export interface CorrectionInput {
  /** The manual's target and window. */
  readonly target: Torque;
  readonly window: TorqueWindow;
  /**
   * The torque that turns this nut before it seats, at the fastener. One measured with the adapter on the wrench is a
   * wrench value: turn it into one at the fastener with `torqueAtFastener` first.
   */
  readonly runDown?: Torque;
  /** The least run-down torque a used self-locking nut may have; below it the nut is refused, not just recorded. */
  readonly minimumRunDown?: Torque;
  readonly adapter?: Adapter;
}

export interface Correction {
  /** With the run-down torque: what reaches the fastener. */
  readonly atFastener: TorqueTarget;
  /** Setting and acceptance window on the wrench. Judge readings and check the tool's range against these. */
  readonly atWrench: TorqueTarget;
}

/**
 * Setting and window at the wrench; both are shifted by the run-down torque and corrected for the adapter alike.
 * @throws Refused `bad-target`, `bad-run-down`, `nut-worn`, and as `settingRatio` does.
 */
export function correct({ target, window, runDown, minimumRunDown, adapter }: CorrectionInput): Correction {
  if (minimumRunDown !== undefined) refuseWornNut(runDown, minimumRunDown);
  const wanted = torqueTarget(target, window);
  const atFastener = runDown === undefined ? wanted : shifted(wanted, notNegative(runDown));
  return { atFastener, atWrench: adapter === undefined ? atFastener : scaled(atFastener, settingRatio(adapter)) };
}

/**
 * A used self-locking nut has lost its grip when it turns with less than the minimum.
 * @throws Refused `nut-worn`; `bad-run-down` when nothing was measured.
 */
export function refuseWornNut(runDown: Torque | undefined, minimum: Torque): void {
  if (runDown === undefined) {
    return refuse('bad-run-down', wrench.runDownNotMeasured);
  }
  if (compare(notNegative(runDown), minimum) < 0) {
    refuse('nut-worn', wrench.wornNut(written(runDown), written(minimum)));
  }
}

function notNegative(runDown: Torque): Torque {
  if (runDown.value < 0) refuse('bad-run-down', wrench.negativeRunDown(written(runDown)));
  return runDown;
}

const shifted = ({ target, window }: TorqueTarget, by: Torque): TorqueTarget => ({
  target: add(target, by),
  window: limits(add(window.min, by), add(window.max, by)),
});

const scaled = ({ target, window }: TorqueTarget, by: number): TorqueTarget => ({
  target: scale(target, by),
  window: limits(scale(window.min, by), scale(window.max, by)),
});

/** Exact where the trade needs it exact: a square adapter changes nothing. */
function cosine(degrees: number): number {
  switch (degrees) {
    case 60:
      return 0.5;
    case 90:
      return 0;
    case 120:
      return -0.5;
    default:
      return Math.cos((degrees * Math.PI) / 180);
  }
}
