import { powerOf } from '../../hearing/level.ts';

/** Where speech ends in a recording, by its energy alone. */

/** Seconds of one level; short beside a syllable, long beside a pitch period. */
const FRAME_S = 0.01;
/** Frames that a level is averaged over, so that a click is not the loudest speech. */
const SMOOTHED = 5;
/** A frame this far below the loudest is no speech: soft ends of words lie some 25 dB below their vowels. */
const DEPTH_DB = 30;
/** Less difference than this between quiet and loud: there is no telling speech from noise. */
const LEAST_CONTRAST_DB = 6;
/** Part of the frames that is taken for the quiet of the recording. */
const QUIET_PART = 0.1;

/**
 * Seconds from the beginning to the end of the last loud frame: louder than halfway (in dB) between the quiet tenth and the
 * loudest 50 ms, and less than 30 dB below the latter. A blow after the words counts as speech.
 * @param until look only before this, in seconds
 * @returns null where nothing stands out by 6 dB
 */
export function speechEnd(samples: Float32Array, rate: number, until = Infinity): number | null {
  const size = Math.max(1, Math.round(FRAME_S * rate));
  const powers = Array.from({ length: Math.floor(samples.length / size) }, (_, at) =>
    powerOf(samples.subarray(at * size, (at + 1) * size)),
  );
  const quiet = decibels([...powers].sort((a, b) => a - b)[Math.floor(QUIET_PART * powers.length)] ?? 0);
  const loud = decibels(smoothed(powers).reduce((most, power) => Math.max(most, power), 0));
  if (loud - quiet < LEAST_CONTRAST_DB) return null;
  const least = Math.max((quiet + loud) / 2, loud - DEPTH_DB);
  const last = powers
    .slice(0, Math.floor(Math.min(powers.length, (until * rate) / size)))
    .findLastIndex((power) => decibels(power) > least);
  return last < 0 ? null : ((last + 1) * size) / rate;
}

function smoothed(powers: readonly number[]): readonly number[] {
  if (powers.length < SMOOTHED) return powers;
  return powers.slice(SMOOTHED - 1).map((_, at) => mean(powers.slice(at, at + SMOOTHED)));
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Exact zeros count as −120 dB. */
const decibels = (power: number): number => 10 * Math.log10(Math.max(power, 1e-12));
