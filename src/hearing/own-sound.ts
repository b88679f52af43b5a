import { EchoCanceller } from './echo-canceller.ts';
import { echoDelay } from './echo-delay.ts';
import { powerOf, type Beside } from './hush-ear.ts';
import { PlayedTrack } from './played-track.ts';
import { Resampler } from './resampler.ts';
import type { AudioChunk } from './types.ts';

/** Enough for words; the echo canceller's work grows with its square. In hertz. */
export const WORD_RATE = 16_000;
const MS = WORD_RATE / 1000;
/** A wireless loudspeaker may sound a third of a second after it was given something, and clocks differ. In samples. */
const [LEAST_DELAY, MOST_DELAY] = [-50 * MS, 400 * MS];
/** What the delay is found from. In samples. */
const LISTENED = 700 * MS;
/** The echo canceller is given what was played so much earlier than it is heard: the delay is known coarsely. In samples. */
const EARLY = 10 * MS;
/** Chunks that follow one another are no further apart, in milliseconds. */
const GAP_MS = 20;

/** What the microphone hears beside what the app itself plays: so that a person is heard over its voice. */
export class OwnSound {
  readonly #rate: number;
  readonly #track = new PlayedTrack(WORD_RATE);
  readonly #canceller = new EchoCanceller();
  #resampler: Resampler;
  /** When the next chunk begins, if it follows, in milliseconds. */
  #next = -Infinity;
  /** In samples; null until it was heard, as with a headset it never is. */
  #delay: number | null = null;
  /** The newest of what was heard, and when it ended. */
  #heard = new Float32Array(LISTENED);
  #fresh = 0;

  /** @param rate of the microphone's sound, in hertz */
  constructor(rate: number) {
    this.#rate = rate;
    this.#resampler = new Resampler(rate, WORD_RATE);
  }

  /**
   * @param from when the first sample is given to the loudspeaker, in milliseconds
   * @returns to call where it is stopped before its end, with the time of that
   */
  plays(samples: Float32Array, rate: number, from: number): (stopped: number) => void {
    this.#track.forgetBefore(from - 2 * (MOST_DELAY / MS) - LISTENED / MS);
    this.#fresh = 0;
    return this.#track.add(samples, rate, from);
  }

  /** @returns about the same moment, at `WORD_RATE`, without what the app plays; as it was heard while the way to the microphone is not known */
  without({ samples, time }: AudioChunk): Beside {
    if (Math.abs(time - this.#next) > GAP_MS) this.#resampler = new Resampler(this.#rate, WORD_RATE);
    this.#next = time + (samples.length / this.#rate) * 1000;
    const lagMs = this.#resampler.lag / MS;
    const heard = this.#resampler.take(samples);
    const end = this.#next - lagMs;
    const start = end - heard.length / MS;
    this.#listen(heard, end);
    const heardPower = powerOf(heard);
    if (this.#delay === null) return { samples: heard, time: start, heardPower };
    const played = this.#track.read(start - (this.#delay - EARLY) / MS, heard.length);
    return { samples: this.#canceller.cancel(heard, played), time: start, heardPower };
  }

  /** Finds the delay anew each time that something begins to be played. */
  #listen(heard: Float32Array, end: number): void {
    const before = this.#fresh;
    this.#heard.copyWithin(0, heard.length);
    this.#heard.set(heard.slice(-LISTENED), Math.max(0, LISTENED - heard.length));
    this.#fresh += heard.length;
    if (before >= LISTENED || this.#fresh < LISTENED) return;
    const from = end - LISTENED / MS - MOST_DELAY / MS;
    const played = this.#track.read(from, LISTENED + MOST_DELAY - LEAST_DELAY);
    this.#delay = echoDelay(this.#heard, played, LEAST_DELAY, MOST_DELAY) ?? this.#delay;
  }
}
