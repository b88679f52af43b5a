/**
 * The discrete Fourier transform of complex numbers, in place (Cooley and Tukey 1965), for one size: tables are made once.
 * Without a factor there; back, divided by the size.
 */
export class Fourier {
  readonly size: number;
  readonly #cosines: Float32Array;
  readonly #sines: Float32Array;
  readonly #turned: Uint16Array;

  /** @param size a power of two, up to 65 536; @throws RangeError when it is not */
  constructor(size: number) {
    const bits = Math.log2(size);
    if (!(Number.isInteger(bits) && bits >= 1 && bits <= 16)) throw new RangeError(`${size} is no power of two.`);
    this.size = size;
    this.#cosines = Float32Array.from({ length: size / 2 }, (_, at) => Math.cos((2 * Math.PI * at) / size));
    this.#sines = Float32Array.from({ length: size / 2 }, (_, at) => Math.sin((2 * Math.PI * at) / size));
    this.#turned = new Uint16Array(size);
    for (let at = 0; at < size; at++) this.#turned[at] = ((this.#turned[at >> 1] ?? 0) >> 1) | (at & 1 ? size >> 1 : 0);
  }

  there(real: Float32Array, imaginary: Float32Array): void {
    const { size } = this;
    const [cosines, sines, turned] = [this.#cosines, this.#sines, this.#turned];
    for (let at = 0; at < size; at++) {
      const to = turned[at] ?? 0;
      if (to <= at) continue;
      const [re, im] = [real[at] ?? 0, imaginary[at] ?? 0];
      real[at] = real[to] ?? 0;
      imaginary[at] = imaginary[to] ?? 0;
      real[to] = re;
      imaginary[to] = im;
    }
    for (let half = 1; half < size; half *= 2) {
      const step = size / (2 * half);
      for (let from = 0; from < size; from += 2 * half) {
        for (let i = 0; i < half; i++) {
          const [c, s] = [cosines[i * step] ?? 0, sines[i * step] ?? 0];
          const [a, b] = [from + i, from + i + half];
          const [re, im] = [real[b] ?? 0, imaginary[b] ?? 0];
          const [x, y] = [re * c + im * s, im * c - re * s];
          real[b] = (real[a] ?? 0) - x;
          imaginary[b] = (imaginary[a] ?? 0) - y;
          real[a] = (real[a] ?? 0) + x;
          imaginary[a] = (imaginary[a] ?? 0) + y;
        }
      }
    }
  }

  back(real: Float32Array, imaginary: Float32Array): void {
    // With the two parts changed over, there is back.
    this.there(imaginary, real);
    for (let at = 0; at < this.size; at++) {
      real[at] = (real[at] ?? 0) / this.size;
      imaginary[at] = (imaginary[at] ?? 0) / this.size;
    }
  }
}
