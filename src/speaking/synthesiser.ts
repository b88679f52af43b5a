import { voices } from '../words/voices.ts';
import type { FliteOptions } from './flite.ts';
import type { FliteReply, FliteRequest } from './flite-messages.ts';
import type { Sound } from './sound.ts';
import { within } from './time-limit.ts';

export interface Synthesiser {
  /** Starts the worker and loads the voice, once. Rejects with a reason for a person; may then be called again. */
  load(): Promise<void>;
  /** Turns text into sound. A worker that hangs, dies or fails is replaced once before this rejects. */
  synthesise(text: string, options: FliteOptions): Promise<Sound>;
  close(): void;
}

export interface SynthesiserOptions {
  readonly startWorker: () => Worker;
  readonly wasmUrl: string;
  readonly loadWithinMs: number;
  readonly synthesiseWithinMs: number;
}

/** A worker that has been started and the answers that are awaited from it. */
interface Session {
  readonly loaded: Promise<void>;
  synthesise(text: string, options: FliteOptions): Promise<Sound>;
  end(): void;
}

export function createSynthesiser(options: SynthesiserOptions): Synthesiser {
  let session: Session | undefined;

  function end(): void {
    session?.end();
    session = undefined;
  }

  async function ready(): Promise<Session> {
    const current = (session ??= startSession(options));
    try {
      await within(options.loadWithinMs, current.loaded, voices.didNotLoad(options.loadWithinMs));
      return current;
    } catch (error) {
      if (session === current) end();
      throw error;
    }
  }

  async function attempt(text: string, how: FliteOptions): Promise<Sound> {
    const current = await ready();
    const limit = options.synthesiseWithinMs;
    try {
      return await within(limit, current.synthesise(text, how), voices.noSound(limit));
    } catch (error) {
      if (session === current) end();
      throw error;
    }
  }

  return {
    load: async () => void (await ready()),
    synthesise: (text, how) => attempt(text, how).catch(() => attempt(text, how)),
    close: end,
  };
}

function startSession({ startWorker, wasmUrl }: SynthesiserOptions): Session {
  const worker = startWorker();
  const awaited = new Map<number, { resolve: (sound: Sound) => void; reject: (error: Error) => void }>();
  const send = (request: FliteRequest): void => worker.postMessage(request);
  let lastId = 0;

  const loaded = new Promise<void>((resolve, reject) => {
    worker.addEventListener('message', ({ data }: MessageEvent<FliteReply>) => {
      switch (data.kind) {
        case 'loaded':
          return resolve();
        case 'not loaded':
          return reject(new Error(data.reason));
        case 'synthesised':
          awaited.get(data.id)?.resolve(data.sound);
          return void awaited.delete(data.id);
        case 'not synthesised':
          awaited.get(data.id)?.reject(new Error(data.reason));
          return void awaited.delete(data.id);
      }
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      const error = new Error(voices.workerFailed(event.message));
      reject(error);
      for (const { reject: fail } of awaited.values()) fail(error);
      awaited.clear();
    });
  });
  send({ kind: 'load', wasmUrl });

  return {
    loaded,
    synthesise: (text, options) =>
      new Promise((resolve, reject) => {
        const id = ++lastId;
        awaited.set(id, { resolve, reject });
        send({ kind: 'synthesise', id, text, options });
      }),
    end: () => worker.terminate(),
  };
}
