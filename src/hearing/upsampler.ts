/** Zero crossings of the sinc on either side: the images of speech are then some 50 dB down. */
const CROSSINGS = 16;

/**
 * Raises the rate of sound that comes in pieces, by a sinc under a Hann window. The engine takes any rate above its model's
 * own, and ends at one below it; hands-free telephone headsets give 8 kHz.
 */
export class Upsampler {
  readonly #from: number;
  readonly #to: number;
  /** The newest input samples, and the number of the first of them. */
  #kept = new Float32Array(CROSSINGS);
  #first = -CROSSINGS;
  /** Numbers of the next input sample to come, and of the next output sample to make. */
  #next = 0;
  #made = 0;

  /** @param from and `to`, in hertz; @throws RangeError when the rate would fall */
  constructor(from: number, to: number) {
    if (!(from > 0 && to >= from)) throw new RangeError(`From ${from} Hz to ${to} Hz is no rise.`);
    this.#from = from;
    this.#to = to;
  }

  /** How far the output lags, in output samples: the sinc looks ahead. */
  get lag(): number {
    return Math.ceil((CROSSINGS * this.#to) / this.#from);
  }

  /** All output that these samples complete. The same sound gives the same output, however it is cut into pieces. */
  take(samples: Float32Array): Float32Array<ArrayBuffer> {
    const input = new Float32Array(this.#kept.length + samples.length);
    input.set(this.#kept);
    input.set(samples, this.#kept.length);
    this.#next += samples.length;
    const step = this.#from / this.#to;
    const until = Math.max(this.#made, Math.ceil((this.#next - CROSSINGS) / step));
    const output = new Float32Array(until - this.#made);
    for (let i = 0; i < output.length; i++) output[i] = valueAt((this.#made + i) * step - this.#first, input);
    this.#made = until;
    const keepFrom = Math.max(0, Math.floor(until * step) - CROSSINGS - this.#first);
    this.#kept = input.slice(keepFrom);
    this.#first += keepFrom;
    return output;
  }
}

/** The input between its samples. */
function valueAt(position: number, input: Float32Array): number {
  let sum = 0;
  const last = Math.min(input.length - 1, Math.floor(position) + CROSSINGS);
  for (let at = Math.max(0, Math.ceil(position) - CROSSINGS); at <= last; at++)
    sum += (input[at] ?? 0) * windowedSinc(position - at);
  return sum;
}

function windowedSinc(x: number): number {
  if (x === 0) return 1;
  if (Math.abs(x) >= CROSSINGS) return 0;
  return (Math.sin(Math.PI * x) / (Math.PI * x)) * (0.5 + 0.5 * Math.cos((Math.PI * x) / CROSSINGS));
}
