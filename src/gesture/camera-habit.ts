/** How one person is watched: how much surer each gesture must be, which part of the picture is looked at, and which way up it comes. */
import * as v from 'valibot';
import { habits } from '../words/habits.ts';
import { checkRegion, WHOLE, type Region } from './frame.ts';
import type { Strictness } from './gate.ts';
import type { WatcherOptions } from './watcher.ts';

const surer = (): string => habits.howMuchSurer;
const Surer = v.exactOptional(v.pipe(v.number(surer), v.minValue(0, surer), v.maxValue(0.5, surer)));

const CameraHabit = v.strictObject({
  /** Only ever stricter than what is asked of anybody. */
  strictness: v.strictObject({ nod: Surer, shake: Surer, 'wave right': Surer, 'wave left': Surer, cover: Surer }),
  /** The camera hangs head down, or gives its picture as a mirror does; absent in what was kept before it could be told. */
  upsideDown: v.exactOptional(v.boolean()),
  mirrored: v.exactOptional(v.boolean()),
  checkedOn: v.exactOptional(v.string()),
  region: v.pipe(
    v.strictObject({ left: v.number(), top: v.number(), width: v.number(), height: v.number() }),
    v.check(isRegion, () => habits.regionInPicture),
  ),
});

export interface CameraHabit {
  readonly strictness: Strictness;
  /** As the picture stands after it was turned. */
  readonly region: Region;
  /** The camera hangs head down. */
  readonly upsideDown?: boolean;
  /** The picture comes as in a mirror. */
  readonly mirrored?: boolean;
  /** The camera (`Camera.device`) before which somebody saw that left and right are right, as its picture is turned now. */
  readonly checkedOn?: string;
}

export const CAMERA_AT_FIRST: CameraHabit = { strictness: {}, region: WHOLE };

/** What of a habit the watcher needs to know. */
export const watchedAs = ({ region, upsideDown = false, mirrored = false }: CameraHabit): WatcherOptions => ({
  region,
  upsideDown,
  mirrored,
});

/**
 * The habit with the picture turned over, and left and right to be checked. A camera clamped head down is likelier than one
 * that gives a mirror's picture, and more depends on it: left head down, half of the nods are missed. A mirror is told by hand.
 */
export const changedOver = (habit: CameraHabit): CameraHabit => ({
  ...unchecked(habit),
  upsideDown: !habit.upsideDown,
});

/** The habit where left and right are to be checked before a wave counts. */
export const unchecked = ({ checkedOn: _, ...habit }: CameraHabit): CameraHabit => habit;

/** Reads a habit from anywhere outside. It never throws. */
export function readCameraHabit(
  raw: unknown,
):
  | { readonly kind: 'valid'; readonly habit: CameraHabit }
  | { readonly kind: 'faulty'; readonly faults: readonly { readonly message: string }[] } {
  const parsed = v.safeParse(CameraHabit, raw);
  return parsed.success
    ? { kind: 'valid', habit: parsed.output }
    : { kind: 'faulty', faults: parsed.issues.map(({ message }) => ({ message })) };
}

function isRegion(region: Region): boolean {
  try {
    return checkRegion(region) === region;
  } catch {
    return false;
  }
}
