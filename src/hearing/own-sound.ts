import { EchoCanceller } from './echo-canceller.ts';
import { echoDelay } from './echo-delay.ts';
import { powerOf } from './level.ts';
import { PlayedTrack } from './played-track.ts';
import { Resampler } from './resampler.ts';
import type { AudioChunk } from './types.ts';

/** Enough for words. In hertz. */
export const WORD_RATE = 16_000;
const MS = WORD_RATE / 1000;
/** A wireless loudspeaker may sound a third of a second after it was given something, and clocks differ. In samples. */
const [LEAST_DELAY, MOST_DELAY] = [-50 * MS, 400 * MS];
/** What the delay is found from. In samples. */
const LISTENED = 700 * MS;
/** The echo canceller is given what was played so much earlier than it is heard: a clock that wavers may not put it behind. In samples. */
const EARLY = 10 * MS;
/** Nobody tells to the sample when something begins to sound. Found anew from so much of it, so far from where it was. In samples. */
const BEGINNING = 250 * MS;
const UNSURE = 25 * MS;
/** So much less must be left by another way than by the one that was known. As a ratio of powers. */
const BETTER = 1.5;
/** What is heard longer after it was played is not followed. In samples. */
const LONGEST = 256 * MS;
/** As little of what was heard is left where the way is the right one. As a ratio of powers. */
const TAKEN_OUT = 0.1;
/** What was heard until the way was known is learned from so often. */
const REPEATS = 2;
/** More than was heard, and this much more, is an echo that is taken out and is not there. As a ratio of powers. */
const FALSE_ECHO = 4;
/** Share of the newest chunk in what is usual: over a quarter of a second, so that one pause between words tells nothing. */
const LATELY = 0.15;
/** Chunks that follow one another are no further apart, in milliseconds. */
const GAP_MS = 20;

/** Sound without what the app plays, and the power that it had with it. */
export interface Beside extends AudioChunk {
  readonly heardPower: number;
}

/** What the microphone hears beside what the app itself plays: so that a person is heard over its voice. */
export class OwnSound {
  readonly #rate: number;
  readonly #track = new PlayedTrack(WORD_RATE);
  #canceller = new EchoCanceller();
  #resampler: Resampler;
  /** When the next chunk begins, if it follows, in milliseconds. */
  #next = -Infinity;
  /** When what is returned next begins: counted in samples from the last gap, for the clock of the chunks wavers. In milliseconds. */
  #at = 0;
  /** In samples; null until it was heard, as with a headset it never is. */
  #delay: number | null = null;
  /** The newest of what was heard, and how much of it has come since something began to be played. */
  #heard = new Float32Array(LISTENED);
  #fresh = 0;
  /** Whether what is played now is known to the sample. */
  #isAligned = false;
  /** Powers of the last chunks, as they were heard and as they were left. */
  #usuallyHeard = 0;
  #usuallyLeft = 0;

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
    if (this.#fresh >= LISTENED) {
      this.#fresh = 0;
      this.#isAligned = false;
    }
    return this.#track.add(samples, rate, from);
  }

  /** @returns about the same moment, at `WORD_RATE`, without what the app plays; as it was heard while the way to the microphone is not known */
  without({ samples, time }: AudioChunk): Beside {
    if (Math.abs(time - this.#next) > GAP_MS) this.#beginAt(time);
    this.#next = time + (samples.length / this.#rate) * 1000;
    // One sample that is no number would stay in what is learned for ever.
    const heard = this.#resampler.take(samples.map((sample) => (Number.isFinite(sample) ? sample : 0)));
    const start = this.#at;
    this.#at += heard.length / MS;
    const heardPower = powerOf(heard);
    const left = this.#delay === null ? heard : this.#takeOut(heard, heardPower, start, this.#delay);
    this.#listen(heard, this.#at);
    return { samples: left, time: start, heardPower };
  }

  #takeOut(
    heard: Float32Array<ArrayBuffer>,
    heardPower: number,
    start: number,
    delay: number,
  ): Float32Array<ArrayBuffer> {
    const learns = this.#isAligned || this.#fresh >= LISTENED;
    const left = this.#canceller.cancel(heard, this.#playedAt(start, delay, heard.length), learns);
    this.#usuallyHeard += LATELY * (heardPower - this.#usuallyHeard);
    this.#usuallyLeft += LATELY * (powerOf(left) - this.#usuallyLeft);
    const isLess = this.#usuallyLeft <= this.#usuallyHeard;
    // The way to the microphone is another one, or there is none any more.
    if (learns && this.#usuallyLeft > FALSE_ECHO * this.#usuallyHeard) this.#forget();
    return isLess ? left : heard;
  }

  #beginAt(time: number): void {
    this.#resampler = new Resampler(this.#rate, WORD_RATE);
    this.#canceller.begin();
    this.#at = time;
    this.#heard.fill(0);
    this.#fresh = 0;
  }

  #forget(): void {
    this.#canceller = new EchoCanceller();
    this.#delay = null;
    this.#fresh = 0;
    this.#usuallyHeard = this.#usuallyLeft = 0;
  }

  /** Finds the way to the microphone as something begins to be played. */
  #listen(heard: Float32Array, end: number): void {
    const wasFresh = this.#fresh;
    this.#heard.copyWithin(0, heard.length);
    this.#heard.set(heard.slice(-LISTENED), Math.max(0, LISTENED - heard.length));
    this.#fresh += heard.length;
    if (wasFresh >= LISTENED || this.#fresh < BEGINNING) return;
    if (this.#delay !== null) this.#align(end, this.#delay);
    if (this.#fresh >= LISTENED && !this.#isAligned) this.#findAnew(end);
  }

  /** By what was played alone, wherever the loudspeaker stands now. */
  #findAnew(end: number): void {
    const from = end - LISTENED / MS;
    const before = this.#track.read(from - MOST_DELAY / MS, LISTENED + MOST_DELAY - LEAST_DELAY);
    const delay = echoDelay(this.#heard, before, LEAST_DELAY, MOST_DELAY);
    if (delay === null || Math.abs(delay - (this.#delay ?? Infinity)) <= EARLY / 2) return;
    this.#forget();
    [this.#delay, this.#fresh] = [delay, LISTENED];
    const played = this.#playedAt(from, delay, LISTENED);
    for (let time = 0; time < REPEATS; time++) this.#canceller.cancel(this.#heard, played);
  }

  /** The room is the same, but what is played is heard a little sooner or later than the last time. */
  #align(end: number, delay: number): void {
    const heard = this.#heard.subarray(-BEGINNING);
    const from = end - BEGINNING / MS;
    const before = LONGEST + UNSURE;
    const echo = this.#canceller.echoOf(
      this.#playedAt(from - before / MS, delay, before + BEGINNING + UNSURE + LONGEST),
    );
    const around = echo.subarray(LONGEST);
    const later = echoDelay(heard, around, -UNSURE, UNSURE) ?? 0;
    const left = (lag: number): number =>
      powerOf(heard.map((sample, at) => sample - (around[UNSURE - lag + at] ?? 0))) / powerOf(heard);
    const [now, then] = [left(0), left(later)];
    this.#isAligned = Math.min(now, then) < TAKEN_OUT;
    // Nor where nothing at all is heard.
    if (!(then < now / BETTER)) return;
    this.#delay = delay + later;
    this.#canceller.begin();
    this.#canceller.cancel(heard, this.#playedAt(from, this.#delay, BEGINNING));
  }

  #playedAt(heardAt: number, delay: number, count: number): Float32Array {
    return this.#track.read(heardAt - (delay - EARLY) / MS, count);
  }
}
