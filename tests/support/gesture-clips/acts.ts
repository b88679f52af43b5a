/** What happens in a film: gestures, and everything that is none. Each act changes the moment while it lasts. */
import { HEIGHT, WIDTH } from '../../../src/gesture/frame.ts';
import type { GestureKind } from '../../../src/gesture/gesture.ts';
import type { Random } from '../noise.ts';
import { between, ease, pick, type Canvas } from './canvas.ts';
import type { Person, Pose } from './person.ts';
import { glove, walker, wrench } from './things.ts';

/** One moment of a film, before it is drawn. */
export interface Moment {
  pose: Pose;
  readonly behind: ((on: Canvas) => void)[];
  readonly before: ((on: Canvas) => void)[];
  light: number;
}

export interface Act {
  readonly name: string;
  /** Seconds in the film. */
  readonly from: number;
  readonly to: number;
  /** null for what is no gesture. */
  readonly gesture: GestureKind | null;
  readonly change: (moment: Moment, seconds: number) => void;
}

export interface Stage {
  readonly random: Random;
  readonly person: Person;
  readonly rest: Pose;
  /** Frames a second. */
  readonly rate: number;
}

/** An act at a time of the film. */
export type Director = (stage: Stage, from: number) => Act;

const TURN = 2 * Math.PI;
const turned = (moment: Moment, by: Partial<Record<'x' | 'y' | 'yaw' | 'pitch' | 'mouth', number>>): void => {
  const { pose } = moment;
  moment.pose = {
    ...pose,
    x: pose.x + (by.x ?? 0),
    y: pose.y + (by.y ?? 0),
    yaw: pose.yaw + (by.yaw ?? 0),
    pitch: pose.pitch + (by.pitch ?? 0),
    mouth: Math.max(pose.mouth, by.mouth ?? 0),
  };
};

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

const act = (name: string, from: number, seconds: number, change: Act['change']): Act => ({
  name,
  from,
  to: from + seconds,
  gesture: null,
  change,
});

/** Turns to look at the wrench, for a while, and back. */
const look: Director = ({ random }, from) => {
  const [there, stay, back] = [between(random, 0.25, 0.6), between(random, 0.5, 2.5), between(random, 0.25, 0.7)];
  const yaw = between(random, 20, 65) * pick(random, [-1, 1]);
  const pitch = between(random, -5, 35);
  return act('look at the wrench', from, there + stay + back, (moment, t) => {
    const part = Math.min(ease(t / there), ease((there + stay + back - t) / back));
    turned(moment, { yaw: yaw * part, pitch: pitch * part, x: yaw * part * 0.05, y: pitch * part * 0.08 });
  });
};

/** A glance down at the scale and up again: one nod. */
const glance: Director = ({ random }, from) => {
  const [there, stay, back] = [between(random, 0.2, 0.5), between(random, 0, 1), between(random, 0.2, 0.5)];
  const pitch = between(random, 12, 40);
  return act('glance down', from, there + stay + back, (moment, t) => {
    turned(moment, { pitch: pitch * Math.min(ease(t / there), ease((there + stay + back - t) / back)) });
  });
};

const bend: Director = ({ random }, from) => {
  const [there, stay, back] = [between(random, 0.5, 1.2), between(random, 0.5, 3), between(random, 0.6, 1.3)];
  const [x, y] = [between(random, -40, 40), between(random, 35, 110)];
  return act('bend down', from, there + stay + back, (moment, t) => {
    const part = Math.min(ease(t / there), ease((there + stay + back - t) / back));
    turned(moment, { x: x * part, y: y * part, pitch: 25 * part });
  });
};

const lean: Director = ({ random }, from) => {
  const [there, stay, back] = [between(random, 0.4, 1.2), between(random, 0.5, 3), between(random, 0.4, 1.2)];
  const scale = between(random, 1.2, 1.7);
  const y = between(random, -5, 12);
  return act('lean in', from, there + stay + back, (moment, t) => {
    const part = Math.min(ease(t / there), ease((there + stay + back - t) / back));
    turned(moment, { y: y * part });
    moment.pose = { ...moment.pose, scale: moment.pose.scale * (1 + (scale - 1) * part) };
  });
};

/** The mouth goes, and the head with it, without any beat that lasts. */
const talk: Director = ({ random }, from) => {
  const seconds = between(random, 1.5, 6);
  const beats = Array.from({ length: 4 }, () => ({
    pace: between(random, 0.3, 2.2),
    phase: between(random, 0, TURN),
    pitch: between(random, 0.2, 1.6),
    yaw: between(random, 0.2, 2),
  }));
  const syllables = between(random, 3, 6);
  return act('talk', from, seconds, (moment, t) => {
    const swell = Math.min(ease(t / 0.3), ease((seconds - t) / 0.3));
    const sum = (part: 'pitch' | 'yaw'): number =>
      beats.reduce(
        (total, beat) => total + beat[part] * Math.sin(TURN * beat.pace * t + beat.phase * (part === 'yaw' ? 2 : 1)),
        0,
      );
    const mouth = Math.max(0, Math.sin(TURN * syllables * t) * Math.sin(TURN * 0.9 * t));
    turned(moment, { mouth, pitch: sum('pitch') * swell, yaw: sum('yaw') * swell });
  });
};

/** A wrench goes to and fro: slow forward, faster back, or alike. */
const swing: Director = ({ random }, from) => {
  const tool = wrench(random);
  const strokes = Math.round(between(random, 2, 12));
  const rate = between(random, 0.4, 1.4);
  const reach = between(random, 0.2, 0.75);
  const forward = between(random, 0.45, 0.75);
  const [before, after] = [between(random, 0.2, 1), between(random, 0.2, 1)];
  const seconds = before + strokes / rate + after;
  return act('swing a wrench', from, seconds, (moment, t) => {
    const phase = Math.min(strokes, Math.max(0, (t - before) * rate)) % 1;
    const part = phase < forward ? ease(phase / forward) : ease((1 - phase) / (1 - forward));
    moment.before.push((on) => tool.draw(on, reach * part));
  });
};

/** A hand comes in from below or a side, does something with small strokes, and goes. */
const reachIn: Director = ({ random, rest }, from) => {
  const hand = glove(between(random, 14, 34), between(random, 18, 44), random);
  const [come, stay, go] = [between(random, 0.3, 0.8), between(random, 0.3, 2.5), between(random, 0.3, 0.8)];
  const side = pick(random, [-1, 0, 1]);
  const start = { x: side === 0 ? between(random, 20, 140) : side < 0 ? -30 : WIDTH + 30, y: HEIGHT + 25 };
  const toFace = random() < 0.25;
  const goal = toFace
    ? { x: rest.x + between(random, -8, 8), y: rest.y + between(random, -10, 10) }
    : { x: between(random, 25, 135), y: between(random, 45, 110) };
  const strokes = { pace: between(random, 1, 4), x: between(random, 0, 4), y: between(random, 0, 4) };
  const seconds = come + stay + go;
  return act(toFace ? 'wipe the face' : 'reach in', from, seconds, (moment, t) => {
    const part = Math.min(ease(t / come), ease((seconds - t) / go));
    const stroke = part === 1 ? Math.sin(TURN * strokes.pace * (t - come)) : 0;
    const centre = {
      x: start.x + (goal.x - start.x) * part + stroke * strokes.x,
      y: start.y + (goal.y - start.y) * part + stroke * strokes.y,
    };
    moment.before.push((on) => hand.draw(on, centre, { x: start.x, y: start.y + 40 }, 2));
  });
};

/** Someone walks by behind. */
export const passBy: Director = ({ random }, from) => {
  const who = walker(random);
  const seconds = between(random, 1.3, 5);
  const goesLeft = random() < 0.5;
  const stride = between(random, 5, 7.5);
  return act('walk by', from, seconds, (moment, t) => {
    const gone = -who.width / 2 + (t / seconds) * (WIDTH + who.width);
    moment.behind.push((on) => who.draw(on, goesLeft ? WIDTH - gone : gone, stride * t));
  });
};

/** The light goes up or down, at once or in a while. */
const lamp: Director = ({ random }, from) => {
  const by = between(random, 0.6, 1.5);
  const [on, stay, off] = [between(random, 0.02, 0.6), between(random, 0.5, 3), between(random, 0.02, 0.6)];
  return act('lamp', from, on + stay + off, (moment, t) => {
    moment.light *= 1 + (by - 1) * Math.min(ease(t / on), ease((on + stay + off - t) / off));
  });
};

/** A soft shadow goes over the picture. */
const shadow: Director = ({ random }, from) => {
  const seconds = between(random, 3, 9);
  const [wide, soft, depth] = [between(random, 30, 80), between(random, 25, 50), between(random, 0.1, 0.45)];
  return act('shadow', from, seconds, (moment, t) => {
    const centre = -wide + (t / seconds) * (WIDTH + 2 * wide);
    moment.before.push((on) => {
      for (let y = 0; y < HEIGHT; y++) {
        for (let x = 0; x < WIDTH; x++) {
          const part = 1 - ease((Math.abs(x + y * 0.2 - 12 - centre) - wide / 2) / soft);
          on.values[y * WIDTH + x] = (on.values[y * WIDTH + x] ?? 0) * (1 - depth * part);
        }
      }
    });
  });
};

/** All that must not count. */
export const DISTRACTIONS: readonly [Director, ...Director[]] = [
  look,
  glance,
  bend,
  lean,
  talk,
  swing,
  reachIn,
  passBy,
  lamp,
  shadow,
];
