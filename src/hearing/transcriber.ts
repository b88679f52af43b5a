import type { Engine } from './engine.ts';
import { again, next, START, type Completeness, type Input, type State } from './end-of-utterance.ts';
import { PauseMeter } from './pause-meter.ts';
import type { Phrases } from './phrases.ts';
import { RecogniserShelf } from './recogniser-shelf.ts';
import type { Heard, Recogniser } from './recogniser.ts';
import { SecondHearing } from './second-hearing.ts';
import type { AudioChunk, Judge, Word } from './types.ts';
import { ONSET_MS, UnfinishedSound } from './unfinished-sound.ts';
import { textOf, WayOut, type Told } from './way-out.ts';

/** A command heard less surely waits for a longer pause: what follows may show that it was none. */
const SURE = 0.85;

/** The first word of an utterance may begin so long before the engine says. */
const LEAD_MS = 300;

const keyOf = (phrases: Phrases): string => JSON.stringify(phrases);

export interface TranscriberEvents extends Told {
  /** Empty when nobody speaks. */
  partial(text: string): void;
  fault(detail: string): void;
}

/** Audio to utterances, with a phrase list that may change at any time. It knows no microphone and no clock. */
export class Transcriber {
  readonly #sampleRate: number;
  readonly #events: TranscriberEvents;
  readonly #recognisers: RecogniserShelf;
  readonly #pauses: PauseMeter;
  #phrases: Phrases;
  /** Null where nothing is known of the words: then the engine alone ends utterances, and each is heard once. */
  #judge: Judge | null;
  readonly #second: SecondHearing;
  readonly #wayOut: WayOut;
  #current: Recogniser;
  /** Fed, but not yet part of a delivered utterance, nor of the words before. */
  readonly #unfinished = new UnfinishedSound();
  /** Of the utterance that is under way: words before a pause, and those of a result that is in hand. */
  #before: readonly Word[] = [];
  #inHand: readonly Word[] = [];
  #end: State = START;
  #speaking = false;
  /** When the sound of what is being said began, in milliseconds; null in quiet. */
  #onset: number | null = null;
  #switching: Promise<void> | null = null;
  /** Goes up at each interruption; results from before it mean nothing any more. */
  #epoch = 0;
  /** The epoch that ended within an utterance: what still comes of it is a piece of that, and no utterance. */
  #torn = -1;

  constructor(engine: Engine, sampleRate: number, phrases: Phrases, judge: Judge | null, events: TranscriberEvents) {
    this.#sampleRate = sampleRate;
    this.#events = events;
    this.#recognisers = new RecogniserShelf(engine, sampleRate);
    this.#phrases = phrases;
    this.#judge = judge;
    this.#pauses = new PauseMeter(sampleRate);
    this.#second = new SecondHearing(engine, sampleRate);
    this.#wayOut = new WayOut(events, (words) => this.#hearTwice(words));
    this.#current = this.#recognisers.take(phrases, null);
  }

  /** Resolves when the chunk is decoded. Chunks have to come in order of time. */
  async feed(chunk: AudioChunk): Promise<void> {
    this.#unfinished.push(chunk);
    this.#second.keep(chunk);
    const { length, until, isClear } = this.#pauses.take(chunk.samples, chunk.time);
    if (length > 0) this.#onset ??= chunk.time;
    else if (until < chunk.time - ONSET_MS) this.#onset = null;
    if (this.#switching) return this.#switching;
    const decoded = this.#end.phase === 'decoding' ? this.#decode(chunk) : undefined;
    if (this.#judge) {
      const now = chunk.time + (chunk.samples.length / this.#sampleRate) * 1000;
      await this.#learn({ kind: 'audio', now, sound: length, soundUntil: until, isClear });
    }
    await decoded;
  }

  /**
   * Takes a new phrase list from the next chunk on. What is being said at that moment is decoded again from its beginning
   * under the new list, so that no utterance is cut in two and none is delivered twice.
   */
  setPhrases(phrases: Phrases, judge: Judge | null): void {
    const same = keyOf(phrases) === keyOf(this.#phrases);
    // Words in hand wait for a judge: without one, nothing would end them, nor decode what follows.
    const isLeftAlone = judge === null && this.#judge !== null;
    this.#phrases = phrases;
    this.#judge = judge;
    if (!same || isLeftAlone) this.#switching ??= this.#switch();
  }

  /** Drops what is being said and begins afresh with the next chunk. Utterances that had ended before are still delivered. */
  interrupt(): void {
    if (this.#before.length > 0) this.#torn = this.#epoch;
    this.#epoch++;
    this.#unfinished.clear();
    this.#before = this.#inHand = [];
    this.#end = START;
    this.#onset = null;
    this.#second.drop();
    this.#say('');
    this.#wayOut.takeBack();
    void this.#current.finish();
  }

  /** Sound that is part of no delivered utterance. Words that wait for more are not delivered: theirs comes first. */
  get unfinished(): readonly AudioChunk[] {
    const [first] = this.#before;
    return first ? this.#second.since(Math.max(first.start - LEAD_MS, this.#wayOut.until)) : this.#unfinished.chunks;
  }

  /** The audio has ended: what was said last is a whole utterance. */
  async end(): Promise<void> {
    await this.#switching;
    this.#take(await this.#current.finish());
    this.#deliver();
    this.#unfinished.clear();
    await this.#wayOut.settled;
  }

  async #switch(): Promise<void> {
    // The answer comes after those to all chunks on their way: an utterance that ended in them is delivered before, and is
    // unfinished no longer. What remains is done again by the recogniser whose list is the newest by then.
    await this.#current.finish();
    this.#current = this.#recognisers.take(this.#phrases, this.#current);
    this.#switching = null;
    this.#wayOut.takeBack();
    this.#inHand = [];
    this.#end = again(this.#end);
    await this.#decodeUnfinished();
  }

  async #decode(chunk: AudioChunk): Promise<void> {
    const epoch = this.#epoch;
    const heard = await this.#current.accept(chunk);
    if (heard.kind === 'utterance') this.#unfinished.ended(chunk, heard.utterance === null);
    if (epoch === this.#epoch) return this.#hear(heard);
    // It had ended before the interruption.
    if (heard.kind === 'utterance' && heard.utterance && epoch !== this.#torn) this.#wayOut.letGo(heard.utterance);
    if (heard.kind === 'fault') this.#events.fault(heard.detail);
  }

  async #decodeUnfinished(): Promise<void> {
    await Promise.all(this.#unfinished.chunks.map((chunk) => this.#decode(chunk)));
  }

  /** Takes what the engine says by itself. */
  async #hear(heard: Heard): Promise<void> {
    switch (heard.kind) {
      case 'partial':
        this.#say(textOf([...this.#before, ...this.#inHand], heard.text));
        // A sound alone is no more of a number.
        if (heard.text) this.#wayOut.takeBack();
        this.#beginTwice(heard.text);
        this.#trim();
        return this.#learn({ kind: 'partial', of: this.#completeness(heard.text), isEmpty: heard.text === '' });
      case 'fault':
        return this.#events.fault(heard.detail);
      case 'utterance': {
        if (!this.#judge) {
          this.#take(heard);
          return this.#deliver();
        }
        const end = heard.utterance?.words.at(-1)?.end;
        // Nothing was said after all.
        if (end === undefined) this.#second.drop();
        if (end === undefined && this.#before.length > 0) return;
        this.#take(heard);
        this.#before = [...this.#before, ...this.#inHand];
        this.#inHand = [];
        const of = end === undefined ? 'nothing' : this.#completeness();
        return this.#learn({ kind: 'final', of, end: end ?? 0 });
      }
    }
  }

  async #learn(input: Input): Promise<void> {
    const { state, order } = next(this.#end, input);
    this.#end = state;
    switch (order.kind) {
      case 'wait':
        return;
      case 'show':
        return this.#wayOut.show([...this.#before, ...this.#inHand]);
      case 'ask':
        return this.#ask();
      case 'deliver':
        this.#deliver();
        return order.from === null ? undefined : this.#decodeFrom(order.from);
      case 'decode again':
        this.#wayOut.takeBack();
        this.#inHand = [];
        return this.#decodeUnfinished();
      case 'continue':
        this.#before = [...this.#before, ...this.#inHand];
        this.#inHand = [];
        return this.#decodeFrom(order.from);
    }
  }

  async #ask(): Promise<void> {
    const epoch = this.#epoch;
    const recogniser = this.#current;
    const heard = await recogniser.finish();
    // Where the list changes meanwhile, the same audio is decoded again.
    if (epoch !== this.#epoch || recogniser !== this.#current || this.#switching) return;
    if (heard.kind === 'fault') return this.#events.fault(heard.detail);
    this.#take(heard);
    const isSure = this.#inHand.every(({ confidence }) => confidence >= SURE);
    await this.#learn({ kind: 'result', of: this.#completeness(), isSure, end: this.#inHand.at(-1)?.end ?? null });
    if (this.#end.phase === 'in hand') void this.#hearTwice([...this.#before, ...this.#inHand]);
  }

  async #decodeFrom(time: number): Promise<void> {
    this.#unfinished.dropBefore(time);
    await this.#decodeUnfinished();
  }

  /** Takes words in hand. Those before that they cannot continue are an utterance of their own. */
  #take(heard: Heard): void {
    if (heard.kind === 'fault') this.#events.fault(heard.detail);
    if (heard.kind !== 'utterance' || !heard.utterance) return;
    const { words } = heard.utterance;
    if (
      this.#before.length > 0 &&
      this.#judge?.completeness([...this.#before, ...words].map(({ word }) => word)) === 'nothing'
    )
      this.#deliver();
    this.#wayOut.takeBack();
    this.#inHand = words;
    this.#say(textOf([...this.#before, ...words]));
  }

  #completeness(partial = ''): Completeness {
    const words = [...this.#before, ...this.#inHand].map(({ word }) => word);
    return this.#judge?.completeness([...words, ...partial.split(' ').filter(Boolean)]) ?? 'unfinished';
  }

  #deliver(): void {
    const words = [...this.#before, ...this.#inHand];
    this.#before = this.#inHand = [];
    this.#onset = null;
    this.#say('');
    this.#wayOut.deliver(words);
    this.#second.drop();
  }

  /** The second hearing begins as soon as what is being said looks like a number. */
  #beginTwice(partial: string): void {
    if (this.#onset === null || this.#before.length > 0 || this.#second.isBegun) return;
    if (this.#judge?.isHeardTwice(partial.split(' '))) this.#second.begin(this.#onset);
  }

  /** @returns null where once is enough */
  #hearTwice(words: readonly Word[]): Promise<string | null> | null {
    const isWanted = this.#judge?.isHeardTwice(words.map(({ word }) => word)) ?? false;
    return isWanted ? this.#second.hear(words) : null;
  }

  #say(partial: string): void {
    if (!partial && !this.#speaking) return;
    this.#speaking = partial !== '';
    this.#events.partial(partial);
  }

  #trim(): void {
    if (this.#end.phase === 'decoding') this.#unfinished.trim(this.#speaking || this.#end.sound > 0);
  }
}
