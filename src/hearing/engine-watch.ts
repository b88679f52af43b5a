import type { Engine } from './engine.ts';

const CHECK_MS = 500;
/** An engine that stops more often within a minute will do so again. */
const RESTARTS_A_MINUTE = 3;

/** Notices an engine that has fallen silent: a worker that dies says nothing. */
export class EngineWatch {
  readonly #limitMs: number;
  readonly #restarts: number[] = [];
  #timer: ReturnType<typeof setInterval> | undefined;

  /** @param limitMs how long a question may stay open, in milliseconds */
  constructor(limitMs: number) {
    this.#limitMs = limitMs;
  }

  /** Watches this engine, and no other from now on. */
  watch(engine: Engine, onSilent: (detail: string) => void): void {
    this.stop();
    let late = false;
    this.#timer = setInterval(() => {
      // Late twice running: right after a sleep of the computer the answers are only waiting to be read.
      const waited = engine.waiting;
      if (late && waited > this.#limitMs) onSilent(`no answer for ${Math.round(waited)} ms`);
      late = waited > this.#limitMs;
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
