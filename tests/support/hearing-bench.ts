// Runs in the page: the hearing room with its real engine, and what a test wants to know of it.
import { createHearing, type HearingOptions } from '../../src/hearing/hearing.ts';
import { keptModel } from '../../src/hearing/model-cache.ts';
import { microphone } from '../../src/hearing/microphone.ts';
import { recording } from '../../src/hearing/recording.ts';
import type { AudioSink, AudioSource, Hearing, HearingState, ModelSource, Utterance } from '../../src/hearing/types.ts';

export interface Sound {
  /** 16-bit little-endian mono samples, in Base64, because a page takes no buffers from a test. */
  readonly base64: string;
  readonly rate: number;
}

export const bytesOf = (base64: string): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));

export const samplesOf = ({ base64 }: Sound): Float32Array<ArrayBuffer> =>
  Float32Array.from(new Int16Array(bytesOf(base64).buffer), (sample) => sample / 32768);

export const fileOf = (name: string, base64: string): ModelSource => ({
  kind: 'file',
  file: new File([bytesOf(base64)], name),
});

export type { Utterance };

export interface Ear {
  readonly hearing: Hearing;
  readonly states: HearingState[];
  readonly utterances: (Utterance & { readonly arrived: number })[];
  readonly levels: number[];
}

export function ear(options: HearingOptions = {}): Ear {
  const hearing = createHearing(options);
  const [states, utterances, levels]: [HearingState[], Ear['utterances'], number[]] = [[], [], []];
  hearing.subscribe((state) => states.push(state));
  hearing.onUtterance((utterance) => utterances.push({ ...utterance, arrived: performance.now() }));
  hearing.onLevel((level) => levels.push(level));
  return { hearing, states, utterances, levels };
}

let shared: Ear | null = null;
/** The same ear in every call, for a test that does something outside the page in between. */
export const sharedEar = (): Ear => (shared ??= ear());

/** An ear with the kept model, listening. */
export async function listeningEar(phrases: readonly string[], options: HearingOptions): Promise<Ear> {
  const made = ear(options);
  const kept = await keptModel();
  if (!kept) throw new Error('No model is kept.');
  made.hearing.setPhrases(phrases);
  const outcome = await made.hearing.loadModel({ kind: 'kept', ...kept });
  if (!outcome.ok) throw new Error(outcome.failure.detail);
  await made.hearing.listen();
  return made;
}

export { createHearing, keptModel, microphone, recording };

/** All of a recording at once, without waiting for any of it to be decoded. */
export function burst(samples: Float32Array, sampleRate: number): AudioSource & { pour(): void; end(): Promise<void> } {
  let open: AudioSink | null = null;
  return {
    open: (sink) => {
      open = sink;
      return Promise.resolve({ sampleRate, retry: () => Promise.resolve(), close: () => Promise.resolve() });
    },
    pour: () => {
      for (let at = 0; at < samples.length; at += 4096) {
        void open?.chunk({ samples: samples.slice(at, at + 4096), time: (at / sampleRate) * 1000 });
      }
    },
    end: async () => open?.end(),
  };
}

export const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** @throws when it has not come true in time */
export async function until(what: string, condition: () => boolean, timeout = 15_000): Promise<void> {
  const start = performance.now();
  while (!condition()) {
    if (performance.now() - start > timeout) throw new Error(`Waited ${timeout} ms in vain: ${what}`);
    await pause(20);
  }
}

/** The files that the engine keeps in this browser. */
export async function keptPaths(): Promise<string[]> {
  const opening = indexedDB.open('/vosk', 21);
  return new Promise((resolve, reject) => {
    opening.onerror = () => reject(new Error('no database'));
    opening.onupgradeneeded = () => opening.result.createObjectStore('FILE_DATA').createIndex('timestamp', 'timestamp');
    opening.onsuccess = () => {
      const keys = opening.result.transaction('FILE_DATA').objectStore('FILE_DATA').getAllKeys();
      keys.onsuccess = () => {
        opening.result.close();
        resolve(keys.result.map(String));
      };
    };
  });
}

/** A microphone made of sound: everything behind the permission question is the real path. */
export class SoundStream {
  readonly #context = new AudioContext();
  readonly #output = this.#context.createMediaStreamDestination();

  constructor() {
    // A quiet room, not the exact zeros of a dead device.
    const hiss = this.#context.createBuffer(1, this.#context.sampleRate, this.#context.sampleRate);
    const samples = hiss.getChannelData(0);
    for (let at = 0; at < samples.length; at++) samples[at] = 2e-4 * Math.sin(at * at);
    const source = new AudioBufferSourceNode(this.#context, { buffer: hiss, loop: true });
    source.connect(this.#output);
    source.start();
  }

  /** A fresh device each time, as `getUserMedia` gives one. */
  open(): MediaStream {
    return this.#output.stream.clone();
  }

  /** Resolves when the last sample has been played. */
  play(sound: Sound): Promise<void> {
    const samples = samplesOf(sound);
    const buffer = this.#context.createBuffer(1, samples.length, sound.rate);
    buffer.copyToChannel(samples, 0);
    const source = new AudioBufferSourceNode(this.#context, { buffer });
    source.connect(this.#output);
    source.start();
    return new Promise((resolve) => (source.onended = () => resolve()));
  }
}
