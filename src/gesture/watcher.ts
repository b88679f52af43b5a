/**
 * Watches small grey frames for what a head, an elbow or a sleeve says while both hands are busy and it is too loud to
 * speak. Pure: time comes with each frame, and what is kept is a few seconds of motion, however long the watch.
 */
import { CoverWatch } from './cover.ts';
import { checkRegion, frameTrouble, HEIGHT, LEAST_STEP_MS, WHOLE, WIDTH, type Frame, type Region } from './frame.ts';
import type { Gesture, Trouble } from './gesture.ts';
import { headGesture } from './head.ts';
import { History } from './history.ts';
import { MotionWatch, stillMotion, type Motion } from './motion.ts';
import { PictureRate } from './picture-rate.ts';
import { pictureOf, type Picture } from './picture.ts';
import { windowsIn } from './windows.ts';
import { WaveWatch } from './wave.ts';

export interface WatcherOptions {
  /** Where gestures are made; the whole picture unless told. As the picture stands after it was turned. */
  readonly region?: Region;
  /** The camera hangs head down. */
  readonly upsideDown?: boolean;
  /** The picture comes as in a mirror. Cameras give it as others see the mechanic, unless told. */
  readonly mirrored?: boolean;
}

export type Seen =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'gesture'; readonly gesture: Gesture }
  /** The frame was not looked at; why, and the mend. */
  | { readonly kind: 'refused'; readonly why: string };

export interface Watcher {
  /**
   * Looks at the next frame.
   * @param frame 160 × 120 grey values; they are copied as far as they are kept
   * @param time milliseconds, later than that of the frame before
   */
  see(frame: Frame, time: number): Seen;
  /** What keeps gestures from being seen now; null while the view is free. */
  readonly trouble: Trouble | null;
}

/** After a longer gap, what was before is forgotten. */
const LONGEST_STEP_MS = 450;
/** The scene is learned for so long before anything counts. */
const LEARN_MS = 900;
/** After a gesture, or a lens that was opened: hands and heads go back to where they were. */
const REST_MS = 400;
/** A wave is only told once it is out of the view. */
const WAVE_REST_MS = 700;
/** Behind a wave the scene is seen again; behind the edge of a sleeve that covers the lens it is not. */
const MOST_LOST = 0.55;
/** The same picture, to the last pixel, for so long. */
const FROZEN_MS = 1500;
/** A camera that repeats each picture gives the next one by then. */
const REPEAT_MS = 120;

const STILL = stillMotion();
const NOTHING: Seen = { kind: 'nothing' };

/** @throws RangeError when the region does not lie in the picture */
export function createWatcher(options: WatcherOptions = {}): Watcher {
  return new FrameWatcher(options);
}

class FrameWatcher implements Watcher {
  readonly #upsideDown: boolean;
  readonly #watched: Uint8Array;
  readonly #motion = new MotionWatch();
  readonly #history = new History();
  readonly #wave: WaveWatch;
  readonly #cover: CoverWatch;
  /** The frame before, as it came, to know a frozen picture by. */
  readonly #last = new Uint8Array(WIDTH * HEIGHT);
  readonly #rate = new PictureRate();
  #changedAt: number | null = null;
  #lastTime: number | null = null;
  #picture: { readonly at: number; readonly picture: Picture } | null = null;
  #learnedAt: number | null = null;
  #notBefore = -Infinity;

  constructor({ region = WHOLE, upsideDown = false, mirrored = false }: WatcherOptions) {
    checkRegion(region);
    this.#upsideDown = upsideDown;
    this.#watched = windowsIn(region);
    this.#wave = new WaveWatch({ region, mirrored });
    this.#cover = new CoverWatch(region);
  }

  get trouble(): Trouble | null {
    if (this.#cover.trouble) return this.#cover.trouble;
    if (this.#lastTime !== null && this.#changedAt !== null && this.#lastTime - this.#changedAt >= FROZEN_MS)
      return 'frozen';
    return this.#rate.isSlow ? 'slow' : null;
  }

  see(frame: Frame, time: number): Seen {
    const why = frameTrouble(frame, time, this.#lastTime);
    if (why !== null) return { kind: 'refused', why };
    const wasFrozen = this.trouble === 'frozen';
    this.#lastTime = time;
    const isRepeat = this.#isRepeat(frame);
    // A picture that is given twice is one picture; one that stood still says nothing of how many come.
    if (wasFrozen && !isRepeat) this.#rate.clear();
    if (!isRepeat) this.#rate.add(time);
    if (!isRepeat || this.#changedAt === null) this.#changedAt = time;
    const before = this.#picture;
    if (before && time - before.at < (isRepeat ? REPEAT_MS : LEAST_STEP_MS)) return NOTHING;
    const picture = pictureOf(frame, this.#upsideDown);
    this.#picture = { at: time, picture };
    if (!before || time - before.at > LONGEST_STEP_MS) this.#forget(time);
    const gesture = this.#step(before, picture, time);
    // What asks to wait is heard whatever the camera; what answers for somebody is not guessed from a few pictures.
    if (!gesture || (this.#rate.isSlow && gesture.kind !== 'cover')) return NOTHING;
    return { kind: 'gesture', gesture };
  }

  #step(
    last: { readonly at: number; readonly picture: Picture } | null,
    picture: Picture,
    time: number,
  ): Gesture | null {
    const before = last && time - last.at <= LONGEST_STEP_MS ? last : null;
    const from = before?.at ?? time;
    const cover = this.#cover.see(picture, from, time);
    if (this.#cover.isShut) {
      this.#forget(time);
      return cover;
    }
    let motion: Motion = STILL;
    if (before) {
      const isSame = picture.cells.every((cell, i) => cell === before.picture.cells[i]);
      if (!isSame) motion = this.#motion.see(before.picture, picture, time - from);
      this.#history.add({ from, to: time, motion });
    }
    const wave = this.#wave.see(picture, time, this.#notBefore);
    if (this.#learnedAt === null || time < this.#learnedAt) return null;
    if (wave && this.#cover.lost <= MOST_LOST) {
      this.#notBefore = time + WAVE_REST_MS;
      return wave;
    }
    const head = headGesture(this.#history.steps, { watched: this.#watched, notBefore: this.#notBefore });
    if (head) this.#notBefore = time + REST_MS;
    return head;
  }

  /** What was before has nothing to do with what comes: the lens was shut, or frames are missing. */
  #forget(time: number): void {
    this.#history.clear();
    this.#wave.clear(this.#learnedAt === null ? -Infinity : time);
    this.#learnedAt ??= time + LEARN_MS;
    this.#notBefore = Math.max(this.#notBefore, time + REST_MS);
  }

  #isRepeat({ luma }: Frame): boolean {
    const last = this.#last;
    let i = 0;
    while (i < last.length && last[i] === luma[i]) i++;
    last.set(luma);
    return i === last.length;
  }
}
