import { AudioClock } from './audio-clock.ts';
import { failure, needSecureContext, textOf, type FailureCode } from './failures.ts';
import { levelOf } from './level.ts';
import type { MicrophoneMessage } from './microphone.worklet.ts';
import workletUrl from './microphone.worklet.ts?worker&url';
import { Resampler } from './resampler.ts';
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
/** A context that was just made takes a moment to run. */
const HELD_MS = 1_000;
/** The engine ends at a rate below its model's; telephone headsets have 8 kHz. In hertz. */
const LEAST_RATE = 16_000;

export interface MicrophoneOptions {
  /** Asks for the device; the default is the person's default microphone, unfiltered. */
  readonly getStream?: () => Promise<MediaStream>;
  /** Opens the audio context; the default is one of the device's own rate. */
  readonly openContext?: () => AudioContext;
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
  readonly #resampler: Resampler | null;
  readonly #sink: AudioSink;
  readonly #getStream: () => Promise<MediaStream>;
  readonly #silentAfter: number;
  readonly #closing = new AbortController();
  #stream: MediaStream | null = null;
  #input: MediaStreamAudioSourceNode | null = null;
  #lost: FailureCode | null = null;
  #acquiring: Promise<void> | null = null;
  #lastSound = performance.now();
  /** Since when the context has not run; null while it does. */
  #heldSince: number | null = null;
  #acquired = -Infinity;
  #lastTry = -Infinity;

  private constructor(context: AudioContext, sink: AudioSink, options: MicrophoneOptions) {
    this.#context = context;
    this.#sink = sink;
    this.#getStream = options.getStream ?? (() => navigator.mediaDevices.getUserMedia(CONSTRAINTS));
    this.#silentAfter = options.silentAfter ?? SILENT_MS;
    this.#clock = new AudioClock(context.sampleRate);
    const isLow = context.sampleRate < LEAST_RATE;
    this.#resampler = isLow ? new Resampler(context.sampleRate, LEAST_RATE) : null;
    this.#node = new AudioWorkletNode(context, 'microphone', {
      numberOfOutputs: 0,
      channelCount: 1,
      channelCountMode: 'explicit',
    });
    this.#node.port.onmessage = ({ data }: MessageEvent<MicrophoneMessage>) => this.#take(data);
  }

  static async open(sink: AudioSink, options: MicrophoneOptions): Promise<OpenMicrophone> {
    needSecureContext();
    const context = options.openContext?.() ?? new AudioContext();
    // Not awaited: without a tap it never settles. The check reports that.
    context.resume().catch(() => undefined);
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
    return Math.max(this.#context.sampleRate, LEAST_RATE);
  }

  /** A device that works is not opened a second time: that would cut what is being said. */
  retry(): Promise<void> {
    this.#resume();
    if (this.#isFine) return Promise.resolve();
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

  /** Also where it was just opened, and its first sound is still to come. */
  get #isFine(): boolean {
    const isNew = performance.now() - this.#acquired < this.#silentAfter;
    return this.#live && (this.#lost === null || this.#lost === 'microphone held' || isNew);
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
      this.#lastSound = this.#acquired = performance.now();
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
    const raised = this.#resampler?.take(samples) ?? samples;
    if (levelOf(samples) > -Infinity) {
      this.#lastSound = now;
      // Sound of the device that was lost may still be on its way.
      if (this.#lost && this.#live) this.#recover(now);
    }
    void this.#sink.chunk({ samples: raised, time: time - (this.#resampler?.lag ?? 0) / (LEAST_RATE / 1000) });
  }

  #recover(now: number): void {
    this.#lost = null;
    this.#lastSound = now;
    this.#sink.recovered();
  }

  /** Where the browser wants a touch first, or has closed the context for good, the check tells it. */
  #resume(): void {
    this.#context.resume().catch(() => undefined);
  }

  /** What had worked has stopped: try again without delay. */
  #lose(code: FailureCode, detail = ''): void {
    if (this.#lost !== code) this.#lastTry = this.#acquired = -Infinity;
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
      this.#checkContext(now);
      if (!this.#lost && !this.#acquiring && now - this.#lastSound > this.#silentAfter) {
        this.#lose('microphone silent', `only zeros for ${this.#silentAfter / 1000} s; audio ${this.#context.state}`);
      }
      const wait = this.#lost === 'microphone silent' ? RETRY_SILENT_MS : RETRY_MS;
      if (this.#lost && now - this.#lastTry > wait) void this.#retryUnasked();
    }, CHECK_MS);
    signal.addEventListener('abort', () => clearInterval(check));
    navigator.mediaDevices.addEventListener('devicechange', () => void this.#devicesChanged(), { signal });
    this.#context.addEventListener('statechange', () => this.#checkContext(performance.now()), { signal });
  }

  /** A telephone call, or a sleep of the computer, leaves it suspended or interrupted, and nothing else tells. */
  #checkContext(now: number): void {
    if (this.#context.state === 'running') {
      this.#heldSince = null;
      if (this.#lost === 'microphone held') this.#recover(now);
      return;
    }
    this.#resume();
    this.#heldSince ??= now;
    const isHeld = now - this.#heldSince >= HELD_MS;
    if (isHeld && this.#lost === null) this.#lose('microphone held', `the audio is ${this.#context.state}`);
  }

  /** Not every browser tells the track that its device is gone. */
  async #devicesChanged(): Promise<void> {
    if (this.#lost) return this.retry();
    const [track] = this.#stream?.getAudioTracks() ?? [];
    const device = track?.getSettings().deviceId;
    const devices = await navigator.mediaDevices.enumerateDevices().catch(() => []);
    // Before the permission, browsers name no device.
    const inputs = devices.filter(({ kind, deviceId }) => kind === 'audioinput' && deviceId !== '');
    const isGone = device !== undefined && inputs.length > 0 && inputs.every(({ deviceId }) => deviceId !== device);
    if (isGone && track === this.#stream?.getAudioTracks()[0]) this.#lose('microphone lost', 'no longer listed');
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
