/** Long enough to hold a pause between words, short enough that a machine that stops is soon noticed, in frames of 20 ms. */
const MEMORY_FRAMES = 200;
/** Levels are of this many frames together: a single one jumps, and its least value would lie far under the noise. */
const SMOOTHING_FRAMES = 5;
/** Before this many frames there is no floor: it could be a word's beginning. */
const FIRST_FRAMES = 25;

export interface Floor {
  /** The mean power of the newest frames, in dBFS. */
  readonly level: number;
  /** The least such level of the last four seconds; null in the first half second. It is never above the level. */
  readonly noise: number | null;
}

/**
 * How loud the background is, from levels alone: minimum statistics (R. Martin, "Noise power spectral density estimation
 * based on optimal smoothing and minimum statistics", 2001), over the whole band and without its correction of bias.
 * Speech has pauses, so it does not raise the floor; blows and hisses that come and go do not either, so that the mean of
 * such noise lies some decibels above.
 */
export class NoiseFloor {
  /** dBFS, oldest first. */
  readonly #levels: number[] = [];
  readonly #powers: number[] = [];

  /** @param power mean square of one frame of 20 ms, more than 0 */
  take(power: number): Floor {
    this.#powers.push(power);
    this.#powers.splice(0, this.#powers.length - SMOOTHING_FRAMES);
    const level = decibels(this.#powers.reduce((sum, each) => sum + each, 0) / this.#powers.length);
    this.#levels.push(level);
    this.#levels.splice(0, this.#levels.length - MEMORY_FRAMES);
    return { level, noise: this.#levels.length < FIRST_FRAMES ? null : Math.min(...this.#levels) };
  }
}

/** Of a power: the mean square of samples, where a full-scale square wave has 0 dBFS. */
export const decibels = (power: number): number => 10 * Math.log10(power);
export const powerOf = (decibels: number): number => 10 ** (decibels / 10);

/** Mean square about the mean: some sound cards add a constant. What is no number counts as 0. */
export function powerWithoutOffset(samples: Float32Array): number {
  const finite = samples.map((sample) => (Number.isFinite(sample) ? sample : 0));
  const mean = finite.reduce((sum, sample) => sum + sample, 0) / finite.length;
  return finite.reduce((sum, sample) => sum + (sample - mean) ** 2, 0) / finite.length;
}
