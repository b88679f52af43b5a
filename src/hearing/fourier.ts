/**
 * The discrete Fourier transform of complex numbers, in place, without a factor (Stockham's order, as in Van Loan,
 * Computational Frameworks for the Fast Fourier Transform, 1992), for one size: its table is made once.
 */
export class Fourier {
  readonly #size: number;
  readonly #turns: Float32Array;
  readonly #spare: Float32Array;

  /** @param size a power of two, 4 at least; @throws RangeError when it is not */
  constructor(size: number) {
    if (!Number.isInteger(Math.log2(size)) || size < 4) throw new RangeError(`${size} is no power of two.`);
    this.#size = size;
    // A quarter more than a turn holds both: the sine, and a quarter on the cosine.
    this.#turns = Float32Array.from({ length: 1.25 * size }, (_, at) => Math.sin((2 * Math.PI * at) / size));
    this.#spare = new Float32Array(2 * size);
  }

  /** With the two parts changed over it is the way back, but for a factor of the size. */
  there(real: Float32Array, imaginary: Float32Array): void {
    const [size, turns] = [this.#size, this.#turns];
    let [fromReal, fromImaginary] = [real, imaginary];
    let [toReal, toImaginary] = [this.#spare.subarray(0, size), this.#spare.subarray(size)];
    for (let step = 1; step < size; step *= 2) {
      for (let at = 0; at < size / 2; at++) {
        const turn = at - (at % step);
        const [sine, cosine] = [turns[turn] ?? 0, turns[turn + size / 4] ?? 0];
        const [a, b] = [fromReal[at] ?? 0, fromImaginary[at] ?? 0];
        const [c, d] = [fromReal[at + size / 2] ?? 0, fromImaginary[at + size / 2] ?? 0];
        const to = at + turn;
        toReal[to] = a + c;
        toImaginary[to] = b + d;
        toReal[to + step] = (a - c) * cosine + (b - d) * sine;
        toImaginary[to + step] = (b - d) * cosine - (a - c) * sine;
      }
      [fromReal, fromImaginary, toReal, toImaginary] = [toReal, toImaginary, fromReal, fromImaginary];
    }
    if (fromReal === real) return;
    real.set(fromReal);
    imaginary.set(fromImaginary);
  }
}
