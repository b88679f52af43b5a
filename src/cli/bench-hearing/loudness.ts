import { powerOf } from '../../hearing/level.ts';
import type { Sound } from '../../speaking/sound.ts';

/** Root mean square of the louder frames, 0 to 1: pauses do not count. */
export function loudness({ samples, rate }: Sound): number {
  const frame = Math.round(0.02 * rate);
  const levels = Array.from({ length: Math.floor(samples.length / frame) }, (_, at) =>
    Math.sqrt(powerOf(samples.subarray(at * frame, (at + 1) * frame))),
  ).sort((a, b) => a - b);
  return levels[Math.floor(0.8 * levels.length)] ?? 1;
}
