/** Gestures as people make them before a camera, each a little otherwise. */
import { HEIGHT, WIDTH } from '../../../src/gesture/frame.ts';
import type { GestureKind } from '../../../src/gesture/gesture.ts';
import type { Random } from '../noise.ts';
import { turned, TURN, type Director } from './acts.ts';
import { between, ease, pick } from './canvas.ts';
import { glove } from './things.ts';

/** How often a head goes to and fro: no faster than a camera of this rate can tell. */
const pace = (random: Random, rate: number, low: number, high: number): number =>
  Math.min(between(random, low, high), 0.32 * rate);

/** Down and up, two or three times, as people nod: each a little less than the one before, or a little more. */
export const nod: Director = ({ random, rate }, from) => {
  const times = pick(random, [2, 2, 2.5, 3, 3]);
  const seconds = times / pace(random, rate, 1, 2.3);
  const degrees = between(random, 13, 32);
  const fade = between(random, -0.35, 0.15);
  const sideways = between(random, -3, 3);
  return {
    name: 'nod',
    from,
    to: from + seconds,
    gesture: 'nod',
    change: (moment, t) => {
      const part = t / seconds;
      const pitch = (degrees / 2) * (1 - Math.cos(TURN * times * part)) * (1 + fade * part);
      const back = times % 1 === 0 ? 1 : 1 - ease((part - 0.85) / 0.15);
      turned(moment, { pitch: pitch * back, yaw: (sideways * pitch * back) / degrees, y: pitch * back * 0.04 });
    },
  };
};

/** From side to side, about the middle. */
export const shake: Director = ({ random, rate }, from) => {
  const times = pick(random, [1.5, 2, 2, 2.5, 3]);
  const seconds = times / pace(random, rate, 0.9, 2.2);
  const degrees = between(random, 11, 30) * pick(random, [-1, 1]);
  const fade = between(random, -0.35, 0.15);
  const dip = between(random, -4, 4);
  return {
    name: 'shake',
    from,
    to: from + seconds,
    gesture: 'shake',
    change: (moment, t) => {
      const part = t / seconds;
      const swell = ease(part / 0.12) * ease((1 - part) / 0.12);
      const yaw = degrees * Math.sin(TURN * times * part) * (1 + fade * part) * swell;
      turned(moment, { yaw, pitch: dip * swell, x: yaw * 0.03 });
    },
  };
};

/** A hand, a sleeve or an elbow passes across the whole view. */
export const wave =
  (towards: 'wave left' | 'wave right'): Director =>
  ({ random }, from) => {
    const hand = glove(between(random, 26, 70), between(random, 45, 115), random);
    const seconds = between(random, 0.38, 1);
    const height = between(random, 40, 85);
    const arc = between(random, -15, 20);
    const lean = between(random, -40, 40);
    const evenness = between(random, 0.2, 1);
    // The camera sees the mechanic as others do: their right is the picture's left.
    const goesLeft = towards === 'wave right';
    const reach = hand.width / 2 + 22;
    const at = (part: number): number => {
      const gone = evenness * part + (1 - evenness) * ease(part);
      const x = -reach + gone * (WIDTH + 2 * reach);
      return goesLeft ? WIDTH - x : x;
    };
    return {
      name: towards,
      from,
      to: from + seconds,
      gesture: towards,
      change: (moment, t) => {
        const part = t / seconds;
        const centre = { x: at(part), y: height - arc * Math.sin(Math.PI * part) };
        const blur = ((at(Math.min(1, part + 0.01)) - at(part)) / (0.01 * seconds)) * 0.012;
        moment.before.push((on) => hand.draw(on, centre, { x: centre.x + lean, y: HEIGHT + 50 }, blur));
      },
    };
  };

/** A hand or sleeve comes, shuts the lens, stays, and goes. */
export const cover: Director = ({ random }, from) => {
  const [come, held, go] = [between(random, 0.15, 0.5), between(random, 1.2, 2.5), between(random, 0.15, 0.5)];
  const shade = between(random, 2, 110);
  const slope = { x: between(random, -0.12, 0.12), y: between(random, -0.12, 0.12) };
  const side = pick(random, ['left', 'right', 'bottom']);
  const leak = random() < 0.3 ? between(random, 3, 12) : 0;
  const softness = between(random, 8, 30);
  return {
    name: 'cover',
    from,
    to: from + come + held + go,
    gesture: 'cover',
    change: (moment, t) => {
      const part = Math.min(ease(t / come), ease((come + held + go - t) / go));
      const length = side === 'bottom' ? HEIGHT : WIDTH;
      const edge = part * (length + softness) - leak * part;
      moment.before.push((on) => {
        for (let y = 0; y < HEIGHT; y++) {
          for (let x = 0; x < WIDTH; x++) {
            const depth = side === 'bottom' ? HEIGHT - y : side === 'left' ? x : WIDTH - x;
            const shut = Math.min(1, Math.max(0, (edge - depth) / softness));
            if (shut === 0) continue;
            const at = y * WIDTH + x;
            const here = shade * (1 + slope.x * (x / 80 - 1) + slope.y * (y / 60 - 1));
            on.values[at] = (on.values[at] ?? 0) * (1 - shut) + here * shut;
          }
        }
      });
    },
  };
};

export const GESTURES: Readonly<Record<GestureKind, Director>> = {
  nod,
  shake,
  'wave left': wave('wave left'),
  'wave right': wave('wave right'),
  cover,
};
