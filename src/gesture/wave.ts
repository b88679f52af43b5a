/**
 * A wave: something large passes across the view, from one side to the other, and what it hid is seen again behind it.
 * What counts is where the picture is not as it was a second or two ago, column by column: a band that goes along one
 * line through time, across the whole width and out of it, within a second. Who walks by is slower; who reaches for
 * something stays, or goes back; a lens that is covered does not open again behind the edge. Pure.
 */
import { changedCells, movedCells } from './change.ts';
import type { Region } from './frame.ts';
import type { Gesture } from './gesture.ts';
import { cameraBetween } from './camera-motion.ts';
import { passageSureness } from './passage-sureness.ts';
import { passageOf, type Passage, type Profile } from './passage.ts';
import { CELL_COLUMNS, CELL_ROWS, type Picture } from './picture.ts';

/** Profiles are kept so long: the longest wave with what was before it. */
export const KEPT_MS = 1700;
/** The picture is held against what it was so long ago: longer than anything that waves stays in one place. */
const AGES_MS = [1000, 1700];
/** How often a picture is kept to hold later ones against. */
const KEEP_EVERY_MS = 230;
const MOST_KEPT = 10;
const LEAVING_MS = 600;
/** Less, and it is left: a wave that was missed is made again. As much as the gate asks of a move: stricter than that begins there. */
export const LEAST_SURENESS = 0.76;

interface Kept {
  readonly time: number;
  readonly picture: Picture;
}

export interface Watched {
  readonly region: Region;
  /** Whether the picture is as in a mirror: the mechanic's right is then its right. */
  readonly mirrored: boolean;
}

export class WaveWatch {
  #profiles: Profile[] = [];
  #kept: Kept[] = [];
  #keepFrom = -Infinity;
  readonly #mirrored: boolean;
  readonly #columns: { readonly from: number; readonly to: number };
  readonly #rows: { readonly from: number; readonly to: number };

  constructor({ region, mirrored }: Watched) {
    this.#mirrored = mirrored;
    this.#columns = {
      from: Math.round(region.left * CELL_COLUMNS),
      to: Math.round((region.left + region.width) * CELL_COLUMNS),
    };
    this.#rows = { from: Math.round(region.top * CELL_ROWS), to: Math.round((region.top + region.height) * CELL_ROWS) };
  }

  /** Of the last pictures, oldest first. */
  get profiles(): readonly Profile[] {
    return this.#profiles;
  }

  /** Forgets all; what comes right afterwards is still the sleeve that leaves the lens. */
  clear(time: number): void {
    this.#profiles = [];
    this.#kept = [];
    this.#keepFrom = time + LEAVING_MS;
  }

  /** @returns the wave that has just passed, or null */
  see(picture: Picture, time: number, notBefore: number): Gesture | null {
    this.#profiles.push({ time, parts: this.#profile(picture, time) });
    while ((this.#profiles[0]?.time ?? time) < time - KEPT_MS) this.#profiles.shift();
    if (time >= this.#keepFrom && time - (this.#kept.at(-1)?.time ?? -Infinity) >= KEEP_EVERY_MS) {
      this.#kept.push({ time, picture });
      if (this.#kept.length > MOST_KEPT) this.#kept.shift();
    }
    const passage = passageOf(this.#profiles, notBefore);
    return passage && this.#gestureOf(passage);
  }

  /** Of each watched column, the part of its height that is not as it was; nothing while too little is known. */
  #profile({ cells, halfDetail }: Picture, time: number): Float32Array {
    const parts = new Float32Array(this.#columns.to - this.#columns.from);
    const olds = AGES_MS.flatMap((age) => {
      const old = this.#kept.findLast((kept) => time - kept.time >= age);
      return old ? [old] : [];
    });
    const masks = [...new Set(olds)].map(({ picture: old }) => {
      const { right, down } = cameraBetween(old.halfDetail, halfDetail);
      return changedCells(right === 0 && down === 0 ? old.cells : movedCells(old.cells, right, down), cells);
    });
    if (masks.length === 0) return parts;
    const height = this.#rows.to - this.#rows.from;
    for (let x = 0; x < parts.length; x++) {
      let count = 0;
      for (let y = this.#rows.from; y < this.#rows.to; y++) {
        const cell = y * CELL_COLUMNS + this.#columns.from + x;
        if (masks.every((mask) => mask[cell] === 1)) count += 1;
      }
      parts[x] = count / height;
    }
    return parts;
  }

  #gestureOf(passage: Passage): Gesture | null {
    const sureness = passageSureness(passage);
    if (sureness < LEAST_SURENESS) return null;
    const goesRight = passage.crossing > 0 === this.#mirrored;
    const percent = (part: number): string => `${Math.round(100 * part)} %`;
    return {
      kind: goesRight ? 'wave right' : 'wave left',
      confidence: sureness,
      from: passage.from,
      to: passage.to,
      why:
        `something ${percent(passage.height)} of the view high crossed it at ${(Math.abs(passage.crossing) / 1000).toFixed(2)} s ` +
        `for the width, and ${percent(1 - passage.behind)} of what lay behind it is as before`,
    };
  }
}
