import type { Engine } from './engine.ts';
import { powerOf } from './level.ts';
import type { Beside } from './own-sound.ts';
import { Recogniser } from './recogniser.ts';
import type { AudioChunk, OwnVoice, Word } from './types.ts';

/** What is decoded at a time: a word, and enough before it to follow the app's own voice. */
export const WINDOW_MS = 1000;
/** While somebody speaks, and a little longer, a window is decoded so often; each is decoded as a whole. */
const STEP_MS = 80;
const LONGER_MS = 300;
/** At the beginning of a window half a word looks like another one. */
const LEAD_MS = 120;
/** And at its end: what has begun like the word ("st…") is it only when something else follows, or nothing. */
const TAIL_MS = 80;
const SHORTEST_WORD_MS = 150;
const SURE = 0.6;
/** Of the power that was heard, so much is left where a person spoke, half as loud as the app or louder; of its voice alone less. */
const LEAST_LEFT = 0.1;
/** As a ratio to the loudest in the window: what is left and is quieter is a pause. */
const QUIET = 0.01;

/**
 * The word that a window holds, whole, and heard rather than guessed; null where it holds none.
 * @param from and `to` of the window, in milliseconds
 * @param isPerson whether somebody but the app spoke between two times
 */
export const hushIn = (
  words: readonly Word[],
  hush: readonly string[],
  from: number,
  to: number,
  isPerson: (from: number, to: number) => boolean = () => true,
): string | null =>
  words.find(
    ({ word, start, end, confidence }) =>
      hush.includes(word) &&
      confidence >= SURE &&
      end - start >= SHORTEST_WORD_MS &&
      start >= from + LEAD_MS &&
      end <= to - TAIL_MS &&
      isPerson(start, end),
  )?.word ?? null;

export interface HushEarEvents {
  /** @param word which of the words it was */
  hush(word: string): void;
  fault(detail: string): void;
}

/**
 * Listens for the few words that hush the app's own voice, while that voice fills the microphone. It knows what is being
 * said, so that these words are told from those, and it decides nothing else: what it takes wrongly makes the app silent
 * for a moment.
 *
 * The engine's partial results come half a second late, but asked for its result it gives at once the words up to there. So
 * the last second is decoded again and again, each time to its end, as long as something is heard that the app does not play.
 */
export class HushEar {
  readonly #recogniser: Recogniser;
  readonly #sampleRate: number;
  /** The words that are listened for. */
  readonly #hush: readonly string[];
  readonly #events: HushEarEvents;
  /** The newest sound, a window long. */
  #chunks: Beside[] = [];
  #fresh = 0;
  #isBusy = false;
  #isOver = false;

  private constructor(
    engine: Engine,
    sampleRate: number,
    phrases: readonly string[],
    hush: readonly string[],
    events: HushEarEvents,
  ) {
    this.#recogniser = new Recogniser(engine, sampleRate, phrases);
    this.#sampleRate = sampleRate;
    this.#hush = hush;
    this.#events = events;
  }

  /** @returns null where each word is said by the app itself, or unknown to the model: then nobody can hush it by voice */
  static for(
    engine: Engine,
    sampleRate: number,
    vocabulary: ReadonlySet<string>,
    own: OwnVoice,
    events: HushEarEvents,
  ): HushEar | null {
    // "Stopped" holds "stop" as well.
    const isSaid = (hush: string): boolean => own.words.some((word) => word.startsWith(hush));
    const hush = own.hush.filter((word) => vocabulary.has(word) && !isSaid(word));
    if (hush.length === 0) return null;
    // What the model does not know it hears as something else that it is not told of.
    const known = own.words.filter((word) => vocabulary.has(word));
    const phrases = [...new Set([...hush, known.join(' '), ...known])].filter(Boolean);
    return new HushEar(engine, sampleRate, phrases, hush, events);
  }

  /** Resolves when what it sets off is decoded. */
  async feed(chunk: Beside): Promise<void> {
    this.#chunks.push(chunk);
    this.#fresh += this.#lengthOf(chunk);
    let whole = this.#chunks.reduce((sum, each) => sum + this.#lengthOf(each), 0);
    for (const oldest of [...this.#chunks]) {
      whole -= this.#lengthOf(oldest);
      if (whole < WINDOW_MS) break;
      this.#chunks.shift();
    }
    // A machine that is too slow for each step decodes the newest window when it has done the one before.
    if (this.#fresh >= STEP_MS && !this.#isBusy && this.#isSomebodyHeard(chunk)) await this.#decode();
  }

  /** Somebody but the app, now or a little while ago. */
  #isSomebodyHeard({ time }: Beside): boolean {
    return this.#chunks.some((chunk) => chunk.time > time - LONGER_MS && this.#isSounding(chunk));
  }

  /** More than a pause of somebody but the app. */
  #isSounding(chunk: Beside): boolean {
    const loudest = this.#chunks.reduce((most, { heardPower }) => Math.max(most, heardPower), 0);
    return isBeside([chunk]) && powerOf(chunk.samples) > QUIET * loudest;
  }

  /** The announcement is over. */
  end(): void {
    if (this.#isOver) return;
    this.#isOver = true;
    this.#recogniser.remove();
  }

  async #decode(): Promise<void> {
    const [first, last] = [this.#chunks[0], this.#chunks.at(-1)];
    if (!first || !last || this.#isOver) return;
    this.#fresh = 0;
    this.#isBusy = true;
    const chunks = [...this.#chunks];
    // What is followed by a pause has ended.
    const end = last.time + this.#lengthOf(last) + (this.#isSounding(last) ? 0 : TAIL_MS);
    void this.#recogniser.accept({ samples: joined(chunks), time: first.time });
    const heard = await this.#recogniser.finish();
    this.#isBusy = false;
    if (this.#isOver) return;
    if (heard.kind === 'fault') return this.#events.fault(heard.detail);
    const words = heard.kind === 'utterance' ? (heard.utterance?.words ?? []) : [];
    const word = hushIn(words, this.#hush, first.time, end, (from, to) =>
      isBeside(chunks.filter((chunk) => chunk.time < to && chunk.time + this.#lengthOf(chunk) > from)),
    );
    if (word === null) return;
    this.end();
    this.#events.hush(word);
  }

  /** In milliseconds. */
  #lengthOf({ samples }: AudioChunk): number {
    return (samples.length / this.#sampleRate) * 1000;
  }
}

/** Whether somebody but the app was heard in these. */
const isBeside = (chunks: readonly Beside[]): boolean =>
  chunks.reduce((sum, { samples, heardPower }) => sum + powerOf(samples) - LEAST_LEFT * heardPower, 0) >= 0;

function joined(chunks: readonly AudioChunk[]): Float32Array<ArrayBuffer> {
  const samples = new Float32Array(chunks.reduce((sum, chunk) => sum + chunk.samples.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    samples.set(chunk.samples, at);
    at += chunk.samples.length;
  }
  return samples;
}
