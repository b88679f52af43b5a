import { failure, HearingError, textOf, type HearingFailure } from './failures.ts';
import type { Engine } from './engine.ts';
import { levelOf } from './level.ts';
import { Listeners } from './listeners.ts';
import { loadModel } from './load-model.ts';
import { microphone } from './microphone.ts';
import { checkPhrases } from './phrases.ts';
import { Transcriber } from './transcriber.ts';
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
  Utterance,
} from './types.ts';

/** A room goes on sounding, and the loudspeaker lags, this long after the app's own voice. */
const OWN_VOICE_TAIL_MS = 300;
const LEVEL_FLOOR_DBFS = -120;
const WATCHDOG_MS = 10_000;
const WATCHDOG_CHECK_MS = 500;
/** An engine that stops so often within a minute will do so again. */
const RESTARTS_A_MINUTE = 3;

export interface HearingOptions {
  /** The default is the microphone. */
  readonly source?: AudioSource;
  /** How long the engine may leave audio unanswered before it is started again, in milliseconds; the default is 10 000. */
  readonly watchdog?: number;
}

/** Makes an ear. It does nothing before `loadModel` and `listen`, which may come in either order. */
export function createHearing(options: HearingOptions = {}): Hearing {
  return new EngineHearing(options.source ?? microphone(), options.watchdog ?? WATCHDOG_MS);
}

class EngineHearing implements Hearing {
  readonly #source: AudioSource;
  readonly #watchdogMs: number;
  readonly #stateListeners = new Listeners<HearingState>();
  readonly #utteranceListeners = new Listeners<Utterance>();
  readonly #levelListeners = new Listeners<number>();

  #state: HearingState = { kind: 'off' };
  #audio: OpenAudio | null = null;
  #opening: Promise<void> | null = null;
  #engine: Engine | null = null;
  #model: ModelInfo | null = null;
  #transcriber: Transcriber | null = null;
  #phrases: readonly string[] = [];
  #partial = '';

  #progress: { readonly received: number; readonly total: number | null } | null = null;
  #load: AbortController | null = null;
  #audioFailure: HearingFailure | null = null;
  #modelFailure: HearingFailure | null = null;

  readonly #muted = new Set<MuteReason>();
  /** On the `performance.now()` clock: what was said before is not heard. */
  #openFrom = -Infinity;
  #ownVoiceUntil = -Infinity;
  #opensLater: ReturnType<typeof setTimeout> | undefined;

  readonly #restarts: number[] = [];
  #watchdog: ReturnType<typeof setInterval> | undefined;

  constructor(source: AudioSource, watchdogMs: number) {
    this.#source = source;
    this.#watchdogMs = watchdogMs;
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
    return this.#levelListeners.add(listener);
  }

  async loadModel(source: ModelSource): Promise<LoadOutcome> {
    this.#load?.abort();
    const load = (this.#load = new AbortController());
    const { signal } = load;
    this.#progress = { received: 0, total: source.kind === 'kept' ? null : sizeOf(source) };
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
    this.#opening ??= this.#open().finally(() => (this.#opening = null));
    await this.#opening;
  }

  setPhrases(phrases: readonly string[]): readonly string[] {
    this.#phrases = phrases;
    if (!this.#model) return [];
    const { sayable, missing } = checkPhrases(phrases, this.#model.words);
    this.#transcriber?.setPhrases(sayable);
    return missing;
  }

  mute(why: MuteReason): void {
    clearTimeout(this.#opensLater);
    if (this.#muted.size === 0) this.#transcriber?.interrupt();
    this.#muted.add(why);
    this.#openFrom = Infinity;
    this.#update();
  }

  unmute(why: MuteReason): void {
    if (!this.#muted.delete(why)) return;
    const now = performance.now();
    if (why === 'own voice') this.#ownVoiceUntil = now + OWN_VOICE_TAIL_MS;
    if (this.#muted.size === 0) {
      this.#openFrom = Math.max(now, this.#ownVoiceUntil);
      this.#opensLater = setTimeout(() => this.#update(), Math.ceil(this.#openFrom - now) + 1);
    }
    this.#update();
  }

  async close(): Promise<void> {
    this.#load?.abort();
    this.#load = this.#progress = null;
    clearInterval(this.#watchdog);
    clearTimeout(this.#opensLater);
    await this.#opening;
    await this.#audio?.close().catch(() => undefined);
    this.#engine?.stop();
    this.#audio = this.#engine = this.#model = this.#transcriber = null;
    this.#audioFailure = this.#modelFailure = null;
    this.#partial = '';
    this.#update();
  }

  async #open(): Promise<void> {
    const sink: AudioSink = {
      chunk: (chunk) => this.#take(chunk),
      lost: (cause) => {
        this.#audioFailure = cause;
        this.#transcriber?.interrupt();
        this.#update();
      },
      recovered: () => {
        this.#audioFailure = null;
        this.#update();
      },
      end: async () => this.#transcriber?.end(),
    };
    try {
      this.#audio = await this.#source.open(sink);
      this.#transcribe();
    } catch (error) {
      this.#audioFailure = error instanceof HearingError ? error.failure : failure('microphone busy', textOf(error));
    }
    this.#update();
  }

  async #take(chunk: AudioChunk): Promise<void> {
    this.#levelListeners.tell(Math.max(levelOf(chunk.samples), LEVEL_FLOOR_DBFS));
    // Nothing is fed during a mute: the app's own voice costs no decoding and leaves no trace in the recogniser.
    if (chunk.time >= this.#openFrom && !this.#audioFailure) await this.#transcriber?.feed(chunk);
  }

  #useEngine(engine: Engine, model: ModelInfo): void {
    this.#engine?.stop();
    this.#engine = engine;
    this.#model = model;
    this.#modelFailure = null;
    clearInterval(this.#watchdog);
    this.#watchdog = setInterval(() => {
      if (engine.waiting > this.#watchdogMs) this.#restart(engine, `no answer for ${Math.round(engine.waiting)} ms`);
    }, WATCHDOG_CHECK_MS);
    this.#transcribe();
  }

  #transcribe(): void {
    const [engine, model, audio] = [this.#engine, this.#model, this.#audio];
    this.#transcriber = null;
    this.#partial = '';
    if (!engine || !model || !audio) return;
    const { sayable } = checkPhrases(this.#phrases, model.words);
    this.#transcriber = new Transcriber(engine, audio.sampleRate, sayable, {
      utterance: (utterance) => this.#utteranceListeners.tell(utterance),
      partial: (text) => {
        this.#partial = text;
        this.#update();
      },
      fault: (detail) => this.#restart(engine, detail),
    });
  }

  #restart(engine: Engine, detail: string): void {
    const model = this.#model;
    if (engine !== this.#engine || !model) return;
    this.#engine = this.#transcriber = null;
    clearInterval(this.#watchdog);
    engine.stop();
    const now = performance.now();
    this.#restarts.push(now);
    while ((this.#restarts[0] ?? now) < now - 60_000) this.#restarts.shift();
    const again = this.#restarts.length <= RESTARTS_A_MINUTE;
    this.#modelFailure = failure(again ? 'engine stopped' : 'engine given up', detail);
    this.#update();
    if (again && !this.#load) void this.loadModel({ kind: 'kept', ...model });
  }

  #update(): void {
    const next = this.#derive();
    if (JSON.stringify(next) === JSON.stringify(this.#state)) return;
    this.#state = next;
    this.#stateListeners.tell(next);
  }

  #derive(): HearingState {
    if (this.#progress) return { kind: 'loading', ...this.#progress };
    const cause = this.#modelFailure ?? this.#audioFailure;
    if (cause) return { kind: 'failed', failure: cause };
    if (!this.#transcriber) return { kind: 'off' };
    if (this.#muted.has('asked')) return { kind: 'muted', why: 'asked' };
    if (performance.now() < this.#openFrom) return { kind: 'muted', why: 'own voice' };
    return this.#partial ? { kind: 'hearing', partial: this.#partial } : { kind: 'listening' };
  }
}

const sizeOf = (source: Exclude<ModelSource, { kind: 'kept' }>): number =>
  source.kind === 'served' ? source.bytes : source.file.size;
