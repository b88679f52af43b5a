// Runs on the browser’s audio thread, which calls with 128 samples at a time. Fewer in a message cost more decoding; more
// let the end of speech be known later.
const CHUNK = 2048;

declare const currentFrame: number;
declare class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

/** What the processor posts: the number of the first sample in its audio context, and the samples. */
export interface MicrophoneMessage {
  readonly frame: number;
  readonly samples: Float32Array;
}

class MicrophoneProcessor extends AudioWorkletProcessor {
  #samples = new Float32Array(CHUNK);
  #filled = 0;
  #next = 0;

  /** @returns true: go on being called, also while nothing is connected */
  process([input]: readonly (readonly Float32Array[])[]): boolean {
    const channel = input?.[0];
    if (!channel) return true;
    // Samples on both sides of a gap do not belong in one chunk.
    if (currentFrame !== this.#next) this.#filled = 0;
    this.#next = currentFrame + channel.length;
    this.#samples.set(channel, this.#filled);
    this.#filled += channel.length;
    if (this.#filled === CHUNK) {
      const message: MicrophoneMessage = { frame: this.#next - CHUNK, samples: this.#samples };
      this.port.postMessage(message, [message.samples.buffer]);
      this.#samples = new Float32Array(CHUNK);
      this.#filled = 0;
    }
    return true;
  }
}

registerProcessor('microphone', MicrophoneProcessor);
