/** How each person works switches, touch, camera and microphone on this device, checked by the room that knows what they mean. */
import * as v from 'valibot';
import { readBindings, type Bindings } from '../gesture/bindings.ts';
import { readCameraHabit, type CameraHabit } from '../gesture/camera-habit.ts';
import { readThresholds, TOUCH_THRESHOLDS, type TouchThresholds } from '../gesture/touch-thresholds.ts';
import { openHabitBook } from '../storage/habits.ts';

export const switchBook = openHabitBook<Bindings>('switches', (raw) => {
  const read = readBindings(raw);
  return read.kind === 'valid' ? read.bindings : null;
});

/** How one person touches the screen. */
export interface TouchHabit {
  /** The whole screen is two halves: left goes back, right goes on. */
  readonly halves: boolean;
  readonly thresholds: TouchThresholds;
}

export const TOUCH_AT_FIRST: TouchHabit = { halves: false, thresholds: TOUCH_THRESHOLDS };

const Touch = v.strictObject({ halves: v.boolean(), thresholds: v.unknown() });

export const touchBook = openHabitBook<TouchHabit>('touch', (raw) => {
  if (!v.is(Touch, raw)) return null;
  const read = readThresholds(raw.thresholds);
  return read.kind === 'valid' ? { halves: raw.halves, thresholds: read.thresholds } : null;
});

export const cameraBook = openHabitBook<CameraHabit>('watched', (raw) => {
  const read = readCameraHabit(raw);
  return read.kind === 'valid' ? read.habit : null;
});

/** Whether a person works with a muted microphone. */
export const muteBook = openHabitBook<boolean>('muted', (raw) => (typeof raw === 'boolean' ? raw : null));
