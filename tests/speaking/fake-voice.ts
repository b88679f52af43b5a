import type { Progress, Utterance, Voice } from '../../src/speaking/voice.ts';
import type { VoiceKind } from '../../src/speaking/types.ts';

type Script = (utterance: Utterance, signal: AbortSignal, progress: Progress) => Promise<void>;

export interface FakeVoice extends Voice {
  readonly heard: string[];
  isClosed: boolean;
}

/** A voice whose timing the test decides. It stands in for a device only where the rule under test is about time. */
export function fakeVoice(kind: VoiceKind, script: Script = speaksFor(1000), notReady?: string): FakeVoice {
  const voice: FakeVoice = {
    kind,
    startWithinMs: 1500,
    heard: [],
    isClosed: false,
    prepare: () => (notReady ? Promise.reject(new Error(notReady)) : Promise.resolve()),
    speak(utterance, signal, progress) {
      return script(utterance, signal, {
        ...progress,
        sounding() {
          voice.heard.push(utterance.text);
          progress.sounding();
        },
      });
    },
    close: () => void (voice.isClosed = true),
  };
  return voice;
}

/** Starts at once and ends after `ms`. */
export const speaksFor =
  (ms: number): Script =>
  (_utterance, _signal, { sounding, started }) => {
    sounding();
    started(ms);
    return new Promise((resolve) => setTimeout(resolve, ms));
  };

/** Never reports a start, nor an end, and does not heed a stop. */
export const hangs: Script = () => new Promise(() => undefined);

/** Reports a start that should last `expectedMs`, and never an end. */
export const neverEnds =
  (expectedMs: number): Script =>
  (_utterance, _signal, { sounding, started }) => {
    sounding();
    started(expectedMs);
    return new Promise(() => undefined);
  };

export const breaksWith =
  (error: Error): Script =>
  () =>
    Promise.reject(error);
