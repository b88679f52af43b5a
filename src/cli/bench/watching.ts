/** What the camera watcher costs for one picture, beside a plain difference of the same pictures. */
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

export function benchWatching(): void {
  const frames = pictures();
  const watcher = createWatcher();
  const [watched, compared]: [number[], number[]] = [[], []];
  frames.forEach((frame, i) => {
    let from = performance.now();
    watcher.see(frame, i * STEP_MS);
    watched.push(performance.now() - from);
    const before = frames[i - 1];
    if (!before) return;
    from = performance.now();
    middleOfDifference(before, frame);
    compared.push(performance.now() - from);
  });
  const [mine, plain] = [percentile(watched, 0.5), percentile(compared, 0.5)];
  say(
    `Watching for gestures, a picture of ${WIDTH} × ${HEIGHT}`,
    `${mine.toFixed(2)} ms (median), ${(mine / plain).toFixed(0)} × a plain difference of the same pictures`,
  );
}
