import type { BrowserContext, Page } from 'playwright-core';
import { HEIGHT, WIDTH, type Frame } from '../../src/gesture/frame.ts';
import type { GestureKind } from '../../src/gesture/gesture.ts';
import { clearFilm } from './gesture-clips/film.ts';

/** What the made-up camera does when nobody makes a gesture before it. */
export type Scene = 'free' | 'covered' | 'black' | 'frozen' | 'off';
/** A gesture of a drawn film, or what happens to the camera meanwhile. */
export interface ActingCamera {
  /** Plays one gesture; the promise is over with it. */
  make(page: Page, kind: GestureKind): Promise<void>;
  /** From now on. `off`: no picture comes. */
  show(page: Page, scene: Scene): Promise<void>;
  /** Pictures a second from now on. */
  pace(page: Page, rate: number): Promise<void>;
}

declare global {
  var actingCamera: {
    make(kind: string): Promise<void>;
    show(scene: Scene): void;
    pace(rate: number): void;
  };
}

const RATE = 15;
const KINDS = ['nod', 'shake', 'wave right', 'wave left', 'cover'] as const satisfies readonly GestureKind[];
/** A drawn scene in which every gesture is made clearly and briefly. */
const SEED = 29;

/**
 * Puts a camera that acts on request into every page of a browser: `getUserMedia` gives a real stream of drawn pictures, and
 * all behind it (video, worker, watcher) is the real path. A test makes a gesture when the app waits for one, as a person does.
 * @param upsideDown whether it hangs head down
 */
export async function installActingCamera(context: BrowserContext, { upsideDown = false } = {}): Promise<ActingCamera> {
  await context.addInitScript(actInPage, { films: films(), width: WIDTH, height: HEIGHT, rate: RATE, upsideDown });
  return {
    make: (page, kind) => page.evaluate((kind) => globalThis.actingCamera.make(kind), kind),
    show: (page, scene) => page.evaluate((scene) => globalThis.actingCamera.show(scene), scene),
    pace: (page, rate) => page.evaluate((rate) => globalThis.actingCamera.pace(rate), rate),
  };
}

/** The scene at rest, and each gesture in it, as Base64 of grey pictures one after another. */
function films(): Readonly<Record<string, string>> {
  const film = clearFilm(SEED, KINDS, 2);
  const frames = [...film.shots()].map(({ frame }) => frame);
  const cut = (from: number, to: number): string =>
    Buffer.concat(frames.slice(Math.floor(from * RATE), Math.ceil(to * RATE) + 1).map(bytesOf)).toString('base64');
  const rest = cut(0, (film.acts[0]?.from ?? 0) - 0.2);
  return Object.fromEntries([
    ['rest', rest],
    ...film.acts.map(({ name, from, to }) => [name, cut(from - 0.1, to + 0.1)] as const),
  ]);
}

const bytesOf = ({ luma }: Frame): Buffer => Buffer.from(luma.buffer, luma.byteOffset, luma.byteLength);

/** Runs in the page, and so uses nothing from outside itself. */
function actInPage({
  films,
  width,
  height,
  rate,
  upsideDown,
}: {
  readonly films: Readonly<Record<string, string>>;
  readonly width: number;
  readonly height: number;
  readonly rate: number;
  readonly upsideDown: boolean;
}): void {
  const size = width * height;
  const decoded = new Map<string, Uint8Array>();
  const filmOf = (name: string): Uint8Array => {
    const known = decoded.get(name) ?? Uint8Array.from(atob(films[name] ?? ''), (character) => character.charCodeAt(0));
    decoded.set(name, known);
    return known;
  };
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  const context = canvas.getContext('2d', { alpha: false });
  if (!context) throw new Error('There is no canvas to draw on.');
  const image = context.createImageData(width, height);
  const pixels = new Uint32Array(image.data.buffer);
  const [OPAQUE, GREY] = [0xff000000, 0x010101];
  let scene: Scene = 'free';
  let [at, step] = [0, 1];
  let playing: { readonly film: Uint8Array; next: number; readonly over: () => void } | null = null;

  function greyAt(pixel: number): number {
    const place = upsideDown ? size - 1 - pixel : pixel;
    if (playing) return playing.film[playing.next * size + place] ?? 0;
    const noise = Math.random() * 4;
    if (scene === 'black') return noise;
    // A sleeve against the lens: a little light, and nothing to be seen by it.
    if (scene === 'covered') return 40 + noise;
    return filmOf('rest')[at * size + place] ?? 0;
  }
  function draw(): void {
    if (scene === 'off' && !playing) return;
    for (let pixel = 0; pixel < size; pixel++) pixels[pixel] = OPAQUE | (Math.round(greyAt(pixel)) * GREY);
    context?.putImageData(image, 0, 0);
    if (playing) {
      playing.next += 1;
      if (playing.next * size < playing.film.length) return;
      playing.over();
      playing = null;
      return;
    }
    if (scene === 'frozen') return;
    // There and back again, so that nothing jumps.
    const last = filmOf('rest').length / size - 1;
    if (at + step < 0 || at + step > last) step = -step;
    at += step;
  }
  let clock = setInterval(draw, 1000 / rate);

  const original = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  navigator.mediaDevices.getUserMedia = async (constraints = {}) =>
    constraints.video ? canvas.captureStream() : original(constraints);
  globalThis.actingCamera = {
    make: (kind) => new Promise((over) => (playing = { film: filmOf(kind), next: 0, over })),
    show: (next) => void (scene = next),
    pace(next) {
      clearInterval(clock);
      clock = setInterval(draw, 1000 / next);
    },
  };
}
