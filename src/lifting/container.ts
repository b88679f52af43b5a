/** Whether the container under the component holds what may run out of it. */
import { add, asGiven, compare, display, scale, subtract, volume, type Volume } from '../units/index.ts';
import { lifting } from '../words/lifting.ts';
import { refuse } from './refusal.ts';

export interface ContainerCheck {
  readonly isEnough: boolean;
  /** What may drain, with the margin. */
  readonly needed: Volume;
  /** Capacity less what is needed; negative when the container is too small. */
  readonly spare: Volume;
  readonly sentence: string;
}

/** Per cent on top of what may drain: nobody carries a pan filled to the brim (common practice, no standard). */
export const USUAL_MARGIN_PERCENT = 20;

/**
 * All that may drain together, plus a margin, against the capacity.
 * @throws Refused `bad-volume` (capacity not above zero, a negative volume), `bad-margin` (negative or not finite).
 */
export function checkContainer(
  capacity: Volume,
  mayDrain: readonly Volume[],
  marginPercent: number = USUAL_MARGIN_PERCENT,
): ContainerCheck {
  if (capacity.value <= 0) refuse('bad-volume', lifting.noCapacity(asGiven(capacity)));
  if (!(marginPercent >= 0 && Number.isFinite(marginPercent))) {
    refuse('bad-margin', lifting.badMargin(marginPercent));
  }
  for (const each of mayDrain) {
    if (each.value < 0) refuse('bad-volume', lifting.negativeVolume(asGiven(each)));
  }
  const drains = mayDrain.reduce((sum, each) => add(sum, each), volume(0, capacity.unit));
  const needed = scale(drains, (100 + marginPercent) / 100);
  const isEnough = compare(needed, capacity) <= 0;
  return {
    isEnough,
    needed,
    spare: subtract(capacity, needed),
    sentence: sentence(isEnough, { drains, needed, capacity, marginPercent }),
  };
}

interface Amounts {
  readonly drains: Volume;
  readonly needed: Volume;
  readonly capacity: Volume;
  readonly marginPercent: number;
}

function sentence(isEnough: boolean, { drains, needed, capacity, marginPercent }: Amounts): string {
  // Rounded on the safe side: what is needed up, what there is down.
  const say = isEnough ? lifting.containerHolds : lifting.containerTooSmall;
  return say(
    display(capacity, capacity.unit, 1, 'down'),
    display(needed, capacity.unit, 1, 'up'),
    display(drains, capacity.unit, 1, 'up'),
    marginPercent,
  );
}
