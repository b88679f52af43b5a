// The recogniser engine: Vosk (Kaldi) as WebAssembly in a worker of its own. We speak the worker's message protocol
// directly, because its client never settles a failed load, drops late results, and copies every chunk once more.
import type { ClientMessage } from 'vosk-browser';
import workerUrl from 'vosk-browser/dist/vosk.worker.js?worker&url';
import wasmUrl from 'vosk-browser/dist/vosk.wasm?url';
import { HearingError, textOf } from './failures.ts';
import { replyOf, type Reply } from './engine-reply.ts';

/** Errors only: its warnings are about single lattices, and what matters of them is checked here. */
const LOG_LEVEL = -2;

/** Everything the engine is asked after its start; each gets exactly one answer, in order. */
export type EngineQuestion = Extract<
  ClientMessage,
  { action: 'create' | 'audioChunk' | 'retrieveFinalResult' | 'remove' }
>;

export class Engine {
  readonly #worker: Worker;
  readonly #questions: ((reply: Reply) => void)[] = [];
  #answered = 0;
  #ended = false;
  #recognisers = 0;

  private constructor(worker: Worker) {
    this.#worker = worker;
  }

  /**
   * Starts a worker and lets it build the model kept under this address.
   * @throws HearingError `model unreadable`, `model timeout`, `model load cancelled`, `engine unreachable`; the worker has
   * ended then
   */
  static async start(address: string, timeoutMs: number, signal: AbortSignal): Promise<Engine> {
    try {
      return await Engine.#tryStart(address, timeoutMs, signal);
    } catch (error) {
      // The engine does not tell a model it cannot read from a part of itself that it could not fetch.
      const parts = await Promise.all([workerUrl, wasmUrl].map(isReachable));
      if (!signal.aborted && parts.includes(false)) throw new HearingError('engine unreachable', textOf(error));
      throw error;
    }
  }

  static #tryStart(address: string, timeoutMs: number, signal: AbortSignal): Promise<Engine> {
    const worker = new Worker(workerUrl, { type: 'module' });
    return new Promise<Engine>((resolve, reject) => {
      const settle = new AbortController();
      const fail = (error: HearingError): void => {
        settle.abort();
        clearTimeout(timer);
        worker.terminate();
        reject(error);
      };
      const timer = setTimeout(
        () => fail(new HearingError('model timeout', `not ready after ${timeoutMs / 1000} s`)),
        timeoutMs,
      );
      const onMessage = ({ data }: MessageEvent<unknown>): void => {
        const reply = replyOf(data);
        if (reply.kind === 'fault') return fail(new HearingError('model unreadable', reply.detail));
        settle.abort();
        clearTimeout(timer);
        resolve(new Engine(worker).#listening());
      };
      worker.addEventListener('message', onMessage, { signal: settle.signal });
      worker.addEventListener('error', ({ message }) => fail(new HearingError('model unreadable', message)), {
        signal: settle.signal,
      });
      signal.addEventListener('abort', () => fail(new HearingError('model load cancelled')), {
        signal: settle.signal,
      });
      if (signal.aborted) return fail(new HearingError('model load cancelled'));
      post(worker, { action: 'set', key: 'logLevel', value: LOG_LEVEL });
      post(worker, { action: 'load', modelUrl: address, wasmUrl: new URL(wasmUrl, location.href).href });
    });
  }

  #listening(): this {
    this.#worker.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
      this.#answered++;
      this.#questions.shift()?.(replyOf(data));
    });
    this.#worker.addEventListener('error', ({ message }) => this.stop(message));
    return this;
  }

  /** A name that no other recogniser of this engine has. */
  newRecogniserId(): string {
    return `recogniser-${++this.#recognisers}`;
  }

  /** Never rejects: an engine that has ended answers with a fault. */
  ask(question: EngineQuestion, transfer: Transferable[] = []): Promise<Reply> {
    if (this.#ended) return Promise.resolve({ kind: 'fault', detail: 'The engine has ended.' });
    return new Promise((answer) => {
      this.#questions.push(answer);
      post(this.#worker, question, transfer);
    });
  }

  /** Has no answer of its own. */
  wantWordTimes(recogniserId: string): void {
    if (!this.#ended) post(this.#worker, { action: 'set', recognizerId: recogniserId, key: 'words', value: true });
  }

  /** Is a question open? */
  get isAsked(): boolean {
    return this.#questions.length > 0;
  }

  /** How many answers have come. Where questions are open and it stands still, the worker is dead: it says nothing else. */
  get answered(): number {
    return this.#answered;
  }

  /** Ends the worker at once and answers whatever is still open with a fault. */
  stop(detail = 'The engine was ended.'): void {
    this.#ended = true;
    this.#worker.terminate();
    for (const answer of this.#questions.splice(0)) answer({ kind: 'fault', detail });
  }
}

const post = (worker: Worker, message: ClientMessage, transfer: Transferable[] = []): void =>
  worker.postMessage(message, transfer);

const isReachable = (url: string): Promise<boolean> =>
  fetch(url).then(
    async (response) => {
      await response.body?.cancel();
      return response.ok;
    },
    () => false,
  );
