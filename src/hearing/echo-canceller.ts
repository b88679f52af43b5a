import { Fourier } from './fourier.ts';

/** Samples that are learned from at a time: 16 ms at 16 kHz. */
const BLOCK = 256;
const SIZE = 2 * BLOCK;
/** Blocks that the path from loudspeaker to microphone is long: 256 ms, the direct sound and most of what walls give back. */
const PARTS = 16;
/** Of zero hertz and the positive frequencies; the others are known by them. */
const BINS = BLOCK + 1;
/** How wrong it may be at first that nothing comes from the loudspeaker: its direct sound is loud, what walls give back less so. */
const FIRST_DOUBT = 0.3;
const DOUBT_FALLS = 3;
/** Of what is known of the room, so much still holds a block later: nearer to 1 it stays learned better, and another room is learned later. */
const HOLDS = 0.999 ** 2;
/** Share of older blocks in what is heard beside the echo. */
const LASTS = 0.7;
/** Parts that are held to their length after each block, in turn: learned by frequency, they come to hold what is longer. */
const TIGHTENED = 2;
/** Against division by nothing. */
const LEAST = 1e-6;

/** By frequency. */
class Spectrum {
  readonly real = new Float32Array(SIZE);
  readonly imaginary = new Float32Array(SIZE);

  powerAt(bin: number): number {
    return (this.real[bin] ?? 0) ** 2 + (this.imaginary[bin] ?? 0) ** 2;
  }
}

/** A block of the path, and what was played so many blocks ago. */
interface Part {
  path: Spectrum;
  /** How far the path may be wrong: the variance, by frequency. */
  readonly doubt: Float32Array;
  played: Spectrum;
}

/**
 * Takes what is played out of what is heard, and learns the room as it goes: a Kalman filter of the path's blocks by frequency
 * (Enzner and Vary, Signal Processing 86, 2006; in blocks: Kuech, Mabande and Enzner, ICASSP 2014). For each frequency it knows
 * how far it may be wrong, and how much is heard beside the echo: so a person who speaks over it does not unteach it.
 */
export class EchoCanceller {
  readonly #fourier = new Fourier(SIZE);
  readonly #parts = Array.from({ length: PARTS }, (_, part): Part => ({
    path: new Spectrum(),
    doubt: new Float32Array(BINS).fill(FIRST_DOUBT * Math.exp(-part / DOUBT_FALLS)),
    played: new Spectrum(),
  }));
  /** Power of what is heard beside the echo, by frequency. At first much: what is heard in the first blocks may be anybody. */
  readonly #beside = new Float32Array(BINS).fill(1);
  /** What was played in the block before this one and, so far, in this one. */
  readonly #sound = new Float32Array(SIZE);
  readonly #heard = new Float32Array(BLOCK);
  #filled = 0;
  #tightened = 0;

  /** After a gap: what was played before it is heard no more. */
  begin(): void {
    for (const part of this.#parts) part.played = new Spectrum();
    this.#sound.fill(0);
    this.#filled = 0;
  }

  /**
   * @param heard what the microphone gave
   * @param played what the loudspeaker gave meanwhile, as long; it may run ahead of the microphone by up to 256 ms, never behind
   * @param learns whether it is sure that the two are of the same time
   * @returns what is left, as long
   */
  cancel(heard: Float32Array, played: Float32Array, learns = true): Float32Array<ArrayBuffer> {
    const left = new Float32Array(heard.length);
    for (let at = 0; at < heard.length;) {
      const from = this.#filled;
      const until = Math.min(BLOCK, from + heard.length - at);
      this.#sound.set(played.subarray(at, at + until - from), BLOCK + from);
      this.#heard.set(heard.subarray(at, at + until - from), from);
      const beside = this.#withoutEcho();
      left.set(beside.subarray(from, until), at);
      at += until - from;
      this.#filled = until % BLOCK;
      if (this.#filled > 0) continue;
      if (learns) this.#learn(beside);
      this.#goOn();
    }
    return left;
  }

  /** @returns what the microphone hears of this, if it was all that is played, by what is known of the room: as long */
  echoOf(played: Float32Array): Float32Array {
    const other = new EchoCanceller();
    other.#parts.forEach((part, at) => (part.path = this.#parts[at]?.path ?? part.path));
    const echo = new Float32Array(played.length);
    for (let at = 0; at + BLOCK <= played.length; at += BLOCK) {
      other.#sound.set(played.subarray(at, at + BLOCK), BLOCK);
      echo.set(
        other.#withoutEcho().map((sample) => -sample),
        at,
      );
      other.#goOn();
    }
    return echo;
  }

  /** The block, as far as it has come. */
  #withoutEcho(): Float32Array {
    const newest = this.#parts[0]?.played ?? new Spectrum();
    newest.real.set(this.#sound);
    newest.imaginary.fill(0);
    this.#fourier.there(newest.real, newest.imaginary);
    const echo = new Spectrum();
    const { real, imaginary } = echo;
    for (const { path, played } of this.#parts) {
      for (let bin = 0; bin < BINS; bin++) {
        const [a, b] = [played.real[bin] ?? 0, played.imaginary[bin] ?? 0];
        const [c, d] = [path.real[bin] ?? 0, path.imaginary[bin] ?? 0];
        real[bin] = (real[bin] ?? 0) + a * c - b * d;
        imaginary[bin] = (imaginary[bin] ?? 0) + a * d + b * c;
      }
    }
    this.#intoTime(echo);
    return this.#heard.map((sample, at) => sample - (echo.real[BLOCK + at] ?? 0));
  }

  #tighten(): void {
    this.#tightened = (this.#tightened + 1) % PARTS;
    const path = this.#parts[this.#tightened]?.path;
    if (!path) return;
    this.#intoTime(path);
    path.real.fill(0, BLOCK);
    path.imaginary.fill(0);
    this.#fourier.there(path.real, path.imaginary);
  }

  /** A real sound has the negative frequencies by the positive ones. */
  #intoTime({ real, imaginary }: Spectrum): void {
    for (let bin = 1; bin < BLOCK; bin++) {
      real[SIZE - bin] = real[bin] ?? 0;
      imaginary[SIZE - bin] = -(imaginary[bin] ?? 0);
    }
    this.#fourier.there(imaginary, real);
    for (let at = 0; at < SIZE; at++) real[at] = (real[at] ?? 0) / SIZE;
  }

  /** @param left of the whole block */
  #learn(left: Float32Array): void {
    const spectrum = new Spectrum();
    spectrum.real.set(left, BLOCK);
    this.#fourier.there(spectrum.real, spectrum.imaginary);
    for (let bin = 0; bin < BINS; bin++) {
      const [a, b] = [spectrum.real[bin] ?? 0, spectrum.imaginary[bin] ?? 0];
      const beside = LASTS * (this.#beside[bin] ?? 0) + (1 - LASTS) * spectrum.powerAt(bin);
      this.#beside[bin] = beside;
      let unsure = 0;
      for (const { played, doubt } of this.#parts) unsure += played.powerAt(bin) * (doubt[bin] ?? 0);
      // Half of each transform is this block, the other half the one before.
      const all = unsure / 2 + beside + LEAST;
      for (const { path, played, doubt } of this.#parts) {
        const [c, d] = [played.real[bin] ?? 0, played.imaginary[bin] ?? 0];
        const by = (doubt[bin] ?? 0) / all;
        path.real[bin] = (path.real[bin] ?? 0) + by * (c * a + d * b);
        path.imaginary[bin] = (path.imaginary[bin] ?? 0) + by * (c * b - d * a);
        const known = (1 - (by / 2) * played.powerAt(bin)) * (doubt[bin] ?? 0);
        doubt[bin] = HOLDS * known + (1 - HOLDS) * path.powerAt(bin);
      }
    }
    for (let time = 0; time < TIGHTENED; time++) this.#tighten();
  }

  /** One block on. */
  #goOn(): void {
    this.#sound.copyWithin(0, BLOCK);
    this.#sound.fill(0, BLOCK);
    const oldest = this.#parts.at(-1)?.played ?? new Spectrum();
    for (let part = PARTS - 1; part > 0; part--) {
      const [older, newer] = [this.#parts[part], this.#parts[part - 1]];
      if (older && newer) older.played = newer.played;
    }
    if (this.#parts[0]) this.#parts[0].played = oldest;
  }
}
