import { voices } from '../words/voices.ts';
import { separateDigits } from './digits.ts';
import { expectedMs } from './speed.ts';
import { within } from './time-limit.ts';
import { reasonOf, type Voice } from './voice.ts';

const VOICES_WITHIN_MS = 2_000;
const START_WITHIN_MS = 1_500;
const POLL_MS = 100;
/** Said without volume, to see whether the voice answers. Some systems ignore the volume, so it is no command either. */
const CHECK_TEXT = 'voice check';

/**
 * The voice of the operating system. Only voices that the device has itself are used: others need the network.
 * @param synthesis `window.speechSynthesis`; undefined where the browser has none.
 */
export function createSystemVoice(synthesis: SpeechSynthesis | undefined, stretch: () => number): Voice {
  let chosen: SpeechSynthesisVoice | undefined;

  /** Resolves at the end; `onStart` is called at the first sound. */
  function utter(
    text: string,
    { rate, volume, signal, onStart }: { rate: number; volume: number; signal: AbortSignal; onStart: () => void },
  ): Promise<void> {
    return new Promise((resolve, reject) => {
      if (signal.aborted) return resolve();
      if (!synthesis || !chosen) return reject(new Error(voices.noneChosen));
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.voice = chosen;
      utterance.lang = chosen.lang;
      utterance.rate = rate;
      utterance.volume = volume;
      utterance.onstart = onStart;
      utterance.onend = () => resolve();
      utterance.onerror = ({ error }) => reject(new Error(voices.reports(error)));
      signal.addEventListener('abort', () => {
        synthesis.cancel();
        resolve();
      });
      synthesis.speak(utterance);
    });
  }

  async function check(): Promise<void> {
    const stop = new AbortController();
    const started = new Promise<void>((resolve, reject) => {
      utter(CHECK_TEXT, { rate: 1, volume: 0, signal: stop.signal, onStart: resolve }).catch(reject);
    });
    try {
      await within(START_WITHIN_MS, started, voices.didNotStart(START_WITHIN_MS));
    } finally {
      stop.abort();
    }
  }

  return {
    kind: 'system',
    startWithinMs: START_WITHIN_MS,
    async prepare() {
      if (!synthesis) throw new Error(voices.noneHere);
      chosen = await findVoice(synthesis);
      try {
        await check();
      } catch (error) {
        throw new Error(voices.failedCheck(chosen.name, reasonOf(error)), { cause: error });
      }
    },
    speak({ text }, signal, { sounding, started }) {
      sounding();
      const times = stretch();
      return utter(separateDigits(text), {
        rate: 1 / times,
        volume: 1,
        signal,
        onStart: () => started(expectedMs(text, times)),
      });
    },
    close: () => synthesis?.cancel(),
  };
}

/** Waits for the list of voices, which many browsers fill late, and takes the default one if it will do. */
async function findVoice(synthesis: SpeechSynthesis): Promise<SpeechSynthesisVoice> {
  const giveUpAt = performance.now() + VOICES_WITHIN_MS;
  for (;;) {
    const usable = synthesis.getVoices().filter((voice) => voice.localService && /^en\b/i.test(voice.lang));
    const best = usable.find((voice) => voice.default) ?? usable[0];
    if (best) return best;
    if (performance.now() >= giveUpAt) throw new Error(voices.noLocalEnglish(VOICES_WITHIN_MS));
    await new Promise((resolve) => setTimeout(resolve, POLL_MS));
  }
}
