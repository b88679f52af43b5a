interface Mark {
  readonly position: number;
  readonly time: number;
}

/**
 * When each sample fed to a recogniser was taken. The recogniser counts only what it is fed, while audio is left out during
 * a mute, a lost microphone or another phrase list: so every chunk is marked, and positions are looked up between marks.
 */
export class Timeline {
  readonly #sampleRate: number;
  readonly #marks: Mark[] = [];
  #length = 0;

  /** @param sampleRate in hertz */
  constructor(sampleRate: number) {
    this.#sampleRate = sampleRate;
  }

  /** Seconds of audio so far. */
  get length(): number {
    return this.#length / this.#sampleRate;
  }

  /** @param time of the first of these samples, in milliseconds */
  append(samples: number, time: number): void {
    this.#marks.push({ position: this.#length, time });
    this.#length += samples;
  }

  /** @param seconds of audio since the beginning; @returns milliseconds on the clock of the marks */
  timeAt(seconds: number): number {
    const position = seconds * this.#sampleRate;
    const mark = this.#marks.findLast((candidate) => candidate.position <= position) ?? this.#marks[0];
    return mark ? mark.time + ((position - mark.position) / this.#sampleRate) * 1000 : 0;
  }

  /** Lets go of what lies before; later look-ups there are extrapolated. */
  forgetBefore(seconds: number): void {
    const position = seconds * this.#sampleRate;
    const covering = this.#marks.findLastIndex((mark) => mark.position <= position);
    if (covering > 0) this.#marks.splice(0, covering);
  }
}
