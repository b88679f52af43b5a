/** Grey pictures made by code: a canvas of real numbers, textures of seeded noise, and soft-edged shapes. */
import type { Random } from '../noise.ts';

export interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

export const canvas = (width: number, height: number, value = 0): Canvas => ({
  width,
  height,
  values: new Float32Array(width * height).fill(value),
});

export const between = (random: Random, low: number, high: number): number => low + (high - low) * random();
export const pick = <T>(random: Random, choices: readonly [T, ...T[]]): T =>
  choices[Math.floor(random() * choices.length)] ?? choices[0];

/** Value noise of several octaves, mean 0, about −1 to 1. */
export function texture(width: number, height: number, coarsest: number, random: Random): Canvas {
  const made = canvas(width, height);
  for (let size = coarsest, weight = 0.6; size >= 2; size /= 2, weight *= 0.65) {
    const columns = Math.ceil(width / size) + 2;
    const rows = Math.ceil(height / size) + 2;
    const knots = Float32Array.from({ length: columns * rows }, () => 2 * random() - 1);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const [u, v] = [x / size, y / size];
        const [i, j] = [Math.floor(u), Math.floor(v)];
        const [fx, fy] = [ease(u - i), ease(v - j)];
        const at = j * columns + i;
        const top = (knots[at] ?? 0) * (1 - fx) + (knots[at + 1] ?? 0) * fx;
        const bottom = (knots[at + columns] ?? 0) * (1 - fx) + (knots[at + columns + 1] ?? 0) * fx;
        const to = y * width + x;
        made.values[to] = (made.values[to] ?? 0) + weight * (top * (1 - fy) + bottom * fy);
      }
    }
  }
  return made;
}

/** 0 to 1 with level ends. */
export const ease = (part: number): number => {
  const t = Math.min(1, Math.max(0, part));
  return t * t * (3 - 2 * t);
};

/** Between the pixels; outside, the edge goes on. */
export function sample({ width, height, values }: Canvas, x: number, y: number): number {
  const cx = Math.min(width - 1.001, Math.max(0, x));
  const cy = Math.min(height - 1.001, Math.max(0, y));
  const [i, j] = [Math.floor(cx), Math.floor(cy)];
  const [fx, fy] = [cx - i, cy - j];
  const at = j * width + i;
  const top = (values[at] ?? 0) * (1 - fx) + (values[at + 1] ?? 0) * fx;
  const bottom = (values[at + width] ?? 0) * (1 - fx) + (values[at + width + 1] ?? 0) * fx;
  return top * (1 - fy) + bottom * fy;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * Paints inside a box.
 * @param cover how much of a pixel is covered, 0 to 1
 * @param shade the grey value there
 */
export function paint(
  on: Canvas,
  box: Box,
  cover: (x: number, y: number) => number,
  shade: (x: number, y: number) => number,
): void {
  const [left, right] = [Math.max(0, Math.floor(box.left)), Math.min(on.width - 1, Math.ceil(box.right))];
  const [top, bottom] = [Math.max(0, Math.floor(box.top)), Math.min(on.height - 1, Math.ceil(box.bottom))];
  for (let y = top; y <= bottom; y++) {
    for (let x = left; x <= right; x++) {
      const part = cover(x, y);
      if (part <= 0) continue;
      const at = y * on.width + x;
      on.values[at] = (on.values[at] ?? 0) * (1 - part) + shade(x, y) * part;
    }
  }
}

/** How much of a pixel lies inside, by its distance to the edge (negative inside), in pixels. */
export const inside = (distance: number, softness = 1): number => Math.min(1, Math.max(0, 0.5 - distance / softness));

/** Distance to a thick line with round ends. */
export function toLine(x: number, y: number, from: Point, to: Point, radius: number): number {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const along = Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - from.x - along * dx, y - from.y - along * dy) - radius;
}

/** Distance to an ellipse, near enough for a soft edge. */
export const toEllipse = (x: number, y: number, centre: Point, rx: number, ry: number): number =>
  (Math.hypot((x - centre.x) / rx, (y - centre.y) / ry) - 1) * Math.min(rx, ry);

export interface Point {
  readonly x: number;
  readonly y: number;
}
