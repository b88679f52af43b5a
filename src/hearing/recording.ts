import type { AudioSource } from './types.ts';

/** As long as the microphone's at 48 kHz. */
const CHUNK_SECONDS = 2048 / 48_000;

export interface Recording extends AudioSource {
  /** Resolves when everything has been decoded and the last utterance delivered. */
  readonly finished: Promise<void>;
}

/**
 * Recorded sound as a source, for benches and tests.
 * @param samples mono, −1 … 1
 * @param sampleRate in hertz
 * @param pace `fast` gives each chunk when the one before is decoded; times then run ahead of the clock, as if it were played
 */
export function recording(samples: Float32Array, sampleRate: number, pace: 'real time' | 'fast'): Recording {
  let finish: () => void;
  const finished = new Promise<void>((resolve) => (finish = resolve));
  return {
    finished,
    open: (sink) => {
      const chunkLength = Math.round(sampleRate * CHUNK_SECONDS);
      const started = performance.now();
      let closed = false;
      const play = async (): Promise<void> => {
        for (let at = 0; at < samples.length && !closed; at += chunkLength) {
          const chunk = { samples: samples.slice(at, at + chunkLength), time: started + (at / sampleRate) * 1000 };
          if (pace === 'real time') await until(chunk.time + (chunk.samples.length / sampleRate) * 1000);
          const decoded = sink.chunk(chunk);
          if (pace === 'fast') await decoded;
        }
        await sink.end();
        finish();
      };
      // After open has returned, as a device does.
      setTimeout(() => void play());
      return Promise.resolve({
        sampleRate,
        retry: () => Promise.resolve(),
        close: () => {
          closed = true;
          return Promise.resolve();
        },
      });
    },
  };
}

const until = (time: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, Math.max(0, time - performance.now())));
