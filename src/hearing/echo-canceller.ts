import { Fourier } from './fourier.ts';

/** Samples that are learned from at a time: 16 ms at 16 kHz. */
const BLOCK = 256;
const SIZE = 2 * BLOCK;
/** Blocks that the path from loudspeaker to microphone is long: 256 ms, the direct sound and most of what walls give back. */
const PARTS = 16;
/** Of zero hertz and the positive frequencies. */
const BINS = BLOCK + 1;
/** What is known of the room at first: the power of its direct sound, and fewer of later ones. */
const FIRST_DOUBT = 0.3;
const DOUBT_FALLS = 3;
/** Of what is known of the room, so much still holds a block later: nearer to 1 it stays learned better, and another room is learned later. */
const HOLDS = 0.999;
/** Share of older blocks in what is heard beside the echo. */
const BESIDE_LASTS = 0.7;
/** Against division by nothing. */
const LEAST = 1e-6;
/** Parts that are held to their length after each block, in turn. */
const TIGHTENED = 2;

/** The positive frequencies; the others are known by them. */
interface Spectrum {
  readonly real: Float32Array;
  readonly imaginary: Float32Array;
}
const spectrum = (): Spectrum => ({ real: new Float32Array(SIZE), imaginary: new Float32Array(SIZE) });
const parts = <T>(make: (part: number) => T): readonly T[] => Array.from({ length: PARTS }, (_, part) => make(part));

/**
 * Takes what is played out of what is heard, and learns the room as it goes: a Kalman filter of the path's blocks by frequency
 * (Enzner and Vary, Signal Processing 86, 2006; in blocks: Kuech, Mabande and Enzner, ICASSP 2014). For each frequency it knows
 * how far it may be wrong, and how loud it is beside the echo: so a person who speaks over it does not unteach it.
 */
export class EchoCanceller {
  readonly #fourier = new Fourier(SIZE);
  readonly #path = parts(spectrum);
  /** What was played, by block; the newest stands at `#newest`, the others follow it. */
  readonly #played = parts(spectrum);
  /** How far each part of the path may be wrong: the variance, by frequency. */
  readonly #doubt = parts((part) => new Float32Array(BINS).fill(FIRST_DOUBT * Math.exp(-part / DOUBT_FALLS)));
  /** Power of what is heard beside the echo, by frequency. */
  readonly #beside = new Float32Array(BINS);
  #newest = 0;
  #tightened = 0;
  /** What was played in the block before this one and, so far, in this one. */
  readonly #sound = new Float32Array(SIZE);
  readonly #heard = new Float32Array(BLOCK);
  #filled = 0;

  /** After a gap: what was played before it is no longer heard. */
  begin(): void {
    for (const { real, imaginary } of this.#played) {
      real.fill(0);
      imaginary.fill(0);
    }
    this.#sound.fill(0);
    this.#filled = 0;
  }

  /**
   * @param heard what the microphone gave
   * @param played what the loudspeaker gave meanwhile, as long; it may run ahead of the microphone by up to 256 ms, never behind
   * @returns what is left, as long
   */
  cancel(heard: Float32Array, played: Float32Array): Float32Array<ArrayBuffer> {
    const left = new Float32Array(heard.length);
    for (let at = 0; at < heard.length;) {
      const from = this.#filled;
      const until = Math.min(BLOCK, from + heard.length - at);
      this.#sound.set(played.subarray(at, at + until - from), BLOCK + from);
      this.#heard.set(heard.subarray(at, at + until - from), from);
      const echo = this.#echo();
      for (let i = from; i < until; i++, at++) left[at] = (heard[at] ?? 0) - (echo[BLOCK + i] ?? 0);
      this.#filled = until % BLOCK;
      if (this.#filled === 0) this.#learn(echo);
    }
    return left;
  }

  /** The second half is the echo of the block, as far as it has come. */
  #echo(): Float32Array {
    const newest = this.#playedAt(0);
    newest.real.set(this.#sound);
    newest.imaginary.fill(0);
    this.#fourier.there(newest.real, newest.imaginary);
    const echo = spectrum();
    this.#path.forEach(({ real, imaginary }, part) => {
      const played = this.#playedAt(part);
      for (let bin = 0; bin < BINS; bin++) {
        const [a, b] = [played.real[bin] ?? 0, played.imaginary[bin] ?? 0];
        const [c, d] = [real[bin] ?? 0, imaginary[bin] ?? 0];
        echo.real[bin] = (echo.real[bin] ?? 0) + a * c - b * d;
        echo.imaginary[bin] = (echo.imaginary[bin] ?? 0) + a * d + b * c;
      }
    });
    this.#inTime(echo);
    return echo.real;
  }

  /** @param echo of the whole block */
  #learn(echo: Float32Array): void {
    const left = spectrum();
    for (let i = 0; i < BLOCK; i++) left.real[BLOCK + i] = (this.#heard[i] ?? 0) - (echo[BLOCK + i] ?? 0);
    this.#fourier.there(left.real, left.imaginary);
    for (let bin = 0; bin < BINS; bin++) {
      const [a, b] = [left.real[bin] ?? 0, left.imaginary[bin] ?? 0];
      const beside = BESIDE_LASTS * (this.#beside[bin] ?? 0) + (1 - BESIDE_LASTS) * (a * a + b * b);
      this.#beside[bin] = beside;
      let unsure = 0;
      for (let part = 0; part < PARTS; part++)
        unsure += powerAt(this.#playedAt(part), bin) * (this.#doubt[part]?.[bin] ?? 0);
      // Half of each transform is this block, the other half the one before.
      const all = unsure / 2 + beside + LEAST;
      this.#path.forEach((path, part) => {
        const [played, doubts] = [this.#playedAt(part), this.#doubt[part]];
        if (!doubts) return;
        const [c, d, doubt] = [played.real[bin] ?? 0, played.imaginary[bin] ?? 0, doubts[bin] ?? 0];
        const by = doubt / all;
        path.real[bin] = (path.real[bin] ?? 0) + by * (c * a + d * b);
        path.imaginary[bin] = (path.imaginary[bin] ?? 0) + by * (c * b - d * a);
        const known = HOLDS ** 2 * (1 - (by / 2) * (c * c + d * d)) * doubt;
        doubts[bin] = known + (1 - HOLDS ** 2) * powerAt(path, bin);
      });
    }
    for (let time = 0; time < TIGHTENED; time++) this.#tighten();
    this.#sound.copyWithin(0, BLOCK);
    this.#sound.fill(0, BLOCK);
    this.#newest = (this.#newest + PARTS - 1) % PARTS;
  }

  /** Learned by frequency, a part comes to hold what is longer than a block. */
  #tighten(): void {
    this.#tightened = (this.#tightened + 1) % PARTS;
    const path = this.#path[this.#tightened];
    if (!path) return;
    this.#inTime(path);
    path.real.fill(0, BLOCK);
    path.imaginary.fill(0);
    this.#fourier.there(path.real, path.imaginary);
  }

  #inTime({ real, imaginary }: Spectrum): void {
    for (let bin = 1; bin < BLOCK; bin++) {
      real[SIZE - bin] = real[bin] ?? 0;
      imaginary[SIZE - bin] = -(imaginary[bin] ?? 0);
    }
    this.#fourier.back(real, imaginary);
  }

  /** @param part so many blocks ago */
  #playedAt(part: number): Spectrum {
    const played = this.#played[(this.#newest + part) % PARTS];
    if (!played) throw new RangeError(`${part} is no part of the path.`);
    return played;
  }
}

const powerAt = ({ real, imaginary }: Spectrum, bin: number): number =>
  (real[bin] ?? 0) ** 2 + (imaginary[bin] ?? 0) ** 2;
