import { Resampler } from './resampler.ts';

interface Piece {
  samples: Float32Array;
  readonly from: number;
}

/** What the loudspeaker was given, on one time line. */
export class PlayedTrack {
  readonly #rate: number;
  #pieces: Piece[] = [];

  /** @param rate of what is read from it, in hertz */
  constructor(rate: number) {
    this.#rate = rate;
  }

  /**
   * @param samples at `rate` hertz
   * @param from when the first of them sounds, in milliseconds
   * @returns to call where it is stopped before its end, with the time of that
   */
  add(samples: Float32Array, rate: number, from: number): (stopped: number) => void {
    const resampler = rate === this.#rate ? null : new Resampler(rate, this.#rate);
    const piece: Piece = { samples: resampler ? resampler.take(samples) : samples, from };
    this.#pieces.push(piece);
    return (stopped) => {
      piece.samples = piece.samples.slice(0, Math.max(0, this.#count(stopped - from)));
    };
  }

  /** Forgets what ended before a time, in milliseconds. */
  forgetBefore(time: number): void {
    this.#pieces = this.#pieces.filter(({ samples, from }) => from + (samples.length / this.#rate) * 1000 >= time);
  }

  /** @param from in milliseconds @returns so many samples from there on; zeros where nothing was played */
  read(from: number, count: number): Float32Array<ArrayBuffer> {
    const read = new Float32Array(count);
    for (const piece of this.#pieces) {
      const offset = this.#count(from - piece.from);
      const first = Math.max(0, -offset);
      const last = Math.min(count, piece.samples.length - offset);
      for (let at = first; at < last; at++) read[at] = (read[at] ?? 0) + (piece.samples[at + offset] ?? 0);
    }
    return read;
  }

  readonly #count = (ms: number): number => Math.round((ms / 1000) * this.#rate);
}
