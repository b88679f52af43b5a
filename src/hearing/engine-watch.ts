import type { Engine } from './engine.ts';

const CHECK_MS = 250;
/** An engine that stops more often within a minute will do so again. */
const RESTARTS_A_MINUTE = 3;

/** How many answers the engine has given, and how many questions are open. */
export type Answering = Pick<Engine, 'answered' | 'isAsked'>;

/**
 * Notices an engine that has fallen silent: a worker that dies says nothing.
 *
 * Silent is an engine that is asked and gives no answer at all: one that works off a queue is busy, not dead. Only time in
 * which this page itself ran is counted. So neither a sleep of the computer nor a page that was busy for a while looks like
 * silence: its answers are there, and only wait to be read. Where the whole machine is overloaded, page and worker are late
 * together, and more time is given by itself.
 */
export class EngineWatch {
  readonly #limitMs: number;
  readonly #restarts: number[] = [];
  #timer: ReturnType<typeof setInterval> | undefined;

  /** @param limitMs of silence, in milliseconds */
  constructor(limitMs: number) {
    this.#limitMs = limitMs;
  }

  /** Watches this engine, and no other from now on. */
  watch(engine: Answering, onSilent: (detail: string) => void): void {
    this.stop();
    let seen = engine.answered;
    let silent = 0;
    let before = performance.now();
    this.#timer = setInterval(() => {
      const now = performance.now();
      const isSilent = engine.isAsked && engine.answered === seen;
      silent = isSilent ? silent + Math.min(now - before, CHECK_MS) : 0;
      seen = engine.answered;
      before = now;
      if (silent < this.#limitMs) return;
      this.stop();
      onSilent(`no answer for ${Math.round(silent)} ms`);
    }, CHECK_MS);
  }

  stop(): void {
    clearInterval(this.#timer);
  }

  /** Notes a restart. @returns false when there have been too many of late */
  mayRestart(now: number): boolean {
    this.#restarts.push(now);
    while ((this.#restarts[0] ?? now) < now - 60_000) this.#restarts.shift();
    return this.#restarts.length <= RESTARTS_A_MINUTE;
  }
}
