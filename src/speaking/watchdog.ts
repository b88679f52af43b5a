import { voices } from '../words/voices.ts';
import type { Progress, Utterance, Voice } from './voice.ts';

/** Speech may last this many times longer than expected before its voice counts as stuck. */
const PATIENCE = 3;
/** Beside that, room for a busy machine, in milliseconds. */
const SLACK_MS = 500;

/**
 * Speaks with `voice` and stops it when it hangs: it must start in its own time and end within three times the expected
 * duration. Settles in the turn in which `signal` aborts, whatever the voice does, and then passes no progress on.
 * @throws the signal's reason after an abort; Error with a reason for a person when the voice hangs; the voice's error.
 */
export function speakWatched(
  voice: Voice,
  utterance: Utterance,
  signal: AbortSignal,
  sounding: () => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    if (signal.aborted) return reject(signal.reason as Error);
    const stop = new AbortController();
    let isSettled = false;
    let timer = setTimeout(() => fail(voices.didNotStart(voice.startWithinMs)), voice.startWithinMs);

    /** Once settled, nothing that comes late from the voice counts. */
    function settle(conclude: () => void): void {
      if (isSettled) return;
      isSettled = true;
      clearTimeout(timer);
      signal.removeEventListener('abort', onAbort);
      conclude();
    }
    function onAbort(): void {
      stop.abort();
      settle(() => reject(signal.reason as Error));
    }
    function fail(reason: string): void {
      stop.abort();
      settle(() => reject(new Error(reason)));
    }

    const progress: Progress = {
      sounding: () => {
        if (!isSettled) sounding();
      },
      started: (expectedMs) => {
        if (isSettled) return;
        clearTimeout(timer);
        const limit = Math.round(expectedMs * PATIENCE + SLACK_MS);
        timer = setTimeout(() => fail(voices.didNotEnd(limit)), limit);
      },
    };
    signal.addEventListener('abort', onAbort);
    voice.speak(utterance, stop.signal, progress).then(
      () => settle(resolve),
      (error: Error) => settle(() => reject(error)),
    );
  });
}
