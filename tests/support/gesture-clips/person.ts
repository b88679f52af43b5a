/** The mechanic: a head that turns as a ball does, with hair or a helmet, a face of any shade, shoulders below. */
import { HEIGHT } from '../../../src/gesture/frame.ts';
import type { Random } from '../noise.ts';
import { between, inside, paint, pick, sample, texture, toEllipse, type Canvas } from './canvas.ts';

/** How the head is held: pixels and degrees. */
export interface Pose {
  readonly x: number;
  readonly y: number;
  /** 1 as it sits at rest. */
  readonly scale: number;
  /** To the picture's right. */
  readonly yaw: number;
  /** Down. */
  readonly pitch: number;
  /** 0 closed to 1. */
  readonly mouth: number;
}

export interface Person {
  /** Half height of the head at rest. */
  readonly radius: number;
  readonly draw: (on: Canvas, pose: Pose) => void;
}

const SIZE = 128;
/** Degrees of longitude and latitude that the face's map covers either way. */
const REACH = 120;
const RADIANS = Math.PI / 180;

export function person(radius: number, random: Random): Person {
  const face = faceMap(random);
  const cloth = texture(200, 160, 24, random);
  const clothShade = between(random, 25, 190);
  const clothContrast = between(random, 6, 35);
  const narrow = between(random, 0.68, 0.85);
  const shoulder = between(random, 1.5, 2.1);
  const draw = (on: Canvas, { x, y, scale, yaw, pitch, mouth }: Pose): void => {
    const ry = radius * scale;
    const rx = ry * narrow;
    const neckY = y + ry * 0.8;
    const shade = (px: number, py: number): number =>
      clothShade + clothContrast * sample(cloth, (px - x) / scale + 100, (py - neckY) / scale + 20);
    const shoulders = { x, y: neckY + ry * 1.6 };
    const bottom = Math.min(HEIGHT + 10, neckY + ry * 4);
    paint(
      on,
      { left: x - ry * shoulder, right: x + ry * shoulder, top: neckY, bottom },
      (px, py) =>
        inside(
          py > shoulders.y ? Math.abs(px - x) - ry * shoulder : toEllipse(px, py, shoulders, ry * shoulder, ry * 1.35),
        ),
      shade,
    );
    // The neck is the axis: who nods also moves the whole head a little.
    const centre = { x: x + Math.sin(yaw * RADIANS) * rx * 0.12, y: y + Math.sin(pitch * RADIANS) * ry * 0.25 };
    const [sinYaw, cosYaw] = [Math.sin(yaw * RADIANS), Math.cos(yaw * RADIANS)];
    const [sinPitch, cosPitch] = [Math.sin(pitch * RADIANS), Math.cos(pitch * RADIANS)];
    paint(
      on,
      { left: x - rx * 0.45, right: x + rx * 0.45, top: y + ry * 0.5, bottom: neckY + ry * 0.5 },
      () => 1,
      (px, py) => sample(face, SIZE / 2 + (px - x) / 4, SIZE * 0.78) * (0.8 + 0.1 * Math.sin(py)),
    );
    paint(
      on,
      { left: centre.x - rx - 1, right: centre.x + rx + 1, top: centre.y - ry - 1, bottom: centre.y + ry + 1 },
      (px, py) => inside(toEllipse(px, py, centre, rx, ry)),
      (px, py) => {
        const u = Math.min(1, Math.max(-1, (px - centre.x) / rx));
        const v = Math.min(1, Math.max(-1, (py - centre.y) / ry));
        const w = Math.sqrt(Math.max(0, 1 - u * u - v * v));
        // Turned back: first the nod, then the turn.
        const v1 = v * cosPitch - w * sinPitch;
        const w1 = v * sinPitch + w * cosPitch;
        const u2 = u * cosYaw - w1 * sinYaw;
        const w2 = u * sinYaw + w1 * cosYaw;
        const longitude = Math.atan2(u2, w2) / RADIANS;
        const latitude = Math.asin(Math.min(1, Math.max(-1, v1))) / RADIANS;
        const value = sample(
          face,
          SIZE / 2 + (longitude / REACH) * (SIZE / 2),
          SIZE / 2 + (latitude / 90) * (SIZE / 2),
        );
        const lips = mouth > 0 ? inside(Math.hypot(longitude / 16, (latitude - 38) / (2 + 9 * mouth)) - 1, 0.3) : 0;
        return value * (1 - 0.7 * lips) * (0.72 + 0.28 * w);
      },
    );
  };
  return { radius, draw };
}

/** Grey values by longitude and latitude. */
function faceMap(random: Random): Canvas {
  const map = texture(SIZE, SIZE, 32, random);
  const skin = between(random, 45, 200);
  const grain = between(random, 3, 9);
  const top = pick(random, ['hair', 'helmet', 'cap', 'bald']);
  const topShade = top === 'helmet' ? between(random, 120, 245) : between(random, 15, 140);
  const line = between(random, -42, -24);
  const hasBeard = random() < 0.3;
  const glasses = random() < 0.35;
  const defenders = random() < 0.4;
  const defenderShade = between(random, 15, 230);
  for (let y = 0; y < SIZE; y++) {
    for (let x = 0; x < SIZE; x++) {
      const longitude = ((x - SIZE / 2) / (SIZE / 2)) * REACH;
      const latitude = ((y - SIZE / 2) / (SIZE / 2)) * 90;
      const at = y * SIZE + x;
      const grainHere = map.values[at] ?? 0;
      let value = skin + grain * grainHere;
      const dark = (part: number): void => void (value *= part);
      const side = Math.abs(longitude);
      if (Math.hypot((side - 24) / 11, (latitude + 12) / 5) < 1) dark(0.55);
      if (side > 12 && side < 38 && Math.abs(latitude + 22) < 2.5) dark(0.5);
      if (side < 5 && latitude > -8 && latitude < 16) dark(side < 2 ? 1.12 : 0.85);
      if (side < 8 && Math.abs(latitude - 18) < 3) dark(0.65);
      if (side < 17 && Math.abs(latitude - 38) < 2.5) dark(0.6);
      if (glasses && Math.abs(Math.hypot((side - 24) / 16, (latitude + 11) / 11) - 1) < 0.16) value = 30;
      if (hasBeard && latitude > 22 && side < 70 && !(side < 15 && Math.abs(latitude - 37) < 5))
        value = topShade * 0.7 + 14 * grainHere;
      if (top !== 'bald' && (latitude < line || (side > 75 && latitude < 20))) value = topShade + 10 * grainHere;
      if (top === 'cap' && latitude >= line && latitude < line + 7 && side < 50) value = topShade * 0.6;
      if (defenders && Math.hypot((side - 88) / 20, (latitude - 2) / 24) < 1) value = defenderShade;
      map.values[at] = value;
    }
  }
  return map;
}
