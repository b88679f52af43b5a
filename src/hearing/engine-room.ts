import type { Engine } from './engine.ts';
import { EngineWatch } from './engine-watch.ts';
import { failure, HearingError, textOf, type HearingFailure } from './failures.ts';
import { loadModel } from './load-model.ts';
import { begun, type Progress } from './state.ts';
import type { LoadOutcome, ModelInfo, ModelSource } from './types.ts';

/** An engine with its model: there is never one without the other. */
export interface Running {
  readonly engine: Engine;
  readonly model: ModelInfo;
}

export interface EngineRoomEvents {
  /** Loading went on, or failed. */
  changed(): void;
  /** Another engine runs; the one before it has ended. */
  started(): void;
  /** The engine has stopped by a fault of its own. @param again whether another one is being started */
  stopped(again: boolean): void;
}

/** Loads a model into an engine, watches that engine, and starts another when it stops. */
export class EngineRoom {
  readonly #watch: EngineWatch;
  readonly #events: EngineRoomEvents;
  #running: Running | null = null;
  #load: AbortController | null = null;
  #progress: Progress | null = null;
  #failure: HearingFailure | null = null;

  /** @param watchdogMs how long the engine may be silent while it is asked, in milliseconds */
  constructor(watchdogMs: number, events: EngineRoomEvents) {
    this.#watch = new EngineWatch(watchdogMs);
    this.#events = events;
  }

  get running(): Running | null {
    return this.#running;
  }

  /** Of a model that is being loaded. */
  get progress(): Progress | null {
    return this.#progress;
  }

  get failure(): HearingFailure | null {
    return this.#failure;
  }

  /** As {@link Hearing.loadModel}. */
  async load(source: ModelSource): Promise<LoadOutcome> {
    this.#load?.abort();
    const load = (this.#load = new AbortController());
    const { signal } = load;
    this.#progress = begun(source);
    this.#events.changed();
    try {
      const progress = (received: number, total: number | null, isWaiting = false): void => {
        if (signal.aborted) return;
        this.#progress = isWaiting ? { received, total, isWaiting } : { received, total };
        this.#events.changed();
      };
      const { engine, info } = await loadModel(source, progress, signal);
      if (signal.aborted) {
        engine.stop();
        throw new HearingError('model load cancelled');
      }
      this.#use({ engine, model: info });
      return { ok: true, model: info };
    } catch (error) {
      const cause = error instanceof HearingError ? error.failure : failure('model unreadable', textOf(error));
      if (!signal.aborted && !this.#running) this.#failure = cause;
      return { ok: false, failure: cause };
    } finally {
      if (this.#load === load) {
        this.#load = this.#progress = null;
        this.#events.changed();
      }
    }
  }

  /** The engine answered with a fault, or not at all: it is ended, and another one started with the same model. */
  restart({ engine, model }: Running, detail: string): void {
    if (engine !== this.#running?.engine) return;
    this.#running = null;
    this.#watch.stop();
    engine.stop();
    const again = this.#watch.mayRestart(performance.now());
    this.#failure = failure(again ? 'engine stopped' : 'engine given up', detail);
    this.#events.stopped(again);
    if (again && !this.#load) void this.load({ kind: 'kept', ...model });
  }

  close(): void {
    this.#load?.abort();
    this.#watch.stop();
    this.#running?.engine.stop();
    this.#load = this.#progress = this.#running = this.#failure = null;
  }

  #use(running: Running): void {
    this.#running?.engine.stop();
    this.#running = running;
    this.#failure = null;
    this.#watch.watch(running.engine, (detail) => this.restart(running, detail));
    this.#events.started();
  }
}
