/**
 * What the camera watcher costs for one picture, beside a plain difference of the same pictures, and beside a library
 * that follows a hundred corners through them (jsfeat: FAST corners, pyramidal Lucas-Kanade).
 */
import jsfeat from 'jsfeat';
import { HEIGHT, WIDTH, type Frame } from '../../gesture/frame.ts';
import { createWatcher } from '../../gesture/watcher.ts';
import { percentile, say } from './measure.ts';

const COUNT = 150;
const STEP_MS = 1000 / 15;

/** A patterned scene in which a patterned patch the size of a head nods all the while. */
function pictures(): readonly Frame[] {
  return Array.from({ length: COUNT }, (_, i) => {
    const luma = new Uint8Array(WIDTH * HEIGHT);
    const nod = 7 * Math.sin(i / 2);
    for (let y = 0; y < HEIGHT; y++) {
      for (let x = 0; x < WIDTH; x++) {
        const isHead = Math.hypot(x - 80, y - 50 - nod) < 28;
        const at = isHead ? y - nod : y;
        const grain = (x * 7919 + y * 104_729 + i * 1_299_709) % 5;
        luma[y * WIDTH + x] = 110 + 60 * Math.sin((isHead ? 0.5 : 0.3) * x) * Math.sin(0.4 * at) + grain;
      }
    }
    return { width: WIDTH, height: HEIGHT, luma };
  });
}

/** The least that anything that looks for motion does: the middle of what differs. */
function middleOfDifference(before: Frame, now: Frame): number {
  let [sum, moment] = [0, 0];
  for (let i = 0; i < now.luma.length; i++) {
    const by = Math.abs((now.luma[i] ?? 0) - (before.luma[i] ?? 0));
    if (by < 12) continue;
    sum += by;
    moment += by * i;
  }
  return moment / sum;
}

const POINTS = 100;
const LEVELS = 3;

/** Follows up to a hundred corners of each picture into the next, as one who builds on the library would begin. */
function cornerFollower(): (frame: Frame) => void {
  const pyramid = () => {
    const made = new jsfeat.pyramid_t(LEVELS);
    made.allocate(WIDTH, HEIGHT, jsfeat.U8C1_t);
    return made;
  };
  let [before, now] = [pyramid(), pyramid()];
  const corners = Array.from({ length: WIDTH * HEIGHT }, () => new jsfeat.keypoint_t(0, 0, 0, 0, -1));
  const [from, to] = [new Float32Array(2 * POINTS), new Float32Array(2 * POINTS)];
  const status = new Uint8Array(POINTS);
  let count = 0;
  jsfeat.fast_corners.set_threshold(20);
  return ({ luma }) => {
    [before, now] = [now, before];
    now.data[0].data.set(luma);
    now.build(now.data[0], true);
    jsfeat.optical_flow_lk.track(before, now, from, to, count, 15, 30, status, 0.01, 0.0001);
    count = Math.min(POINTS, jsfeat.fast_corners.detect(now.data[0], corners, 5));
    for (let i = 0; i < count; i++) {
      from[2 * i] = corners[i]?.x ?? 0;
      from[2 * i + 1] = corners[i]?.y ?? 0;
    }
  };
}

export function benchWatching(): void {
  const frames = pictures();
  const watcher = createWatcher();
  const follow = cornerFollower();
  const [watched, compared, followed]: [number[], number[], number[]] = [[], [], []];
  const timed = (times: number[], work: () => unknown): void => {
    const from = performance.now();
    work();
    times.push(performance.now() - from);
  };
  frames.forEach((frame, i) => {
    timed(watched, () => watcher.see(frame, i * STEP_MS));
    timed(followed, () => {
      follow(frame);
    });
    const before = frames[i - 1];
    if (before) timed(compared, () => middleOfDifference(before, frame));
  });
  const [mine, plain, library] = [percentile(watched, 0.5), percentile(compared, 0.5), percentile(followed, 0.5)];
  say(
    `Watching for gestures, a picture of ${WIDTH} × ${HEIGHT}`,
    `${mine.toFixed(2)} ms (median), ${(mine / plain).toFixed(0)} × a plain difference of the same pictures, ` +
      `${(mine / library).toFixed(1)} × following ${POINTS} corners with jsfeat (${library.toFixed(2)} ms)`,
  );
}
