/** What is counted as sound, in a run of audio. Times are milliseconds on the clock of the chunks. */
export interface Sounded {
  /** How much of it was sound. */
  readonly length: number;
  /** When sound last ended, here or before; −∞ when there was none yet. */
  readonly until: number;
  /** Whether what sounded last stands well out of the background: then the end of the sound is the end of a word. */
  readonly isClear: boolean;
}

const FRAME_MS = 10;
/** Levels are of this many frames together: noise alone jumps from one frame to the next. */
const SMOOTHING = 3;
/** Long enough to hold a gap between words, short enough to follow a machine that starts. */
const MEMORY_FRAMES = 300;
/** The louder frames of the last 0.8 s tell how loud the speaker is. */
const RECENT_FRAMES = 80;
/** Sound stands out of the background by this much, however quiet the speaker. */
const LEAST_RISE_DB = 5;
/** Of the way from the background to the loud parts of speech. Below lie the room's echo and breath, above it final consonants. */
const RISE_SHARE = 0.5;
/** Speech beside a quiet background stands out by 30 dB and more; at 10 dB of signal to noise, by hardly so much. */
const CLEAR_RISE_DB = 20;
/** A shorter sound is a click. */
const SHORTEST_SOUND_FRAMES = 4;
/** Of first-order pre-emphasis, usual in speech work: it takes hum away and keeps hiss, which ends many words. */
const PRE_EMPHASIS = 0.97;

/**
 * Tells sound from background by level alone, at once: the recogniser's own view of silence comes half a second late. The
 * background is followed, so that a steady machine is no sound. It decides nothing: whoever asks looks at the words too.
 */
export class PauseMeter {
  readonly #frameLength: number;
  /** dB, oldest first. */
  readonly #levels: number[] = [];
  /** Of the newest frames. */
  readonly #powers: number[] = [];
  #before = 0;
  #sum = 0;
  #filled = 0;
  #run = 0;
  #until = -Infinity;

  /** @param sampleRate in hertz */
  constructor(sampleRate: number) {
    this.#frameLength = Math.round((sampleRate * FRAME_MS) / 1000);
  }

  /** Chunks have to come in order of time; between them may be gaps. */
  take(samples: Float32Array, time: number): Sounded {
    const frames: { readonly level: number; readonly until: number }[] = [];
    samples.forEach((sample, i) => {
      const value = Number.isFinite(sample) ? sample : 0;
      this.#sum += (value - PRE_EMPHASIS * this.#before) ** 2;
      this.#before = value;
      if (++this.#filled < this.#frameLength) return;
      const until = time + ((i + 1) / this.#frameLength) * FRAME_MS;
      frames.push({ level: this.#levelWith(this.#sum / this.#frameLength), until });
      this.#sum = this.#filled = 0;
    });
    this.#levels.push(...frames.map(({ level }) => level));
    this.#levels.splice(0, Math.max(0, this.#levels.length - MEMORY_FRAMES));
    const { threshold, isClear } = this.#standing();
    let length = 0;
    for (const { level, until } of frames) {
      this.#run = level > threshold ? this.#run + 1 : 0;
      if (this.#run < SHORTEST_SOUND_FRAMES) continue;
      length += this.#run === SHORTEST_SOUND_FRAMES ? SHORTEST_SOUND_FRAMES * FRAME_MS : FRAME_MS;
      this.#until = until;
    }
    return { length, until: this.#until, isClear };
  }

  /** In dB, of the newest frames and one more. */
  #levelWith(power: number): number {
    this.#powers.push(power);
    this.#powers.splice(0, this.#powers.length - SMOOTHING);
    return 10 * Math.log10(this.#powers.reduce((sum, each) => sum + each, 0) / this.#powers.length + 1e-12);
  }

  /** What sound must rise above, in dB, and whether it does so by far. */
  #standing(): { readonly threshold: number; readonly isClear: boolean } {
    const background = quantile(this.#levels, 0.2);
    const loud = quantile(this.#levels.slice(-RECENT_FRAMES), 0.95);
    const rise = loud - background;
    return { threshold: background + Math.max(LEAST_RISE_DB, RISE_SHARE * rise), isClear: rise >= CLEAR_RISE_DB };
  }
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? -Infinity;
}
