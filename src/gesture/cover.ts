/**
 * A hand or sleeve held over the lens: the scene, learned while nothing covers it, is gone, and hardly any detail has
 * come in its place. Lights that go out all at once leave black too, but nothing was seen to come in front first. Pure.
 */
import { CELLS } from './change.ts';
import type { Region } from './frame.ts';
import { margin, type Gesture, type Trouble } from './gesture.ts';
import { CELL_COLUMNS, CELL_ROWS, type Picture } from './picture.ts';

/** A cell with less than this on the log scale stands out from nothing. */
const FLAT = 4;
/** While the lens is shut: part of the cells that are flat, and part of the detail of the scene that is gone. */
const FLAT_PART = 0.78;
const LOST_PART = 0.72;
/** A first picture with so little in it is taken for a covered lens. */
const BARE_PART = 0.985;
/** So much of it is gone while something comes in front. */
const COMING_PART = 0.2;
/** A cell shows the scene still where so much of its detail is there. */
const STILL_THERE = 0.35;
/** A scene with fewer cells of detail than this cannot be told from a covered lens. */
const LEAST_CELLS = 10;
/** What a cell of the scene, learned over seconds, must stand out by. */
const STANDS_OUT = 3;
/** Mean grey value: a black picture is 0, or 16 where the video leaves headroom. */
const BLACK = 20;
const HELD_MS = 700;
const ARRIVAL_MS = 1000;
const LEARN_MS = 4000;

export class CoverWatch {
  readonly #inside: readonly number[];
  /** The detail of each cell while the lens is open. */
  #scene: Float32Array | null = null;
  #shutSince: number | null = null;
  #arrivedAt: number | null = null;
  #isTold = false;
  #lost = 0;
  #trouble: Trouble | null = null;

  constructor({ left, top, width, height }: Region) {
    this.#inside = Array.from({ length: CELLS }, (_, cell) => cell).filter((cell) => {
      const x = ((cell % CELL_COLUMNS) + 0.5) / CELL_COLUMNS;
      const y = (Math.floor(cell / CELL_COLUMNS) + 0.5) / CELL_ROWS;
      return x > left && x < left + width && y > top && y < top + height;
    });
  }

  get trouble(): Trouble | null {
    return this.#trouble;
  }

  /** The part of the scene's detail that could not be seen in the last picture, 0 to 1; 0 while the scene is not known. */
  get lost(): number {
    return this.#lost;
  }

  get isShut(): boolean {
    return this.#shutSince !== null;
  }

  see({ cellDetail, mean }: Picture, from: number, to: number): Gesture | null {
    const flat = this.#inside.filter((cell) => Math.abs(cellDetail[cell] ?? 0) < FLAT).length / this.#inside.length;
    const lost = this.#lostIn(cellDetail);
    this.#lost = lost ?? 0;
    const isBlack = mean <= BLACK && flat >= FLAT_PART;
    const isNeverOpen = this.#scene === null && flat >= BARE_PART;
    const isShut = isBlack || isNeverOpen || (flat >= FLAT_PART && lost !== null && lost >= LOST_PART);
    if (!isShut) {
      if (lost !== null && lost >= COMING_PART) this.#arrivedAt = to;
      this.#learn(cellDetail, Math.min(1, (to - from) / LEARN_MS));
      this.#shutSince = null;
      this.#trouble = null;
      this.#isTold = false;
      return null;
    }
    this.#shutSince ??= to;
    const held = to - this.#shutSince;
    if (held < HELD_MS) return null;
    this.#trouble = isBlack ? 'black' : 'covered';
    const isSeenToCome = this.#arrivedAt !== null && this.#shutSince - this.#arrivedAt <= ARRIVAL_MS;
    if (this.#isTold || lost === null || (isBlack && !isSeenToCome)) return null;
    this.#isTold = true;
    return {
      kind: 'cover',
      confidence: (0.5 + 0.5 * margin(flat, FLAT_PART, 0.95)) * (0.5 + 0.5 * margin(lost, LOST_PART, 0.92)),
      from: this.#shutSince,
      to,
      why: `${Math.round(100 * lost)} % of the scene's detail was gone for ${(held / 1000).toFixed(1)} s, and ${Math.round(100 * flat)} % of the view was flat`,
    };
  }

  /** The part of the scene's detail that is not there now; null while the scene is not known, or has none. */
  #lostIn(detail: Float32Array): number | null {
    const scene = this.#scene;
    if (!scene) return null;
    let [known, lost] = [0, 0];
    for (const cell of this.#inside) {
      const at = scene[cell] ?? 0;
      if (Math.abs(at) < STANDS_OUT) continue;
      known += 1;
      if ((detail[cell] ?? 0) / at < STILL_THERE) lost += 1;
    }
    return known < LEAST_CELLS ? null : lost / known;
  }

  #learn(detail: Float32Array, part: number): void {
    const scene = this.#scene;
    if (!scene) this.#scene = detail.slice();
    else
      for (let cell = 0; cell < CELLS; cell++)
        scene[cell] = (scene[cell] ?? 0) + part * ((detail[cell] ?? 0) - (scene[cell] ?? 0));
  }
}
