/** Films of gestures and of work, drawn frame by frame from a seed: the same on every machine. */
import { HEIGHT, WIDTH, type Frame } from '../../../src/gesture/frame.ts';
import type { GestureKind } from '../../../src/gesture/gesture.ts';
import { seededRandom, type Random } from '../noise.ts';
import type { Act, Director, Moment, Stage } from './acts.ts';
import { between, canvas, pick, sample, type Canvas } from './canvas.ts';
import { GESTURES } from './gesture-acts.ts';
import { person } from './person.ts';
import { RING_DISTRACTIONS } from './ring-acts.ts';
import { MARGIN, workshop } from './things.ts';
import { DISTRACTIONS, passBy, STROKES } from './work-acts.ts';

export interface Shot {
  readonly frame: Frame;
  /** Milliseconds. */
  readonly time: number;
}

export interface Film {
  readonly rate: number;
  readonly seconds: number;
  readonly acts: readonly Act[];
  /** Of this scene, in words. */
  readonly about: string;
  readonly shots: () => Generator<Shot>;
}

/** Pictures a second of cameras that gestures are seen by: in dim light they give half as many, or fewer. */
export const RATES = [7.5, 8, 10, 12, 15, 15, 20, 24, 25, 30] as const;
/** Of those that say they are too slow. */
export const SLOW_RATES = [5, 6, 6.5] as const;
type Rates = readonly [number, ...number[]];
const KINDS = ['nod', 'shake', 'wave left', 'wave right', 'cover'] as const satisfies readonly GestureKind[];

/** The first seconds, in which nothing happens: the scene is learned. */
const QUIET_START = 1.6;

/** Some gestures one after another in one scene, some of them while someone walks by; the kinds take turns. */
export function gestureFilm(seed: number, count = 5, of: readonly GestureKind[] = KINDS, rates: Rates = RATES): Film {
  const random = seededRandom(seed);
  const stage = stageFor(random, rates);
  const acts: Act[] = [];
  let at = QUIET_START;
  const kinds = Array.from({ length: count }, (_, i) => of[(i + Math.floor(seed)) % of.length] ?? 'nod');
  for (const kind of kinds) {
    const act = GESTURES[kind](stage, at + between(random, 0, 0.2));
    acts.push(act);
    if (random() < 0.25) acts.push(passBy(stage, Math.max(0, act.from - between(random, 0, 3))));
    at = act.to + between(random, 1.3, 2.2);
  }
  return filmOf(stage, acts, at, random);
}

/** Gestures in an order, with so many seconds of rest after each, in a scene that is easy to see: a clear view. */
export function clearFilm(seed: number, kinds: readonly GestureKind[], rest: number, rate = 15): Film {
  const random = seededRandom(seed);
  const stage: Stage = { ...stageFor(random, [rate], 26) };
  const acts: Act[] = [];
  let at = QUIET_START + rest;
  for (const kind of kinds) {
    const act = GESTURES[kind](stage, at);
    acts.push(act);
    at = act.to + rest;
  }
  return filmOf(stage, acts, at, random);
}

/** Work and nothing else, for so long. */
export const busyFilm = (seed: number, seconds: number, rates: Rates = RATES): Film =>
  workFilm(seed, seconds, DISTRACTIONS, rates);

/** Of work only what is most easily taken for a head, for so long: to fit by, not to count by. */
export const strokesFilm = (seed: number, seconds: number): Film => workFilm(seed, seconds, STROKES, RATES);

/** Work right before the camera, for so long: harder still. */
export const ringFilm = (seed: number, seconds: number): Film =>
  workFilm(seed, seconds, [...RING_DISTRACTIONS, ...RING_DISTRACTIONS, ...DISTRACTIONS], RATES);

function workFilm(seed: number, seconds: number, distractions: readonly [Director, ...Director[]], rates: Rates): Film {
  const random = seededRandom(seed);
  const stage = stageFor(random, rates);
  const acts: Act[] = [];
  for (let at = QUIET_START; at < seconds;) {
    const act = pick(random, distractions)(stage, at);
    acts.push(act);
    // Often one begins while the last is still under way.
    at = random() < 0.35 ? at + between(random, 0.2, 1.5) : act.to + between(random, 0.1, 1.5);
  }
  return filmOf(stage, acts, seconds, random);
}

function stageFor(random: Random, rates: Rates, radius = between(random, 14, 42)): Stage {
  const rest = {
    x: between(random, 40, WIDTH - 40),
    y: between(random, radius * 0.8, Math.max(radius * 0.9, HEIGHT - radius * 1.6)),
    scale: 1,
    yaw: between(random, -15, 15),
    pitch: between(random, -5, 15),
    mouth: 0,
  };
  return { random, person: person(radius, random), rest, rate: pick(random, rates) };
}

function filmOf(stage: Stage, acts: readonly Act[], seconds: number, random: Random): Film {
  const { rate, person: mechanic, rest } = stage;
  const wall = workshop(random);
  const noise = between(random, 0.8, 5);
  const gain = between(random, 0.5, 1.15);
  const flicker =
    random() < 0.6 ? { all: between(random, 0, 0.06), bands: between(random, 0, 0.05) } : { all: 0, bands: 0 };
  const beat = between(random, 0.2, 7);
  const bench = random() < 0.3 ? { by: between(random, 0.3, 2.5), pace: between(random, 3, 9) } : { by: 0, pace: 1 };
  const jitter = between(random, 0, 0.15);
  const sway = { pace: between(random, 0.08, 0.3), x: between(random, 0, 2.5), y: between(random, 0, 1) };
  const grain = seededRandom(Math.floor(random() * 2 ** 31));
  function* shots(): Generator<Shot> {
    const view = canvas(WIDTH, HEIGHT);
    for (let i = 0; i < seconds * rate; i++) {
      const t = (i + jitter * (grain() - 0.5)) / rate;
      const shift = bench.by === 0 ? null : shaken(bench, t);
      const moment: Moment = { pose: rest, behind: [], before: [], light: gain };
      moment.pose = {
        ...rest,
        x: rest.x + sway.x * Math.sin(6.28 * sway.pace * t),
        y: rest.y + sway.y * Math.sin(7.1 * sway.pace * t),
      };
      for (const act of acts) if (t >= act.from && t < act.to) act.change(moment, t - act.from);
      drawWall(view, wall, { x: 0, y: 0 });
      for (const draw of moment.behind) draw(view);
      mechanic.draw(view, moment.pose);
      for (const draw of moment.before) draw(view);
      const light = (y: number): number =>
        moment.light *
        (1 + flicker.all * Math.sin(6.28 * beat * t)) *
        (1 + flicker.bands * Math.sin(y / 9 + 6.28 * beat * t));
      yield { frame: exposed(view, light, noise, grain, shift), time: Math.max(0, t) * 1000 };
    }
  }
  const about = `${rate} frames/s, head ${(2 * mechanic.radius).toFixed(0)} px, noise ${noise.toFixed(1)}, light ${gain.toFixed(2)}, bench ${bench.by.toFixed(1)} px`;
  return { rate, seconds, acts, about, shots };
}

const shaken = ({ by, pace }: { readonly by: number; readonly pace: number }, t: number) => ({
  x: by * (Math.sin(6.28 * pace * t) * 0.6 + Math.sin(6.28 * pace * 1.37 * t + 1) * 0.4),
  y: by * (Math.sin(6.28 * pace * 1.13 * t + 2) * 0.7 + Math.sin(6.28 * pace * 0.71 * t) * 0.3),
});

function drawWall(view: Canvas, wall: Canvas, shift: { readonly x: number; readonly y: number }): void {
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++)
      view.values[y * WIDTH + x] = sample(wall, x + MARGIN + shift.x, y + MARGIN + shift.y);
  }
}

/** What the sensor makes of it. A camera that shakes moves all that it sees. */
function exposed(
  view: Canvas,
  light: (y: number) => number,
  noise: number,
  grain: Random,
  shift: { readonly x: number; readonly y: number } | null,
): Frame {
  const luma = new Uint8ClampedArray(WIDTH * HEIGHT);
  for (let y = 0; y < HEIGHT; y++) {
    const here = light(y);
    for (let x = 0; x < WIDTH; x++) {
      const value = shift ? sample(view, x + shift.x, y + shift.y) : (view.values[y * WIDTH + x] ?? 0);
      // Three uniform numbers are near enough to a bell.
      luma[y * WIDTH + x] = value * here + noise * 2 * (grain() + grain() + grain() - 1.5);
    }
  }
  return { width: WIDTH, height: HEIGHT, luma };
}
