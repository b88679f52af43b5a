import { AudioClock } from './audio-clock.ts';
import { failure, needSecureContext, textOf, type FailureCode } from './failures.ts';
import { levelOf } from './level.ts';
import type { MicrophoneMessage } from './microphone.worklet.ts';
import workletUrl from './microphone.worklet.ts?worker&url';
import type { AudioSink, AudioSource, OpenAudio } from './types.ts';

/** The model was trained on noise; what these filters leave of speech it was not. */
const CONSTRAINTS: MediaStreamConstraints = {
  audio: { channelCount: 1, echoCancellation: false, noiseSuppression: false, autoGainControl: false },
};
const CHECK_MS = 500;
const RETRY_MS = 2_000;
/** A microphone with a switch may be silent for long; opening it anew flickers the browser's sign. */
const RETRY_SILENT_MS = 10_000;
/** A quiet room is never exactly zero; a stopped device is, and the browser says nothing of it. */
const SILENT_MS = 4_000;

export interface MicrophoneOptions {
  /** Asks for the device; the default is the person's default microphone, unfiltered. */
  readonly getStream?: () => Promise<MediaStream>;
  /** How long exact zeros, or nothing, may come before the microphone counts as silent, in milliseconds. */
  readonly silentAfter?: number;
}

/** The microphone as a source. A lost one is taken up again by itself, wherever that needs no new permission. */
export function microphone(options: MicrophoneOptions = {}): AudioSource {
  return { open: (sink) => OpenMicrophone.open(sink, options) };
}

class OpenMicrophone implements OpenAudio {
  readonly #context: AudioContext;
  readonly #node: AudioWorkletNode;
  readonly #clock: AudioClock;
  readonly #sink: AudioSink;
  readonly #getStream: () => Promise<MediaStream>;
  readonly #silentAfter: number;
  readonly #closing = new AbortController();
  #stream: MediaStream | null = null;
  #input: MediaStreamAudioSourceNode | null = null;
  #lost: FailureCode | null = null;
  #acquiring: Promise<void> | null = null;
  #lastSound = performance.now();
  #lastTry = -Infinity;

  private constructor(context: AudioContext, sink: AudioSink, options: MicrophoneOptions) {
    this.#context = context;
    this.#sink = sink;
    this.#getStream = options.getStream ?? (() => navigator.mediaDevices.getUserMedia(CONSTRAINTS));
    this.#silentAfter = options.silentAfter ?? SILENT_MS;
    this.#clock = new AudioClock(context.sampleRate);
    this.#node = new AudioWorkletNode(context, 'microphone', {
      numberOfOutputs: 0,
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    this.#node.port.onmessage = ({ data }: MessageEvent<MicrophoneMessage>) => this.#take(data);
  }

  static async open(sink: AudioSink, options: MicrophoneOptions): Promise<OpenMicrophone> {
    needSecureContext();
    const context = new AudioContext();
    // Not awaited: without a tap it never settles. Then no sound comes, and the check reports that.
    void context.resume();
    try {
      await context.audioWorklet.addModule(workletUrl);
    } catch (error) {
      await context.close();
      throw error;
    }
    const opened = new OpenMicrophone(context, sink, options);
    opened.#watch();
    await opened.retry();
    return opened;
  }

  get sampleRate(): number {
    return this.#context.sampleRate;
  }

  retry(): Promise<void> {
    void this.#context.resume();
    this.#acquiring ??= this.#acquire().finally(() => (this.#acquiring = null));
    return this.#acquiring;
  }

  async close(): Promise<void> {
    this.#closing.abort();
    this.#release();
    this.#node.port.onmessage = null;
    if (this.#context.state !== 'closed') await this.#context.close();
  }

  get #live(): boolean {
    return this.#stream?.getAudioTracks().some((track) => track.readyState === 'live' && !track.muted) ?? false;
  }

  async #acquire(): Promise<void> {
    this.#lastTry = performance.now();
    try {
      const stream = await this.#getStream();
      this.#release();
      this.#stream = stream;
      if (this.#closing.signal.aborted) return this.#release();
      this.#input = this.#context.createMediaStreamSource(stream);
      this.#input.connect(this.#node);
      this.#lastSound = performance.now();
      for (const track of stream.getAudioTracks()) {
        track.addEventListener('ended', () => stream === this.#stream && this.#lose('microphone lost'));
        track.addEventListener('mute', () => stream === this.#stream && this.#lose('microphone silent', 'muted'));
      }
    } catch (error) {
      this.#report(codeOf(error), textOf(error));
    }
  }

  #release(): void {
    this.#input?.disconnect();
    for (const track of this.#stream?.getTracks() ?? []) track.stop();
    this.#input = this.#stream = null;
  }

  #take({ frame, samples }: MicrophoneMessage): void {
    const now = performance.now();
    const time = this.#clock.timeOf(frame, samples.length, now);
    if (levelOf(samples) > -Infinity) {
      this.#lastSound = now;
      // Sound of the device that was lost may still be on its way.
      if (this.#lost && this.#live) {
        this.#lost = null;
        this.#sink.recovered();
      }
    }
    void this.#sink.chunk({ samples, time });
  }

  /** What had worked has stopped: try again without delay. */
  #lose(code: FailureCode, detail = ''): void {
    if (this.#lost !== code) this.#lastTry = -Infinity;
    this.#report(code, detail);
  }

  #report(code: FailureCode, detail: string): void {
    if (this.#closing.signal.aborted || this.#lost === code) return;
    this.#lost = code;
    this.#sink.lost(failure(code, detail));
  }

  #watch(): void {
    const { signal } = this.#closing;
    const check = setInterval(() => {
      const now = performance.now();
      // A telephone call, or a sleep of the computer, leaves it suspended.
      if (this.#context.state !== 'running') void this.#context.resume();
      if (!this.#lost && !this.#acquiring && now - this.#lastSound > this.#silentAfter) {
        this.#lose('microphone silent', `only zeros for ${this.#silentAfter / 1000} s; audio ${this.#context.state}`);
      }
      const wait = this.#lost === 'microphone silent' ? RETRY_SILENT_MS : RETRY_MS;
      if (this.#lost && now - this.#lastTry > wait) void this.#retryUnasked();
    }, CHECK_MS);
    signal.addEventListener('abort', () => clearInterval(check));
    navigator.mediaDevices.addEventListener('devicechange', () => this.#lost && void this.retry(), { signal });
  }

  /** Never brings up a question out of nowhere: that would steal the person's attention, and be refused. */
  async #retryUnasked(): Promise<void> {
    this.#lastTry = performance.now();
    const name = 'microphone' as PermissionName; // Not in the type library, yet in the standard.
    const allowed = await navigator.permissions.query({ name }).then(
      ({ state }) => state === 'granted',
      () => false,
    );
    if (allowed && this.#lost) await this.retry();
  }
}

function codeOf(error: unknown): FailureCode {
  switch (error instanceof DOMException ? error.name : '') {
    case 'NotAllowedError':
    case 'SecurityError':
      return 'microphone refused';
    case 'NotFoundError':
    case 'OverconstrainedError':
      return 'microphone absent';
    default:
      return 'microphone busy';
  }
}
