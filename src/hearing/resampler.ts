/** Zero crossings of the sinc on either side: the images of speech are then some 50 dB down. */
const CROSSINGS = 16;

/** Parts of the way between two input samples that are told apart; what that rounds is further down than the images. */
const FINEST = 4096;

/** Changes the rate of sound that comes in pieces, by a sinc under a Hann window. */
export class Resampler {
  /** Input samples for each output sample. */
  readonly #step: number;
  /** Input samples on either side that one output sample is made of: more where the rate falls, to cut off what it cannot carry. */
  readonly #reach: number;
  readonly #weights = new Map<number, Float32Array>();
  /** The newest input samples, and the number of the first of them. */
  #kept: Float32Array;
  #first: number;
  /** Numbers of the next input sample to come, and of the next output sample to make. */
  #next = 0;
  #made = 0;

  /** @param from and `to`, in hertz; @throws RangeError when one is no rate */
  constructor(from: number, to: number) {
    if (!(from > 0 && to > 0)) throw new RangeError(`From ${from} Hz to ${to} Hz there is no way.`);
    this.#step = from / to;
    this.#reach = Math.ceil(CROSSINGS * Math.max(1, this.#step));
    this.#kept = new Float32Array(this.#reach);
    this.#first = -this.#reach;
  }

  /** How far the output lags, in output samples: the sinc looks ahead. */
  get lag(): number {
    return Math.ceil(this.#reach / this.#step);
  }

  /** All output that these samples complete. The same sound gives the same output, however it is cut into pieces. */
  take(samples: Float32Array): Float32Array<ArrayBuffer> {
    const input = new Float32Array(this.#kept.length + samples.length);
    input.set(this.#kept);
    input.set(samples, this.#kept.length);
    this.#next += samples.length;
    const [step, reach] = [this.#step, this.#reach];
    const until = Math.max(this.#made, Math.ceil((this.#next - reach) / step));
    const output = new Float32Array(until - this.#made);
    for (let i = 0; i < output.length; i++) output[i] = this.#valueAt((this.#made + i) * step - this.#first, input);
    this.#made = until;
    const keepFrom = Math.max(0, Math.floor(until * step) - reach - this.#first);
    this.#kept = input.slice(keepFrom);
    this.#first += keepFrom;
    return output;
  }

  /** The input between its samples. */
  #valueAt(position: number, input: Float32Array): number {
    const before = Math.floor(position);
    const weights = this.#weightsAt(position - before);
    const from = before - this.#reach;
    const last = Math.min(weights.length, input.length - from);
    let sum = 0;
    for (let i = Math.max(0, -from); i < last; i++) sum += (input[from + i] ?? 0) * (weights[i] ?? 0);
    return sum;
  }

  /** What each input sample around it counts for, at this part of the way from one to the next. Few such parts come again and again. */
  #weightsAt(part: number): Float32Array {
    const key = Math.round(part * FINEST);
    const known = this.#weights.get(key);
    if (known) return known;
    const narrow = 1 / Math.max(1, this.#step);
    const weights = Float32Array.from(
      { length: 2 * this.#reach + 1 },
      (_, i) => windowedSinc((key / FINEST + this.#reach - i) * narrow) * narrow,
    );
    this.#weights.set(key, weights);
    return weights;
  }
}

function windowedSinc(x: number): number {
  if (x === 0) return 1;
  if (Math.abs(x) >= CROSSINGS) return 0;
  return (Math.sin(Math.PI * x) / (Math.PI * x)) * (0.5 + 0.5 * Math.cos((Math.PI * x) / CROSSINGS));
}
