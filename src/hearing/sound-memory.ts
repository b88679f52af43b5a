import type { AudioChunk, AudioSource } from './types.ts';

/** A piece of remembered sound: 16-bit samples, and when the first and the end of the last were taken. */
export interface RememberedSound {
  readonly samples: Int16Array<ArrayBuffer>;
  /** In hertz. */
  readonly rate: number;
  /** On the `performance.now()` clock, in milliseconds. */
  readonly from: number;
  readonly to: number;
}

interface Piece {
  readonly samples: Int16Array;
  readonly time: number;
}

/** Longer than estimates of when sound was taken correct themselves by: a shorter step in time is no gap. */
const GAP_MS = 250;

/**
 * The last seconds of sound. It holds nothing before `start` and nothing after `stop`, and never more than its seconds,
 * however long it takes.
 */
export class SoundMemory {
  readonly #seconds: number;
  #pieces: Piece[] = [];
  #length = 0;
  #rate = 0;
  #isOn = false;

  constructor(seconds: number) {
    this.#seconds = seconds;
  }

  start(): void {
    this.#isOn = true;
  }

  stop(): void {
    this.#isOn = false;
    this.forget();
  }

  forget(): void {
    this.#pieces = [];
    this.#length = 0;
  }

  /** How many samples are held. */
  get length(): number {
    return this.#length;
  }

  /** Takes the next sound. @param rate in hertz; another one than before begins afresh */
  take({ samples, time }: AudioChunk, rate: number): void {
    if (!this.#isOn) return;
    if (rate !== this.#rate) this.forget();
    this.#rate = rate;
    this.#pieces.push({ samples: inSixteenBits(samples), time });
    this.#length += samples.length;
    while (this.#length > this.#seconds * rate) this.#length -= this.#pieces.shift()?.samples.length ?? this.#length;
  }

  /**
   * The sound between two moments (in milliseconds on the `performance.now()` clock), as far as it is remembered; silence
   * where the microphone was lost. Null where nothing of it is.
   */
  cut(from: number, to: number): RememberedSound | null {
    const pieces = this.#pieces.filter((piece) => this.#endOf(piece) > from && piece.time < to);
    const [first, last] = [pieces[0], pieces.at(-1)];
    if (!first || !last) return null;
    const skipped = this.#samplesIn(from - first.time);
    const beyond = this.#samplesIn(this.#endOf(last) - to);
    const gaps = pieces.map((piece, i) => this.#gapBefore(piece, pieces[i - 1]));
    const whole = new Int16Array(pieces.reduce((sum, { samples }, i) => sum + samples.length + (gaps[i] ?? 0), 0));
    let at = 0;
    for (const [i, { samples }] of pieces.entries()) {
      at += gaps[i] ?? 0;
      whole.set(samples, at);
      at += samples.length;
    }
    const samples = whole.slice(skipped, whole.length - beyond);
    if (samples.length === 0) return null;
    const begin = first.time + (skipped / this.#rate) * 1000;
    return { samples, rate: this.#rate, from: begin, to: begin + (samples.length / this.#rate) * 1000 };
  }

  #endOf({ samples, time }: Piece): number {
    return time + (samples.length / this.#rate) * 1000;
  }

  #samplesIn(milliseconds: number): number {
    return Math.max(0, Math.round((milliseconds * this.#rate) / 1000));
  }

  #gapBefore(piece: Piece, before: Piece | undefined): number {
    const gap = before ? piece.time - this.#endOf(before) : 0;
    return gap > GAP_MS ? this.#samplesIn(gap) : 0;
  }
}

/** As microphones give them. Copied: whoever decodes the samples may take their memory away. */
const inSixteenBits = (samples: Float32Array): Int16Array =>
  Int16Array.from(samples, (sample) => Math.max(-32768, Math.min(32767, Math.round(sample * 32768))));

/**
 * A source whose sound is remembered on its way.
 * @param mayTake whether sound may be taken at this moment: not while a person has closed the ear
 */
export function remembered(source: AudioSource, memory: SoundMemory, mayTake: () => boolean): AudioSource {
  return {
    async open(sink) {
      // What comes before the device has said its rate is not remembered.
      let rate: number | null = null;
      const opened = await source.open({
        ...sink,
        chunk: (chunk) => {
          if (rate !== null && mayTake()) memory.take(chunk, rate);
          return sink.chunk(chunk);
        },
      });
      rate = opened.sampleRate;
      return opened;
    },
  };
}
