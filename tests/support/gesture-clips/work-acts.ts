/** What goes on in a workshop and is no gesture: looks, tools, hands, people, light. */
import { HEIGHT, WIDTH } from '../../../src/gesture/frame.ts';
import { act, turned, TURN, type Director } from './acts.ts';
import { between, ease, pick } from './canvas.ts';
import { glove, walker, wrench } from './things.ts';

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

/** What is most easily taken for a head: it goes to and fro. */
export const STROKES: readonly [Director, ...Director[]] = [swing, swing, swing, reachIn, talk];
