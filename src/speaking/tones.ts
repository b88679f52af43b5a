import type { ToneKind } from './types.ts';

/** One beep of a signal. Times are in milliseconds from the signal's start. */
export interface Beep {
  readonly hertz: number;
  readonly atMs: number;
  readonly forMs: number;
}

/**
 * The signals differ in rhythm and direction, not in pitch alone, and stay between 400 and 1600 Hz: above the hum of
 * machines and below the range that noise takes from the ear first, around 4 kHz (common practice).
 */
export const TONES: Record<ToneKind, readonly Beep[]> = {
  heard: [{ hertz: 1320, atMs: 0, forMs: 70 }],
  logged: [
    { hertz: 880, atMs: 0, forMs: 90 },
    { hertz: 1320, atMs: 110, forMs: 160 },
  ],
  question: [
    { hertz: 660, atMs: 0, forMs: 110 },
    { hertz: 660, atMs: 170, forMs: 110 },
    { hertz: 990, atMs: 340, forMs: 220 },
  ],
  // Two notes again and again, longer than any other signal: it is for somebody who stands elsewhere.
  help: [0, 1, 2, 3, 4, 5].map((i) => ({ hertz: i % 2 === 0 ? 1480 : 990, atMs: i * 200, forMs: 180 })),
  stop: [0, 260, 520].map((atMs) => ({ hertz: 440, atMs, forMs: 200 })),
};

/** Sounds in place of words, to call the eye to the screen. */
export const LOOK_AT_SCREEN: readonly Beep[] = [
  { hertz: 990, atMs: 0, forMs: 140 },
  { hertz: 660, atMs: 180, forMs: 220 },
];

export const lengthMs = (beeps: readonly Beep[]): number =>
  Math.max(0, ...beeps.map(({ atMs, forMs }) => atMs + forMs));
