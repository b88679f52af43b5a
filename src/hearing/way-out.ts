import type { Utterance, Word } from './types.ts';

/** The same again so soon is the end of the same sound: nobody says it twice in one breath. */
const ECHO_MS = 400;

/** Whoever waits for words. */
export interface Told {
  utterance(utterance: Utterance): void;
  /** What the words so far come to if they are all; null where they go on, or are dropped. The utterance takes its place. */
  provisional(utterance: Utterance | null): void;
}

export const textOf = (words: readonly Word[], partial = ''): string =>
  [...words.map(({ word }) => word), partial].filter(Boolean).join(' ');

/** Lets utterances out in the order in which they were spoken, each once and with its second hearing, or shows one that may go on. */
export class WayOut {
  readonly #told: Told;
  readonly #hearTwice: (words: readonly Word[]) => Promise<string | null> | null;
  #leaving: Promise<void> = Promise.resolve();
  #last = { text: '', end: -Infinity };
  /** Of what is shown provisionally, or about to be; null for nothing. */
  #shown: object | null = null;

  /** @param hearTwice gives null where once is enough */
  constructor(told: Told, hearTwice: (words: readonly Word[]) => Promise<string | null> | null) {
    this.#told = told;
    this.#hearTwice = hearTwice;
  }

  /** When what was delivered last had ended, in milliseconds. */
  get until(): number {
    return this.#last.end;
  }

  /** Resolves when all that was let go is out. */
  get settled(): Promise<void> {
    return this.#leaving;
  }

  /** Lets these words go as an utterance; none, and the echo of those before, are none. */
  deliver(words: readonly Word[]): void {
    const [first, last] = [words[0], words.at(-1)];
    if (!first || !last) return;
    const text = textOf(words);
    const isEcho = text === this.#last.text && first.start - this.#last.end < ECHO_MS;
    this.#last = { text, end: last.end };
    if (isEcho) this.takeBack();
    else this.letGo({ text, words });
  }

  letGo({ text, words }: Omit<Utterance, 'again'>): void {
    this.#shown = null;
    const again = this.#hearTwice(words);
    this.#leaving = this.#leaving.then(async () => this.#told.utterance({ text, words, again: await again }));
  }

  /** Shows what the words so far come to. */
  async show(words: readonly Word[]): Promise<void> {
    const shown = (this.#shown = {});
    const again = await this.#hearTwice(words);
    if (this.#shown === shown) this.#told.provisional({ text: textOf(words), words, again });
  }

  takeBack(): void {
    if (this.#shown === null) return;
    this.#shown = null;
    this.#told.provisional(null);
  }
}
