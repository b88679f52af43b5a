import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { microphone, type MicrophoneOptions } from '../../src/hearing/microphone.ts';
import type { AudioChunk, OpenAudio } from '../../src/hearing/types.ts';

// What no browser here can be made to do (a context that is interrupted, a device that goes without a word) is done by a
// stand-in for the browser alone. Everything else is in tests/browser/hearing-microphone.test.ts, with the real one.

class Track extends EventTarget {
  readyState = 'live';
  muted = false;
  readonly deviceId: string;
  constructor(deviceId: string) {
    super();
    this.deviceId = deviceId;
  }
  getSettings = () => ({ deviceId: this.deviceId });
  stop = () => void (this.readyState = 'ended');
}

class Stream {
  readonly track: Track;
  constructor(deviceId = 'bench') {
    this.track = new Track(deviceId);
  }
  getTracks = () => [this.track];
  getAudioTracks = () => [this.track];
}

class Context extends EventTarget {
  state: 'running' | 'suspended' | 'interrupted' | 'closed' = 'running';
  readonly sampleRate: number;
  readonly audioWorklet = { addModule: () => Promise.resolve() };
  resumed = 0;
  constructor(sampleRate = 48_000) {
    super();
    this.sampleRate = sampleRate;
  }
  resume = () => (this.resumed++, this.state === 'closed' ? Promise.reject(new Error('closed')) : Promise.resolve());
  close = () => ((this.state = 'closed'), Promise.resolve());
  createMediaStreamSource = () => ({ connect: () => undefined, disconnect: () => undefined });
  become(state: Context['state']): void {
    this.state = state;
    this.dispatchEvent(new Event('statechange'));
  }
}

interface Port {
  onmessage: ((event: { data: { frame: number; samples: Float32Array } }) => void) | null;
}

let port: Port;
let devices: EventTarget & { listed: readonly string[]; enumerateDevices?: unknown };
let permission: string;

beforeEach(() => {
  vi.useFakeTimers();
  permission = 'granted';
  port = { onmessage: null };
  devices = Object.assign(new EventTarget(), { listed: ['bench'] });
  devices.enumerateDevices = () =>
    Promise.resolve(devices.listed.map((deviceId) => ({ kind: 'audioinput', deviceId })));
  vi.stubGlobal('isSecureContext', true);
  vi.stubGlobal('navigator', {
    mediaDevices: devices,
    permissions: { query: () => Promise.resolve({ state: permission }) },
  });
  vi.stubGlobal(
    'AudioWorkletNode',
    class {
      port = port;
    },
  );
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

async function opened(context = new Context(), options: Omit<MicrophoneOptions, 'openContext'> = {}) {
  const streams: Stream[] = [];
  const told: string[] = [];
  const chunks: AudioChunk[] = [];
  const source = microphone({
    openContext: () => context as unknown as AudioContext,
    getStream: () => {
      streams.push(new Stream());
      return Promise.resolve(streams.at(-1) as unknown as MediaStream);
    },
    ...options,
  });
  const audio: OpenAudio = await source.open({
    chunk: (chunk) => (chunks.push(chunk), Promise.resolve()),
    lost: ({ code }) => told.push(code),
    recovered: () => told.push('recovered'),
    end: () => Promise.resolve(),
  });
  let frame = 0;
  /** Sound of the device for so long, in milliseconds. */
  const sound = async (ms: number, level = 0.01): Promise<void> => {
    for (let at = 0; at < ms; at += 40) {
      const samples = new Float32Array(Math.round(context.sampleRate * 0.04)).fill(level);
      port.onmessage?.({ data: { frame, samples } });
      frame += samples.length;
      await vi.advanceTimersByTimeAsync(40);
    }
  };
  return { audio, context, streams, told, chunks, sound };
}

describe('a microphone whose context the browser holds', () => {
  it.each(['suspended', 'interrupted'] as const)(
    'tells that it is %s after a second, and when it runs again',
    async (state) => {
      const { context, told, sound, streams } = await opened();
      await sound(400);
      context.become(state);
      await vi.advanceTimersByTimeAsync(900);
      expect(told).toEqual([]);
      await vi.advanceTimersByTimeAsync(1000);
      expect(told).toEqual(['microphone held']);
      expect(context.resumed).toBeGreaterThan(1);
      context.become('running');
      await sound(400);
      expect(told).toEqual(['microphone held', 'recovered']);
      // The device itself was never at fault.
      expect(streams).toHaveLength(1);
    },
  );

  it('says nothing of a context that stands still for a moment', async () => {
    const { context, told, sound } = await opened();
    await sound(400);
    context.become('interrupted');
    await vi.advanceTimersByTimeAsync(600);
    context.become('running');
    await sound(3000);
    expect(told).toEqual([]);
  });

  it('tells of one that never runs: it waits for a touch', async () => {
    const context = new Context();
    context.state = 'suspended';
    const { told, audio, streams } = await opened(context);
    await vi.advanceTimersByTimeAsync(2000);
    expect(told).toEqual(['microphone held']);
    const before = context.resumed;
    await audio.retry();
    expect(context.resumed).toBe(before + 1);
    expect(streams).toHaveLength(1);
  });

  it('survives one that the browser has closed for good', async () => {
    const { context, told, sound } = await opened();
    await sound(400);
    context.become('closed');
    await vi.advanceTimersByTimeAsync(3000);
    expect(told).toEqual(['microphone held']);
  });
});

describe('a device that goes', () => {
  it('without a word is missed in the list of devices, and taken up again', async () => {
    const { told, sound, streams } = await opened();
    await sound(400);
    devices.listed = ['another'];
    devices.dispatchEvent(new Event('devicechange'));
    await vi.advanceTimersByTimeAsync(0);
    expect(told).toEqual(['microphone lost']);
    await vi.advanceTimersByTimeAsync(600);
    expect(streams).toHaveLength(2);
    await sound(100);
    expect(told).toEqual(['microphone lost', 'recovered']);
  });

  it('is not missed when another is plugged in, nor when the browser names none', async () => {
    const { told, sound, streams } = await opened();
    await sound(400);
    for (const listed of [['bench', 'another'], [], ['']]) {
      devices.listed = listed;
      devices.dispatchEvent(new Event('devicechange'));
      await sound(400);
    }
    expect(told).toEqual([]);
    expect(streams).toHaveLength(1);
  });

  it('muted by the system tells so at once, and hears when it is back', async () => {
    const { told, sound, streams } = await opened();
    await sound(400);
    const track = streams[0]?.track;
    if (!track) throw new Error('Nothing was opened.');
    track.muted = true;
    track.dispatchEvent(new Event('mute'));
    expect(told).toEqual(['microphone silent']);
    await sound(400, 0);
    expect(told).toEqual(['microphone silent']);
    track.muted = false;
    await sound(400);
    expect(told.at(-1)).toBe('recovered');
  });

  it('gives exact zeros, or nothing: both are told after four seconds', async () => {
    for (const level of [0, null]) {
      const { told, sound } = await opened();
      await sound(400);
      await (level === null ? vi.advanceTimersByTimeAsync(3400) : sound(3400, level));
      expect(told).toEqual([]);
      await (level === null ? vi.advanceTimersByTimeAsync(1400) : sound(1400, level));
      expect(told).toEqual(['microphone silent']);
    }
  });

  it('is not asked for again without permission', async () => {
    permission = 'prompt';
    const { told, sound, streams } = await opened();
    await sound(400);
    streams[0]?.track.dispatchEvent(new Event('ended'));
    await vi.advanceTimersByTimeAsync(20_000);
    expect(told).toEqual(['microphone lost']);
    expect(streams).toHaveLength(1);
  });
});

describe('trying again', () => {
  it('does not open a device that works a second time', async () => {
    const { audio, streams, sound, told } = await opened();
    await sound(400);
    await Promise.all([audio.retry(), audio.retry()]);
    expect(streams).toHaveLength(1);
    expect(told).toEqual([]);
  });

  it('opens one only, however often it is asked while the browser asks the person', async () => {
    const answers: ((stream: MediaStream) => void)[] = [];
    const getStream = () => new Promise<MediaStream>((answer) => answers.push(answer));
    const opening = opened(new Context(), { getStream });
    await vi.advanceTimersByTimeAsync(0);
    const first = new Stream();
    answers[0]?.(first as unknown as MediaStream);
    const { audio, told, sound } = await opening;
    await sound(100);

    first.track.stop();
    first.track.dispatchEvent(new Event('ended'));
    const tries = [audio.retry(), audio.retry()];
    devices.dispatchEvent(new Event('devicechange'));
    await vi.advanceTimersByTimeAsync(10_000);
    expect(answers).toHaveLength(2);
    answers[1]?.(new Stream() as unknown as MediaStream);
    await Promise.all(tries);
    // Opening a device is itself a change of the devices, and its first sound takes a moment.
    devices.dispatchEvent(new Event('devicechange'));
    await vi.advanceTimersByTimeAsync(3_000);
    await sound(100);
    expect(answers).toHaveLength(2);
    expect(told).toEqual(['microphone lost', 'recovered']);
  });
});

describe('the rate of a device', () => {
  it.each([16_000, 44_100, 48_000])('of %i Hz is passed on as it is', async (rate) => {
    const { audio, chunks, sound } = await opened(new Context(rate));
    await sound(400);
    expect(audio.sampleRate).toBe(rate);
    expect(chunks.reduce((sum, { samples }) => sum + samples.length, 0)).toBe(Math.round(rate * 0.04) * 10);
  });

  it('of 8 kHz is raised to the least that the engine takes', async () => {
    const { audio, chunks, sound } = await opened(new Context(8_000));
    await sound(1000);
    expect(audio.sampleRate).toBe(16_000);
    const samples = chunks.reduce((sum, chunk) => sum + chunk.samples.length, 0);
    expect(16_000 - samples).toBeGreaterThanOrEqual(0);
    expect(16_000 - samples).toBeLessThan(100);
    chunks.slice(1).forEach(({ time }, at) => expect(time - (chunks[at]?.time ?? 0)).toBeGreaterThan(0));
  });
});
