import { describe, expect, test } from 'vitest';
import { HEIGHT, WIDTH, type Frame } from '../../src/gesture/frame.ts';
import { createWatcher, type Watcher, type WatcherOptions } from '../../src/gesture/watcher.ts';
import { clearFilm, SLOW_RATES, type Shot } from '../support/gesture-clips/film.ts';
import { score } from '../support/gesture-clips/score.ts';
import { seededRandom } from '../support/noise.ts';

const grey = (value = 90): Frame => ({
  width: WIDTH,
  height: HEIGHT,
  luma: new Uint8Array(WIDTH * HEIGHT).fill(value),
});

/** A still scene of stripes and blots, with the noise of a camera. */
function scenes(light = 1, seed = 1): () => Frame {
  const random = seededRandom(seed);
  return () => {
    const frame = grey();
    for (let i = 0; i < WIDTH * HEIGHT; i++) {
      const [x, y] = [i % WIDTH, Math.floor(i / WIDTH)];
      const value = 110 + 50 * Math.sign(Math.sin(x / 7) * Math.sin(y / 5)) + 20 * Math.sin((x * y) / 90);
      frame.luma[i] = Math.max(0, light * (value + 4 * (random() - 0.5)));
    }
    return frame;
  };
}

/** Feeds frames at a rate for so long; the kinds of what was seen. */
function show(watcher: Watcher, frames: () => Frame, from: number, seconds: number, rate = 15): string[] {
  const kinds: string[] = [];
  for (let i = 1; i <= seconds * rate; i++) {
    const seen = watcher.see(frames(), from + (i * 1000) / rate);
    if (seen.kind !== 'nothing') kinds.push(seen.kind === 'gesture' ? seen.gesture.kind : seen.why);
  }
  return kinds;
}

/** One gesture of each kind, 15 frames a second, nobody else in the picture: how surely others are found tells films.test.ts. Drawn once. */
const clear = clearFilm(31, ['shake', 'wave left', 'wave right', 'cover', 'nod'], 1.5);
const shots = [...clear.shots()];

function kindsIn(options: WatcherOptions, change: (shot: Shot) => Frame = ({ frame }) => frame): string[] {
  const watcher = createWatcher(options);
  const kinds: string[] = [];
  for (const shot of shots) {
    const seen = watcher.see(change(shot), shot.time);
    if (seen.kind === 'gesture') kinds.push(seen.gesture.kind);
  }
  return kinds;
}

describe('a frame is refused, with the mend, when', () => {
  test.each<[string, Frame, number, RegExp]>([
    [
      'it has another size',
      { width: 320, height: 240, luma: new Uint8Array(320 * 240) },
      10,
      /320 × 240; scale it to 160 × 120/,
    ],
    ['pixels are missing', { width: WIDTH, height: HEIGHT, luma: new Uint8Array(5) }, 10, /5 grey values; give 19200/],
    ['its time is no number', grey(), NaN, /time of the frame is NaN; give milliseconds/],
    ['its time is endless', grey(), Infinity, /Infinity/],
    ['time goes back', grey(), -1, /not after the one before, 0 ms/],
    ['time stands still', grey(), 0, /not after the one before, 0 ms/],
  ])('%s', (_, frame, time, why) => {
    const watcher = createWatcher();
    expect(watcher.see(grey(), 0)).toEqual({ kind: 'nothing' });
    expect(watcher.see(frame, time)).toEqual({ kind: 'refused', why: expect.stringMatching(why) as string });
    expect(watcher.see(grey(91), 66), 'the next one is looked at all the same').toEqual({ kind: 'nothing' });
  });
  test.each([
    { left: -0.1, top: 0, width: 0.5, height: 0.5 },
    { left: 0.6, top: 0, width: 0.5, height: 0.5 },
    { left: 0, top: 0, width: 0.1, height: 0.5 },
    { left: 0, top: 0, width: NaN, height: 0.5 },
  ])('never: a region that cannot be watched is refused at once: %o', (region) => {
    expect(() => createWatcher({ region })).toThrow(/region to watch .* give parts of 1/);
  });
});

describe('a film with one gesture of each kind', () => {
  const all = clear.acts.flatMap(({ gesture }) => (gesture === null ? [] : [gesture as string]));
  test('gives them in their order', () => {
    expect(kindsIn({})).toEqual(all);
  });
  test('gives the same when the camera hangs head down and that is told', () => {
    const turned = ({ frame }: Shot): Frame => ({ ...frame, luma: frame.luma.slice().reverse() });
    expect(kindsIn({ upsideDown: true }, turned)).toEqual(all);
  });
  test('gives the other wave when the picture comes as in a mirror', () => {
    const other = (kind: string): string =>
      kind === 'wave left' ? 'wave right' : kind === 'wave right' ? 'wave left' : kind;
    expect(kindsIn({ mirrored: true })).toEqual(all.map(other));
  });
  test('gives a shake for its nod, and no wave, when the camera lies on its side: Teach and try says so', () => {
    // A quarter turn, clockwise, of the middle of the picture, drawn out to its width.
    const aside = ({ frame }: Shot): Frame => {
      const luma = Uint8Array.from(frame.luma, (_, i) => {
        const [x, y] = [i % WIDTH, Math.floor(i / WIDTH)];
        const row = HEIGHT - 1 - Math.floor((x * HEIGHT) / WIDTH);
        return frame.luma[row * WIDTH + (WIDTH - HEIGHT) / 2 + y] ?? 0;
      });
      return { ...frame, luma };
    };
    const kinds = kindsIn({}, aside);
    // The nod comes last. What becomes of a shake differs from film to film: missed, or a nod.
    expect(kinds.at(-1)).toBe('shake');
    expect(kinds.filter((kind) => kind.startsWith('wave'))).toEqual([]);
  });
  test('gives no nod where its place is not watched', () => {
    expect(kindsIn({ region: { left: 0, top: 0.75, width: 1, height: 0.25 } })).not.toContain('nod');
  });
  test('never changes the frames', () => {
    const watcher = createWatcher();
    const frame = scenes()();
    const before = frame.luma.slice();
    watcher.see(frame, 0);
    expect(frame.luma).toEqual(before);
  });
});

describe('trouble', () => {
  test('there is none with a free view', () => {
    const watcher = createWatcher();
    expect(show(watcher, scenes(), 0, 4)).toEqual([]);
    expect(watcher.trouble).toBeNull();
  });
  test('frozen: the same picture for a while; gone with the next', () => {
    const watcher = createWatcher();
    const next = scenes();
    show(watcher, next, 0, 2);
    const still = next();
    show(watcher, () => still, 2000, 2);
    expect(watcher.trouble).toBe('frozen');
    show(watcher, next, 4000, 1);
    expect(watcher.trouble).toBeNull();
  });
  test('slow: five frames a second; gone with more', () => {
    const watcher = createWatcher();
    show(watcher, scenes(), 0, 4, 5);
    expect(watcher.trouble).toBe('slow');
    show(watcher, scenes(), 4000, 3, 8);
    expect(watcher.trouble).toBeNull();
  });
  test.each(SLOW_RATES)('slow: at %d frames a second a covered lens is seen, and nothing else', (rate) => {
    const kinds = ['nod', 'shake', 'wave left', 'cover', 'wave right'] as const;
    const { acts, wrong } = score(clearFilm(17, kinds, 2, rate));
    expect(acts.filter(({ found }) => found).map(({ act }) => act.name)).toEqual(['cover']);
    expect(wrong).toEqual([]);
  });
  test('slow: so it is where each of five pictures a second is given three times', () => {
    const film = clearFilm(17, ['nod', 'shake', 'wave left', 'cover', 'wave right'], 2, 5);
    const shots = function* (): Generator<Shot> {
      for (const { frame, time } of film.shots()) for (const later of [0, 60, 120]) yield { frame, time: time + later };
    };
    const { acts, wrong } = score({ ...film, shots });
    expect(acts.filter(({ found }) => found).map(({ act }) => act.name)).toEqual(['cover']);
    expect(wrong).toEqual([]);
    const watcher = createWatcher();
    const last = [...shots()]
      .slice(0, 45)
      .map((shot) => {
        watcher.see(shot.frame, shot.time);
        return shot;
      })
      .at(-1);
    expect(watcher.trouble).toBe('slow');
    if (last) show(watcher, () => last.frame, last.time, 2);
    expect(watcher.trouble, 'one that comes again and again').toBe('frozen');
  });
  test('covered: the lens is held shut, which is also a gesture', () => {
    const watcher = createWatcher();
    show(watcher, scenes(), 0, 3);
    expect(show(watcher, () => grey(40), 3000, 3)).toEqual(['cover']);
    expect(watcher.trouble).toBe('covered');
    expect(show(watcher, scenes(), 6000, 3)).toEqual([]);
    expect(watcher.trouble).toBeNull();
  });
  test('black: the lights go out at once, which is no gesture', () => {
    const watcher = createWatcher();
    show(watcher, scenes(), 0, 3);
    expect(show(watcher, scenes(0.02), 3000, 3)).toEqual([]);
    expect(watcher.trouble).toBe('black');
  });
  test('a lens that was never open is no gesture', () => {
    const watcher = createWatcher();
    expect(show(watcher, () => grey(60), 0, 4)).toEqual([]);
    expect(watcher.trouble).toBe('covered');
  });
  test('light that goes up and down is neither', () => {
    const watcher = createWatcher();
    let i = 0;
    const lamps = Array.from({ length: 20 }, (_, at) => scenes(0.75 + 0.25 * Math.sin(at)));
    const flicker = (): Frame => (lamps[i++ % lamps.length] ?? scenes())();
    expect(show(watcher, flicker, 0, 8)).toEqual([]);
    expect(watcher.trouble).toBeNull();
  });
});
