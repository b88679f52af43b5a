/** What else comes into the picture: gloves and sleeves, people who walk by, wrenches that swing. */
import { HEIGHT, WIDTH } from '../../../src/gesture/frame.ts';
import type { Random } from '../noise.ts';
import {
  between,
  canvas,
  inside,
  paint,
  sample,
  texture,
  toEllipse,
  toLine,
  type Canvas,
  type Point,
} from './canvas.ts';

/** A hand in a glove with the sleeve behind it: any shade, plain or patterned. */
export interface Glove {
  readonly width: number;
  readonly height: number;
  /** @param blur pixels that it moves while the shutter is open */
  readonly draw: (on: Canvas, centre: Point, elbow: Point, blur: number) => void;
}

export function glove(width: number, height: number, random: Random): Glove {
  const shade = between(random, 12, 243);
  const contrast = between(random, 0, 30);
  const sleeve = between(random, 12, 220);
  const pattern = texture(160, 160, 16, random);
  const draw = (on: Canvas, centre: Point, elbow: Point, blur: number): void => {
    const softness = 1.5 + Math.abs(blur);
    const arm = width * 0.3;
    const reach = Math.max(width, height) + softness;
    paint(
      on,
      {
        left: Math.min(centre.x, elbow.x) - reach,
        right: Math.max(centre.x, elbow.x) + reach,
        top: Math.min(centre.y, elbow.y) - reach,
        bottom: Math.max(centre.y, elbow.y) + reach,
      },
      (x, y) => inside(toLine(x, y, centre, elbow, arm), softness),
      (x, y) => sleeve + contrast * 0.7 * sample(pattern, x - elbow.x + 80, y - elbow.y + 80),
    );
    paint(
      on,
      {
        left: centre.x - width / 2 - softness,
        right: centre.x + width / 2 + softness,
        top: centre.y - height / 2 - softness,
        bottom: centre.y + height / 2 + softness,
      },
      (x, y) => {
        // Four fingers at the upper end.
        const finger = y < centre.y - height * 0.15 ? Math.cos((8 * Math.PI * (x - centre.x)) / width) : 1;
        return inside(toEllipse(x, y, centre, width / 2, height / 2), softness) * (finger < -0.8 ? 0.5 : 1);
      },
      (x, y) => shade + contrast * sample(pattern, x - centre.x + 80, y - centre.y + 80),
    );
  };
  return { width, height, draw };
}

/** Someone behind, by the middle of the body; legs and arms swing with the way that was gone. */
export interface Walker {
  readonly width: number;
  readonly draw: (on: Canvas, x: number, step: number) => void;
}

/** @param height pixels; from a person far off to one who comes near */
export function walker(random: Random, height = between(random, 55, 150)): Walker {
  const top = between(random, 2, Math.max(6, HEIGHT - height));
  const head = height * 0.075;
  const [coat, legs, face] = [between(random, 15, 220), between(random, 15, 160), between(random, 40, 200)];
  const pattern = texture(120, 160, 16, random);
  const contrast = between(random, 5, 30);
  const limb = (on: Canvas, from: Point, to: Point, radius: number, shade: number): void =>
    paint(
      on,
      {
        left: Math.min(from.x, to.x) - radius - 1,
        right: Math.max(from.x, to.x) + radius + 1,
        top: Math.min(from.y, to.y) - radius - 1,
        bottom: Math.max(from.y, to.y) + radius + 1,
      },
      (x, y) => inside(toLine(x, y, from, to, radius)),
      () => shade,
    );
  const draw = (on: Canvas, x: number, step: number): void => {
    const y = top + Math.abs(Math.sin(step)) * height * 0.015;
    const [hip, foot] = [y + height * 0.52, y + height];
    const swing = Math.sin(step) * height * 0.16;
    limb(on, { x, y: hip }, { x: x + swing, y: foot }, height * 0.05, legs);
    limb(on, { x, y: hip }, { x: x - swing, y: foot }, height * 0.05, legs * 0.8);
    const chest = { x, y: y + height * 0.33 };
    paint(
      on,
      { left: x - height * 0.13, right: x + height * 0.13, top: y, bottom: hip + 4 },
      (px, py) => inside(toEllipse(px, py, chest, height * 0.12, height * 0.21)),
      (px, py) => coat + contrast * sample(pattern, px - x + 60, py - y),
    );
    limb(on, { x, y: y + height * 0.2 }, { x: x - swing * 0.7, y: hip }, height * 0.035, coat * 0.85);
    const middle = { x, y: y + head };
    paint(
      on,
      { left: x - head, right: x + head, top: y, bottom: y + 2 * head },
      (px, py) => inside(toEllipse(px, py, middle, head * 0.8, head)),
      () => face,
    );
  };
  return { width: height * 0.35, draw };
}

/** A long wrench with the fist on its end, by the angle from the level, in radians. */
export interface Wrench {
  readonly draw: (on: Canvas, angle: number) => void;
}

export function wrench(random: Random): Wrench {
  const pivot = { x: between(random, 25, WIDTH - 25), y: between(random, 50, HEIGHT + 10) };
  const length = between(random, 35, 85);
  const radius = between(random, 2, 4);
  const rest = between(random, -0.2, Math.PI + 0.2);
  const [steel, fist] = [between(random, 30, 230), between(random, 20, 230)];
  const fistSize = between(random, 5, 12);
  const hasFist = random() < 0.7;
  const sleeve = between(random, 20, 200);
  const elbow = { x: pivot.x + between(random, -60, 60), y: HEIGHT + 25 };
  const draw = (on: Canvas, angle: number): void => {
    const end = { x: pivot.x + Math.cos(rest + angle) * length, y: pivot.y - Math.sin(rest + angle) * length };
    const around = (a: Point, b: Point, by: number) => ({
      left: Math.min(a.x, b.x) - by,
      right: Math.max(a.x, b.x) + by,
      top: Math.min(a.y, b.y) - by,
      bottom: Math.max(a.y, b.y) + by,
    });
    if (hasFist)
      paint(
        on,
        around(end, elbow, 12),
        (x, y) => inside(toLine(x, y, end, elbow, fistSize * 0.8)),
        (x, y) => sleeve + 8 * Math.sin(x / 3 + y / 5),
      );
    paint(
      on,
      around(pivot, end, radius + 1),
      (x, y) => inside(toLine(x, y, pivot, end, radius)),
      () => steel,
    );
    if (hasFist)
      paint(
        on,
        around(end, end, fistSize + 1),
        (x, y) => inside(toEllipse(x, y, end, fistSize, fistSize)),
        () => fist,
      );
  };
  return { draw };
}

/** A workshop wall larger than the view: shelves, pipes, posters on a mottled ground. */
export const MARGIN = 20;
export function workshop(random: Random): Canvas {
  const [width, height] = [WIDTH + 2 * MARGIN, HEIGHT + 2 * MARGIN];
  const wall = canvas(width, height, between(random, 60, 190));
  const mottle = texture(width, height, 48, random);
  const contrast = between(random, 6, 30);
  wall.values.forEach((value, i) => (wall.values[i] = value + contrast * (mottle.values[i] ?? 0)));
  const things = Math.floor(between(random, 4, 22));
  for (let i = 0; i < things; i++) {
    const [x, y] = [between(random, 0, width), between(random, 0, height)];
    const isPipe = random() < 0.3;
    const [w, h] = isPipe ? [between(random, 3, 7), height * 2] : [between(random, 8, 50), between(random, 5, 35)];
    const shade = between(random, 15, 240);
    paint(
      wall,
      { left: x - w / 2 - 1, right: x + w / 2 + 1, top: y - h / 2 - 1, bottom: y + h / 2 + 1 },
      (px, py) => inside(Math.max(Math.abs(px - x) - w / 2, Math.abs(py - y) - h / 2)),
      (px, py) => shade + 0.4 * contrast * (mottle.values[((py * 7 + px * 3) | 0) % mottle.values.length] ?? 0),
    );
  }
  return wall;
}
