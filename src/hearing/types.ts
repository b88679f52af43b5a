import type { Completeness } from './end-of-utterance.ts';
import type { HearingFailure } from './failures.ts';
import type { Phrases } from './phrases.ts';
import type { Sound } from './sound-meter.ts';

export type { Completeness, Sound };

/** One recognised word. Times are milliseconds on the `performance.now()` clock. */
export interface Word {
  /** As the model's vocabulary spells it; `[unk]` stands for speech that is in no phrase of the list. */
  readonly word: string;
  readonly start: number;
  readonly end: number;
  /** 0 … 1: how sure the recogniser is *within the phrase list*. It does not catch a wrong digit in a string. */
  readonly confidence: number;
}

/** A whole utterance: speech up to the pause after it. The text is never empty. */
export interface Utterance {
  readonly text: string;
  readonly words: readonly Word[];
  /** The same sound heard without the list of phrases; null where that was not asked for, or could not be done. */
  readonly again: string | null;
  /** How far it stood above the background, in dB; absent where nothing of it was measured. */
  readonly overNoise?: number;
}

/** What is known outside of the words that may be said. */
export interface Judge {
  /** How far words have come by what may be said. */
  readonly completeness: (words: readonly string[]) => Completeness;
  /** Whether an utterance of these words is heard a second time without the list of phrases, as its `again`. */
  readonly isHeardTwice: (words: readonly string[]) => boolean;
}

/** Why hearing is closed: the app's own announcement sounds, or a person asked for it. */
export type MuteReason = 'own voice' | 'asked';

/** What the app's own voice says at this moment, and the words by which a person hushes it. */
export interface OwnVoice {
  /** In lower case, as they are spoken. */
  readonly words: readonly string[];
  readonly hush: readonly string[];
}

export type HearingState =
  | { readonly kind: 'off' }
  /**
   * Bytes of the speech model so far. All have arrived while the engine still builds the model from them. `isWaiting`: the
   * line is broken; it goes on there by itself when the line is back.
   */
  | {
      readonly kind: 'loading';
      readonly received: number;
      readonly total: number | null;
      readonly isWaiting?: boolean;
    }
  | { readonly kind: 'listening' }
  | { readonly kind: 'hearing'; readonly partial: string }
  | { readonly kind: 'muted'; readonly why: MuteReason }
  | { readonly kind: 'failed'; readonly failure: HearingFailure };

/** Where a speech model comes from. SHA-256 values are 64 lower-case hexadecimal digits. */
export type ModelSource =
  /** One entry of `models/index.json`. */
  | {
      readonly kind: 'served';
      readonly file: string;
      readonly url: string;
      readonly sha256: string;
      readonly bytes: number;
    }
  /** An archive that a person chose from disk: .tar.gz or .zip. */
  | { readonly kind: 'file'; readonly file: File }
  /** The one this browser already keeps; no network is used. */
  | { readonly kind: 'kept'; readonly name: string; readonly sha256: string };

export interface ModelInfo {
  readonly name: string;
  readonly sha256: string;
  /** Every word the model can recognise, as it spells them. */
  readonly words: ReadonlySet<string>;
}

export type LoadOutcome =
  { readonly ok: true; readonly model: ModelInfo } | { readonly ok: false; readonly failure: HearingFailure };

/** A run of mono samples, −1 … 1. */
export interface AudioChunk {
  readonly samples: Float32Array;
  /** When the first sample was taken, in milliseconds on the `performance.now()` clock. */
  readonly time: number;
}

/** Where an {@link AudioSource} delivers. */
export interface AudioSink {
  /** Resolves when the chunk has been decoded: a source that is faster than real time waits for it. */
  chunk(chunk: AudioChunk): Promise<void>;
  /** The audio has stopped, and why; chunks may go on arriving (exact zeros, for one). */
  lost(failure: HearingFailure): void;
  /** The audio is back. */
  recovered(): void;
  /** There will be no more: what was said last is a whole utterance. Resolves when it has been delivered. */
  end(): Promise<void>;
}

/** Anything that gives sound: the microphone, or a recording. */
export interface AudioSource {
  /** Starts delivery. A device that is refused or absent is reported through `sink.lost`, never thrown. */
  open(sink: AudioSink): Promise<OpenAudio>;
}

export interface OpenAudio {
  /** In hertz; it stays the same while open. */
  readonly sampleRate: number;
  /** Tries a lost device again now, for a person who has just mended it. */
  retry(): Promise<void>;
  close(): Promise<void>;
}

/** Speech in, text out. It never throws into the app: whatever goes wrong becomes a state or a {@link LoadOutcome}. */
export interface Hearing {
  readonly state: HearingState;
  /** Why the ear is closed at this moment, whatever else keeps it from hearing; null where nothing closes it. */
  readonly closedBy: MuteReason | null;
  /** @returns a function that ends the subscription, as do all the others. */
  subscribe(listener: (state: HearingState) => void): () => void;
  onUtterance(listener: (utterance: Utterance) => void): () => void;
  /**
   * What is being said, where it may be all and may as well go on: a number after which more figures can come. Good for
   * showing, not for acting: null takes it back, an utterance takes its place.
   */
  onProvisional(listener: (utterance: Utterance | null) => void): () => void;
  /** RMS of each chunk in dBFS, where 0 dBFS is the RMS of a full-scale square wave; not below −120. */
  onLevel(listener: (dBFS: number) => void): () => void;
  /** Background, speech and clipping, after each chunk while the ear is open. */
  onSound(listener: (sound: Sound) => void): () => void;
  /** How loud the one who works spoke before, in dBFS: quiet speech is then made louder from its first word on. */
  expectSpeech(dBFS: number): void;
  /**
   * Loads a model and makes it the only one kept in this browser. A running one goes on if the new one fails.
   * A later call, or `close`, cancels an earlier one.
   */
  loadModel(source: ModelSource): Promise<LoadOutcome>;
  /** Opens the microphone, or tries a lost one again. Call it from a tap or key: browsers ask for one. */
  listen(): Promise<void>;
  /**
   * Sets what may be said from now on, words separated by spaces; null lets every word of the model be heard. Speech that
   * has begun is heard whole, under the new list.
   * @param judge what it says is the same for the same words. With it, an utterance ends as soon as its words and the pause
   * after them allow, and a pause inside it does not end it. Without it, the engine's own half second of silence does.
   * @returns the words the model lacks; phrases with such a word are left out. Empty while no model is loaded: the list
   * is kept, and checked when one is.
   */
  setPhrases(phrases: Phrases, judge?: Judge): readonly string[];
  /** Closes the ear. Several reasons may hold at once. What was being said is dropped, not delivered half. */
  mute(why: MuteReason): void;
  /** Takes one reason away. After the app's own voice the ear opens a little later, when the room has stopped ringing. */
  unmute(why: MuteReason): void;
  /**
   * Tells what the app's own voice says from now on, or that it says nothing. As long as the ear is closed for that voice
   * and for nothing else, one of the words that hush it is still heard, unless the voice says it itself.
   */
  saying(own: OwnVoice | null): void;
  /**
   * Tells what the app itself plays, so that a person is heard over it.
   * @param rate in hertz; @param from when it is given to the loudspeaker, in milliseconds
   * @returns to call when it is over, at its end or before, with the time of that
   */
  plays(samples: Float32Array, rate: number, from: number): (over: number) => void;
  /** A person said the word that hushes the app's own voice. It is no utterance and means nothing else. */
  onHush(listener: (word: string) => void): () => void;
  /** Closes the microphone and ends the engine. The model stays kept. */
  close(): Promise<void>;
}
