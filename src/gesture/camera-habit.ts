/** How one person is watched: how much surer each gesture must be, and which part of the picture is looked at. */
import * as v from 'valibot';
import { habits } from '../words/habits.ts';
import { checkRegion, WHOLE, type Region } from './frame.ts';
import type { Strictness } from './gate.ts';

const surer = (): string => habits.howMuchSurer;
const Surer = v.exactOptional(v.pipe(v.number(surer), v.minValue(0, surer), v.maxValue(0.5, surer)));

const CameraHabit = v.strictObject({
  /** Only ever stricter than what is asked of anybody. */
  strictness: v.strictObject({ nod: Surer, shake: Surer, 'wave right': Surer, 'wave left': Surer, cover: Surer }),
  region: v.pipe(
    v.strictObject({ left: v.number(), top: v.number(), width: v.number(), height: v.number() }),
    v.check(isRegion, () => habits.regionInPicture),
  ),
});

export interface CameraHabit {
  readonly strictness: Strictness;
  readonly region: Region;
}

export const CAMERA_AT_FIRST: CameraHabit = { strictness: {}, region: WHOLE };

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
