import { CarryOver } from './carry-over.ts';
import { EngineRoom } from './engine-room.ts';
import { failure, HearingError, textOf, type HearingFailure } from './failures.ts';
import { HushEar } from './hush-ear.ts';
import { Listeners } from './listeners.ts';
import { microphone } from './microphone.ts';
import { MuteGate } from './mute-gate.ts';
import { OwnSound, WORD_RATE } from './own-sound.ts';
import { checkPhrases, type Phrases } from './phrases.ts';
import type { Sound } from './sound-meter.ts';
import { SoundWatch } from './sound-watch.ts';
import { stateOf } from './state.ts';
import { Transcriber } from './transcriber.ts';
import type {
  AudioChunk,
  AudioSink,
  AudioSource,
  Hearing,
  HearingState,
  Judge,
  LoadOutcome,
  ModelSource,
  MuteReason,
  OpenAudio,
  OwnVoice,
  Utterance,
} from './types.ts';

const WATCHDOG_MS = 2_000;

export interface HearingOptions {
  /** The default is the microphone. */
  readonly source?: AudioSource;
  /** How long the engine may be silent while it is asked before it is started again, in milliseconds; the default is 2 000. */
  readonly watchdog?: number;
}

/** Makes an ear. It does nothing before `loadModel` and `listen`, which may come in either order. */
export function createHearing(options: HearingOptions = {}): Hearing {
  return new EngineHearing(options.source ?? microphone(), options.watchdog ?? WATCHDOG_MS);
}

class EngineHearing implements Hearing {
  readonly #source: AudioSource;
  readonly #engines: EngineRoom;
  readonly #stateListeners = new Listeners<HearingState>();
  readonly #utteranceListeners = new Listeners<Utterance>();
  readonly #provisionalListeners = new Listeners<Utterance | null>();
  readonly #sound = new SoundWatch();
  readonly #hushListeners = new Listeners<string>();

  #state: HearingState = { kind: 'off' };
  #audio: OpenAudio | null = null;
  #opening: Promise<void> | null = null;
  #closing = new AbortController();
  #transcriber: Transcriber | null = null;
  #phrases: Phrases = [];
  #judge: Judge | null = null;
  #partial = '';

  #audioFailure: HearingFailure | null = null;
  readonly #carryOver = new CarryOver();

  #own: OwnVoice | null = null;
  #hushEar: HushEar | null = null;
  #ownSound: OwnSound | null = null;
  readonly #gate = new MuteGate();
  #opensLater: ReturnType<typeof setTimeout> | undefined;

  constructor(source: AudioSource, watchdogMs: number) {
    this.#source = source;
    this.#engines = new EngineRoom(watchdogMs, {
      changed: () => {
        const isComing = this.#engines.running !== null || this.#engines.progress !== null;
        if (!isComing) this.#carryOver.end();
        this.#update();
      },
      started: () => this.#transcribe(),
      stopped: (again) => {
        if (again) this.#carryOver.begin(this.#transcriber?.unfinished ?? []);
        this.#transcriber = this.#hushEar = null;
        this.#provisionalListeners.tell(null);
        this.#update();
      },
    });
  }

  get state(): HearingState {
    return this.#state;
  }

  get closedBy(): MuteReason | null {
    return this.#gate.reasonAt(performance.now());
  }

  subscribe(listener: (state: HearingState) => void): () => void {
    return this.#stateListeners.add(listener);
  }

  onUtterance(listener: (utterance: Utterance) => void): () => void {
    return this.#utteranceListeners.add(listener);
  }

  onProvisional(listener: (utterance: Utterance | null) => void): () => void {
    return this.#provisionalListeners.add(listener);
  }

  onLevel(listener: (dBFS: number) => void): () => void {
    return this.#sound.levels.add(listener);
  }

  onSound(listener: (sound: Sound) => void): () => void {
    return this.#sound.sounds.add(listener);
  }

  expectSpeech(dBFS: number): void {
    this.#sound.expect(dBFS);
  }

  onHush(listener: (word: string) => void): () => void {
    return this.#hushListeners.add(listener);
  }

  loadModel(source: ModelSource): Promise<LoadOutcome> {
    return this.#engines.load(source);
  }

  async listen(): Promise<void> {
    if (this.#audio) return this.#audio.retry();
    this.#opening ??= this.#open(this.#closing.signal);
    await this.#opening;
  }

  setPhrases(phrases: Phrases, judge?: Judge): readonly string[] {
    this.#phrases = phrases;
    this.#judge = judge ?? null;
    const { running } = this.#engines;
    if (!running) return [];
    const { sayable, missing } = checkPhrases(phrases, running.model.words);
    this.#transcriber?.setPhrases(sayable, this.#judge);
    return missing;
  }

  mute(why: MuteReason): void {
    clearTimeout(this.#opensLater);
    this.#gate.mute(why);
    this.#interrupt();
    this.#update();
  }

  unmute(why: MuteReason): void {
    const now = performance.now();
    const opens = this.#gate.unmute(why, now);
    clearTimeout(this.#opensLater);
    if (Number.isFinite(opens)) this.#opensLater = setTimeout(() => this.#update(), Math.ceil(opens - now) + 1);
    this.#update();
  }

  saying(own: OwnVoice | null): void {
    this.#own = own;
    this.#listenForHush();
  }

  plays(samples: Float32Array, rate: number, from: number): (over: number) => void {
    return this.#ownSound?.plays(samples, rate, from) ?? (() => undefined);
  }

  async close(): Promise<void> {
    this.#closing.abort();
    this.#closing = new AbortController();
    this.#engines.close();
    this.#carryOver.end();
    clearTimeout(this.#opensLater);
    const audio = this.#audio;
    this.#audio = this.#opening = this.#transcriber = this.#hushEar = this.#ownSound = this.#audioFailure = null;
    this.#partial = '';
    this.#provisionalListeners.tell(null);
    this.#update();
    await audio?.close().catch(() => undefined);
  }

  /** Closing does not wait for the person to answer the browser's question: what opens later is closed at once. */
  async #open(closed: AbortSignal): Promise<void> {
    const sink: AudioSink = {
      chunk: async (chunk) => (closed.aborted ? undefined : this.#take(chunk)),
      lost: (cause) => {
        if (closed.aborted) return;
        this.#audioFailure = cause;
        this.#interrupt();
        this.#update();
      },
      recovered: () => {
        if (closed.aborted) return;
        this.#audioFailure = null;
        this.#update();
      },
      end: async () => this.#transcriber?.end(),
    };
    try {
      const audio = await this.#source.open(sink);
      if (closed.aborted) return await audio.close();
      this.#audio = audio;
      this.#sound.open(audio.sampleRate);
      this.#ownSound = new OwnSound(audio.sampleRate);
      this.#transcribe();
    } catch (error) {
      if (closed.aborted) return;
      this.#audioFailure = error instanceof HearingError ? error.failure : failure('microphone busy', textOf(error));
    }
    this.#opening = null;
    this.#update();
  }

  async #take(chunk: AudioChunk): Promise<void> {
    const isHeard = this.#gate.admits(chunk.time) && !this.#audioFailure;
    this.#sound.take(chunk, isHeard);
    // Nothing is fed during a mute: the app's own voice leaves no trace in the recogniser.
    if (isHeard) {
      const louder = this.#sound.louder(chunk);
      return this.#transcriber ? this.#transcriber.feed(louder) : this.#carryOver.keep(louder);
    }
    if (this.closedBy !== 'own voice' || this.#audioFailure || !this.#ownSound) return;
    await this.#hushEar?.feed(this.#ownSound.without(chunk));
  }

  /** What is being said is dropped, wherever it has got to. */
  #interrupt(): void {
    this.#transcriber?.interrupt();
    this.#carryOver.drop();
  }

  #transcribe(): void {
    const [{ running }, audio] = [this.#engines, this.#audio];
    this.#transcriber = null;
    this.#partial = '';
    this.#provisionalListeners.tell(null);
    this.#listenForHush();
    if (!running || !audio) return;
    const { sayable } = checkPhrases(this.#phrases, running.model.words);
    const transcriber = new Transcriber(running.engine, audio.sampleRate, sayable, this.#judge, {
      utterance: (utterance) => {
        const overNoise = this.#sound.spoke(utterance);
        this.#utteranceListeners.tell({ ...utterance, ...(overNoise === null ? {} : { overNoise }) });
      },
      // What a stopped engine had in hand comes after it.
      provisional: (utterance) => {
        if (this.#transcriber === transcriber) this.#provisionalListeners.tell(utterance);
      },
      partial: (text) => {
        this.#partial = text;
        this.#update();
      },
      fault: (detail) => this.#engines.restart(running, detail),
    });
    this.#transcriber = transcriber;
    void this.#carryOver.giveTo((chunk) => transcriber.feed(chunk));
  }

  #listenForHush(): void {
    this.#hushEar?.end();
    this.#hushEar = null;
    const [{ running }, audio, own] = [this.#engines, this.#audio, this.#own];
    if (!running || !audio || !own) return;
    this.#hushEar = HushEar.for(running.engine, WORD_RATE, running.model.words, own, {
      hush: (word) => this.#hushListeners.tell(word),
      fault: (detail) => this.#engines.restart(running, detail),
    });
  }

  #update(): void {
    const next = stateOf({
      progress: this.#engines.progress,
      failure: this.#engines.failure ?? this.#audioFailure,
      isReady: this.#transcriber !== null,
      muted: this.closedBy,
      partial: this.#partial,
    });
    if (JSON.stringify(next) === JSON.stringify(this.#state)) return;
    this.#state = next;
    this.#stateListeners.tell(next);
  }
}
