import { failure, HearingError, textOf, type HearingFailure } from './failures.ts';
import type { Engine } from './engine.ts';
import { EngineWatch } from './engine-watch.ts';
import { HushEar } from './hush-ear.ts';
import { Listeners } from './listeners.ts';
import { loadModel } from './load-model.ts';
import { microphone } from './microphone.ts';
import { MuteGate } from './mute-gate.ts';
import { checkPhrases, type Phrases } from './phrases.ts';
import type { Sound } from './sound-meter.ts';
import { SoundWatch } from './sound-watch.ts';
import { begun, stateOf, type Progress } from './state.ts';
import { Transcriber, type Judge } from './transcriber.ts';
import type {
  AudioChunk,
  AudioSink,
  AudioSource,
  Hearing,
  HearingState,
  LoadOutcome,
  ModelInfo,
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
  readonly #watch: EngineWatch;
  readonly #stateListeners = new Listeners<HearingState>();
  readonly #utteranceListeners = new Listeners<Utterance>();
  readonly #sound = new SoundWatch();
  readonly #hushListeners = new Listeners<void>();

  #state: HearingState = { kind: 'off' };
  #audio: OpenAudio | null = null;
  #opening: Promise<void> | null = null;
  #closing = new AbortController();
  #engine: Engine | null = null;
  #model: ModelInfo | null = null;
  #transcriber: Transcriber | null = null;
  #phrases: Phrases = [];
  #judge: Judge = null;
  #partial = '';

  #progress: Progress | null = null;
  #load: AbortController | null = null;
  #audioFailure: HearingFailure | null = null;
  #modelFailure: HearingFailure | null = null;

  #own: OwnVoice | null = null;
  #hushEar: HushEar | null = null;
  readonly #gate = new MuteGate();
  #opensLater: ReturnType<typeof setTimeout> | undefined;

  constructor(source: AudioSource, watchdogMs: number) {
    this.#source = source;
    this.#watch = new EngineWatch(watchdogMs);
  }

  get state(): HearingState {
    return this.#state;
  }

  subscribe(listener: (state: HearingState) => void): () => void {
    return this.#stateListeners.add(listener);
  }

  onUtterance(listener: (utterance: Utterance) => void): () => void {
    return this.#utteranceListeners.add(listener);
  }

  onLevel(listener: (dBFS: number) => void): () => void {
    return this.#sound.levels.add(listener);
  }

  onSound(listener: (sound: Sound) => void): () => void {
    return this.#sound.sounds.add(listener);
  }

  onHush(listener: () => void): () => void {
    return this.#hushListeners.add(listener);
  }

  async loadModel(source: ModelSource): Promise<LoadOutcome> {
    this.#load?.abort();
    const load = (this.#load = new AbortController());
    const { signal } = load;
    this.#progress = begun(source);
    this.#update();
    try {
      const progress = (received: number, total: number | null): void => {
        if (signal.aborted) return;
        this.#progress = { received, total };
        this.#update();
      };
      const { engine, info } = await loadModel(source, progress, signal);
      if (signal.aborted) {
        engine.stop();
        throw new HearingError('model load cancelled');
      }
      this.#useEngine(engine, info);
      return { ok: true, model: info };
    } catch (error) {
      const cause = error instanceof HearingError ? error.failure : failure('model unreadable', textOf(error));
      if (!signal.aborted && !this.#engine) this.#modelFailure = cause;
      return { ok: false, failure: cause };
    } finally {
      if (this.#load === load) {
        this.#load = this.#progress = null;
        this.#update();
      }
    }
  }

  async listen(): Promise<void> {
    if (this.#audio) return this.#audio.retry();
    this.#opening ??= this.#open(this.#closing.signal);
    await this.#opening;
  }

  setPhrases(phrases: Phrases, completeness?: Judge): readonly string[] {
    this.#phrases = phrases;
    this.#judge = completeness ?? null;
    if (!this.#model) return [];
    const { sayable, missing } = checkPhrases(phrases, this.#model.words);
    this.#transcriber?.setPhrases(sayable, this.#judge);
    return missing;
  }

  mute(why: MuteReason): void {
    clearTimeout(this.#opensLater);
    this.#gate.mute(why);
    this.#transcriber?.interrupt();
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

  async close(): Promise<void> {
    this.#closing.abort();
    this.#closing = new AbortController();
    this.#load?.abort();
    this.#load = this.#progress = null;
    this.#watch.stop();
    clearTimeout(this.#opensLater);
    this.#engine?.stop();
    const audio = this.#audio;
    this.#audio = this.#opening = this.#engine = this.#model = this.#transcriber = this.#hushEar = null;
    this.#audioFailure = this.#modelFailure = null;
    this.#partial = '';
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
        this.#transcriber?.interrupt();
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
    if (isHeard) return this.#transcriber?.feed(chunk);
    const isOwnVoice = this.#gate.reasonAt(performance.now()) === 'own voice';
    if (isOwnVoice && !this.#audioFailure) this.#hushEar?.feed(chunk);
  }

  #useEngine(engine: Engine, model: ModelInfo): void {
    this.#engine?.stop();
    this.#engine = engine;
    this.#model = model;
    this.#modelFailure = null;
    this.#watch.watch(engine, (detail) => this.#restart(engine, detail));
    this.#transcribe();
  }

  #transcribe(): void {
    const [engine, model, audio] = [this.#engine, this.#model, this.#audio];
    this.#transcriber = null;
    this.#partial = '';
    this.#listenForHush();
    if (!engine || !model || !audio) return;
    const { sayable } = checkPhrases(this.#phrases, model.words);
    this.#transcriber = new Transcriber(engine, audio.sampleRate, sayable, this.#judge, {
      utterance: (utterance) => {
        this.#sound.spoke(utterance);
        this.#utteranceListeners.tell(utterance);
      },
      partial: (text) => {
        this.#partial = text;
        this.#update();
      },
      fault: (detail) => this.#restart(engine, detail),
    });
  }

  #listenForHush(): void {
    this.#hushEar?.end();
    this.#hushEar = null;
    const [engine, model, audio, own] = [this.#engine, this.#model, this.#audio, this.#own];
    if (!engine || !model || !audio || !own) return;
    this.#hushEar = HushEar.for(engine, audio.sampleRate, model.words, own, {
      hush: () => this.#hushListeners.tell(),
      fault: (detail) => this.#restart(engine, detail),
    });
  }

  #restart(engine: Engine, detail: string): void {
    const model = this.#model;
    if (engine !== this.#engine || !model) return;
    this.#engine = this.#transcriber = this.#hushEar = null;
    this.#watch.stop();
    engine.stop();
    const again = this.#watch.mayRestart(performance.now());
    this.#modelFailure = failure(again ? 'engine stopped' : 'engine given up', detail);
    this.#update();
    if (again && !this.#load) void this.loadModel({ kind: 'kept', ...model });
  }

  #update(): void {
    const next = stateOf({
      progress: this.#progress,
      failure: this.#modelFailure ?? this.#audioFailure,
      isReady: this.#transcriber !== null,
      muted: this.#gate.reasonAt(performance.now()),
      partial: this.#partial,
    });
    if (JSON.stringify(next) === JSON.stringify(this.#state)) return;
    this.#state = next;
    this.#stateListeners.tell(next);
  }
}
