import { voices } from '../words/voices.ts';
import type { Sound } from './sound.ts';
import { within } from './time-limit.ts';
import { OutputStopped } from './voice.ts';

/** Where sound goes: a context and the node that everything is connected to. */
export interface Loudspeaker {
  readonly context: AudioContext;
  readonly input: AudioNode;
}

/** The one way out for everything that this room sounds. */
export interface Output {
  /** Opens the output, or starts it again after an interruption. Works from a user gesture. @throws OutputStopped */
  start(): Promise<void>;
  /**
   * Plays to the end, or until `signal` aborts. `started` is called just before the first sound, and may still abort it.
   * @throws OutputStopped
   */
  play(sound: Sound, signal: AbortSignal, started: () => void): Promise<void>;
  close(): Promise<void>;
}

const RESUME_WITHIN_MS = 1000;

/**
 * Told of everything that is sounded, as it begins.
 * @param from on the `performance.now()` clock, in milliseconds
 * @returns to call when it is over, at its end or before, with the time of that
 */
export type Sounded = (sound: Sound, from: number) => (over: number) => void;

export function createOutput(open: () => Loudspeaker, sounded?: Sounded): Output {
  let loudspeaker: Loudspeaker | undefined;
  let isClosed = false;

  async function start(): Promise<void> {
    await running();
  }

  async function running(): Promise<Loudspeaker> {
    if (isClosed) throw new OutputStopped(voices.outputClosed);
    const { context } = (loudspeaker ??= openOrStop(open));
    if (context.state === 'running') return loudspeaker;
    try {
      await within(RESUME_WITHIN_MS, context.resume(), 'no answer');
    } catch (error) {
      throw new OutputStopped(voices.outputNotRunning, { cause: error });
    }
    return loudspeaker;
  }

  async function play(sound: Sound, signal: AbortSignal, started: () => void): Promise<void> {
    const { context, input } = await running();
    if (signal.aborted) return;
    const buffer = context.createBuffer(1, sound.samples.length, sound.rate);
    buffer.copyToChannel(sound.samples, 0);
    const source = new AudioBufferSourceNode(context, { buffer });
    source.connect(input);
    started();
    if (signal.aborted) return;
    source.start();
    const over = sounded?.(sound, performance.now());
    try {
      await ended(context, [source], signal);
    } finally {
      over?.(performance.now());
    }
  }

  return {
    start,
    play,
    async close() {
      isClosed = true;
      if (loudspeaker && loudspeaker.context.state !== 'closed') await loudspeaker.context.close();
    },
  };
}

function openOrStop(open: () => Loudspeaker): Loudspeaker {
  try {
    return open();
  } catch (error) {
    throw new OutputStopped(voices.noOutput, { cause: error });
  }
}

/** Resolves when all sources have ended or `signal` aborts, which silences them; rejects when the output stops under them. */
async function ended(
  context: AudioContext,
  sources: readonly AudioScheduledSourceNode[],
  signal: AbortSignal,
): Promise<void> {
  const listening = new AbortController();
  const once = { once: true, signal: listening.signal };
  const silence = (): void => sources.forEach((source) => source.disconnect());
  const allEnded = Promise.all(
    sources.map((source) => new Promise<void>((resolve) => source.addEventListener('ended', () => resolve(), once))),
  );
  const stopped = new Promise<void>((resolve, reject) => {
    signal.addEventListener('abort', () => resolve(silence()), once);
    // A telephone call or a locked screen takes the output away, and then no 'ended' comes.
    const onChange = (): void => {
      if (context.state !== 'running') reject(new OutputStopped(voices.outputInterrupted));
    };
    context.addEventListener('statechange', onChange, { signal: listening.signal });
  });
  try {
    await Promise.race([allEnded, stopped]);
  } finally {
    listening.abort();
    silence();
  }
}
