import type { Sound } from './sound.ts';
import type { ToneKind } from './types.ts';

/** One beep of a signal. Times are in milliseconds from the signal's start. */
export interface Beep {
  readonly hertz: number;
  readonly atMs: number;
  readonly forMs: number;
}

/**
 * The signals differ in rhythm and direction, not in pitch alone, and stay between 400 and 1600 Hz: above the hum of
 * machines and below the range that noise takes from the ear first, around 4 kHz (common practice). All but the call for
 * help are over within a quarter of a second, before the words that follow them.
 */
export const TONES: Record<ToneKind, readonly Beep[]> = {
  // One.
  heard: [{ hertz: 1320, atMs: 0, forMs: 70 }],
  // Two, upwards.
  logged: [
    { hertz: 880, atMs: 0, forMs: 80 },
    { hertz: 1320, atMs: 95, forMs: 125 },
  ],
  // Three: short, short, long and higher, as a voice goes up at the end of a question.
  question: [
    { hertz: 660, atMs: 0, forMs: 50 },
    { hertz: 660, atMs: 70, forMs: 50 },
    { hertz: 990, atMs: 140, forMs: 105 },
  ],
  // Two, downwards and low.
  stop: [
    { hertz: 590, atMs: 0, forMs: 110 },
    { hertz: 415, atMs: 120, forMs: 125 },
  ],
  // Two notes again and again, longer than any other signal: it is for somebody who stands elsewhere.
  help: [0, 1, 2, 3, 4, 5].map((i) => ({ hertz: i % 2 === 0 ? 1480 : 990, atMs: i * 200, forMs: 180 })),
};

/** Sounds in place of words, to call the eye to the screen. */
export const LOOK_AT_SCREEN: readonly Beep[] = [
  { hertz: 990, atMs: 0, forMs: 140 },
  { hertz: 660, atMs: 180, forMs: 220 },
];

export const lengthMs = (beeps: readonly Beep[]): number =>
  Math.max(0, ...beeps.map(({ atMs, forMs }) => atMs + forMs));

/** Peaks in a quiet room, 0 to 1: the more a signal wants of a person, the louder it is. */
const PEAKS: Readonly<Record<ToneKind, number>> = { heard: 0.06, logged: 0.09, question: 0.13, stop: 0.2, help: 0.23 };
/** Tones that take the place of words, and any where the room is not known. */
export const FULL_PEAK = 0.5;

/** Up to this background, in dBFS, a room is quiet; from the other on, no signal can be made any louder. */
const [QUIET, LOUD] = [-60, -30];
/** In a loud room, how much louder than in a quiet one, in dB: not as much as the noise, or it would hurt. */
const LOUDER = 12;

/**
 * How loud a signal is, as its peak from 0 to 1.
 * @param noise the background that the ear measures, in dBFS; null where it has measured none: as in a room between
 */
export function peakOf(kind: ToneKind, noise: number | null): number {
  const share = noise === null ? 0.5 : Math.min(1, Math.max(0, (noise - QUIET) / (LOUD - QUIET)));
  return PEAKS[kind] * 10 ** ((share * LOUDER) / 20);
}

/** A beep that starts or stops at once clicks, and a click sounds like a fault. In seconds. */
const RAMP = 0.008;
/** Odd harmonics of a triangle wave: softer than a square, and easier to place than a pure tone. */
const HARMONICS = [1, -1 / 9, 1 / 25].map((amplitude, i) => ({ times: 2 * i + 1, amplitude }));
const SUM = HARMONICS.reduce((sum, { amplitude }) => sum + Math.abs(amplitude), 0);

/** Samples per second. */
export const TONE_RATE = 48_000;

/** The beeps as sound. @param peak what no sample exceeds, 0 to 1. @param rate in samples per second */
export function render(beeps: readonly Beep[], peak: number, rate: number): Sound {
  const samples = new Float32Array(Math.ceil((lengthMs(beeps) / 1000) * rate));
  for (const { hertz, atMs, forMs } of beeps) {
    const [from, count] = [Math.round((atMs / 1000) * rate), Math.floor((forMs / 1000) * rate)];
    for (let i = 0; i < count && from + i < samples.length; i++) {
      const phase = (2 * Math.PI * hertz * i) / rate;
      const wave = HARMONICS.reduce((sum, { times, amplitude }) => sum + amplitude * Math.sin(times * phase), 0) / SUM;
      const edge = Math.min(1, Math.min(i, count - 1 - i) / (RAMP * rate));
      samples[from + i] = peak * edge * wave;
    }
  }
  return { samples, rate };
}
