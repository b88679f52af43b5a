// Runs in the page: recordings as the app's sound, one after another, faster than they sound.
import type { AudioChunk, AudioSink, AudioSource } from '../../hearing/types.ts';

/** As long as the microphone's chunks at 48 kHz: a decision waits for its chunk to be full. */
const CHUNK_S = 2048 / 48_000;
/** A recogniser wants a little quiet before the first word. */
const LEAD_IN_S = 0.4;
/** After the recording quiet goes on, as it would in a room: at least so long, and while speech is still undecided, … */
const LEAD_OUT_S = 1.5;
/** … at most so long. Then the sound ends, and with it the last utterance. */
const LONGEST_LEAD_OUT_S = 4;

/** A chunk on its way, timed as if it had come from a microphone. */
export interface Feeding {
  /** When the engine turns to it: its last sample is there, and what came before is decoded. Seconds of the recording. */
  readonly from: number;
  /** When that was on the `performance.now()` clock, in milliseconds. */
  readonly began: number;
}

/** A source that plays recordings into the ear it is given to. All are of one rate. */
export class Tape implements AudioSource {
  readonly #rate: number;
  #sink: AudioSink | null = null;
  /** Where the next recording begins, in milliseconds: time goes on from recording to recording. */
  #position = 0;
  #feeding: Feeding = { from: 0, began: 0 };

  /** @param rate in hertz */
  constructor(rate: number) {
    this.#rate = rate;
  }

  open(sink: AudioSink) {
    this.#sink = sink;
    return Promise.resolve({
      sampleRate: this.#rate,
      retry: () => Promise.resolve(),
      close: () => Promise.resolve(),
    });
  }

  /** Seconds of the recording that plays, before or after it too, from a time as the ear gives it. */
  placeOf(time: number): number {
    return (time - this.#position) / 1000 - LEAD_IN_S;
  }

  /** When what happens right now would have happened, had the recording been spoken. In seconds of the recording. */
  now(): number {
    return this.#feeding.from + (performance.now() - this.#feeding.began) / 1000;
  }

  /**
   * Plays a recording with quiet around it. Resolves when all of it is decoded.
   * @param isSpeaking whether the ear still hears speech that it has not decided on
   */
  async play(recording: Float32Array, isSpeaking: () => boolean): Promise<void> {
    const sink = this.#sink;
    if (!sink) throw new Error('A tape plays into no ear before that listens.');
    let done = -Infinity;
    let end = 0;
    const feed = async (work: () => Promise<void>): Promise<void> => {
      // A chunk cannot be decoded before it has been spoken, nor before the one ahead of it.
      this.#feeding = { from: Math.max(done, end - LEAD_IN_S), began: performance.now() };
      await work();
      done = this.now();
    };
    for (const samples of this.#chunksOf(recording, isSpeaking)) {
      const chunk: AudioChunk = { samples, time: this.#position + end * 1000 };
      end += samples.length / this.#rate;
      await feed(() => sink.chunk(chunk));
    }
    await feed(() => sink.end());
    this.#position += end * 1000;
  }

  *#chunksOf(recording: Float32Array, isSpeaking: () => boolean): Iterable<Float32Array> {
    const size = Math.round(CHUNK_S * this.#rate);
    const lead = Math.round(LEAD_IN_S * this.#rate);
    const whole = lead + recording.length;
    const [least, most] = [LEAD_OUT_S, LONGEST_LEAD_OUT_S].map((seconds) => whole + seconds * this.#rate);
    for (let at = 0; at < (least ?? 0) || (at < (most ?? 0) && isSpeaking()); at += size) {
      yield Float32Array.from({ length: size }, (_, i) => {
        const place = at + i - lead;
        // Under the recording as well: what is cut out of a quiet room ends in zeros, and the room would then be sound.
        return (place >= 0 ? (recording[place] ?? 0) : 0) + hiss(at + i);
      });
    }
  }
}

/** A quiet room at about −77 dBFS, not the exact zeros of a dead device. */
const hiss = (at: number): number => 2e-4 * Math.sin(at * at);
