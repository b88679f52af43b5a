import { createSignal, type Accessor } from 'solid-js';
import { judgeBackground } from '../hearing/sound-judgement.ts';
import type { HearingState, Utterance } from '../hearing/types.ts';
import { isHeardAs, trialJudge, trialPhrases, TRIALS } from '../language/voice-trial.ts';
import type { Voice } from '../storage/voices.ts';
import { microphone } from '../words/microphone.ts';
import { now } from './clock.ts';
import type { Devices } from './devices.ts';

export type Stage =
  | { readonly kind: 'before' }
  | { readonly kind: 'silence' }
  | { readonly kind: 'say'; readonly phrase: string }
  /** What was measured; null where the ear never opened. */
  | { readonly kind: 'over'; readonly voice: Voice | null };

export interface MicrophoneCheck {
  readonly stage: Accessor<Stage>;
  /** Those that are over, in the order they were asked for. */
  readonly trials: Accessor<Voice['trials']>;
  /** Call from a tap: browsers give the microphone only then. Resolves when the check is over. */
  begin(): Promise<Voice | null>;
  /** Ends it where it stands, and leaves nothing behind. */
  leave(): void;
}

const SILENCE_MS = 2000;
/** To begin to answer and to end; most take two seconds. */
const ANSWER_MS = 8000;
/** The voice says a sentence in less, and a microphone is asked for in more. */
const EAR_OPENS_MS = 15_000;

/** Measures how one person is heard here: two seconds of silence, then a few phrases, each said back. */
export function createMicrophoneCheck(devices: Devices, person: string): MicrophoneCheck {
  const [stage, setStage] = createSignal<Stage>({ kind: 'before' });
  const [trials, setTrials] = createSignal<Voice['trials']>([]);
  let leaving = new AbortController();

  async function run(signal: AbortSignal): Promise<Voice | null> {
    const { hearing } = devices;
    hearing.setPhrases(trialPhrases(), trialJudge);
    setTrials([]);
    setStage({ kind: 'silence' });
    await devices.start();
    // Left while the browser asked for the microphone, or another window has it: nothing is to be said here.
    if (signal.aborted || devices.elsewhere()) return null;
    await devices.announce([microphone.beSilent]);
    if (!(await earOpens(devices, signal))) return null;
    await pause(SILENCE_MS, signal);
    const background = devices.measured()?.noise ?? null;
    let isClipped = false;
    // Where no speech could stand out, nobody is made to shout.
    const isHopeless = judgeBackground({ noise: background, speech: null }) === 'too loud to trust';
    let last = '';
    for (const phrase of isHopeless || background === null ? [] : TRIALS) {
      if (signal.aborted) return null;
      setStage({ kind: 'say', phrase });
      await devices.announce([...(last ? [last] : []), microphone.say(phrase)]);
      if (!(await earOpens(devices, signal))) return null;
      const trial = trialOf(phrase, await nextUtterance(devices, signal));
      isClipped ||= devices.measured()?.isClipped ?? false;
      setTrials([...trials(), trial]);
      last = trial.heard ? microphone.iHeard(trial.heard) : microphone.iHeardNothing;
    }
    const { noise, speech } = devices.measured() ?? { noise: null, speech: null };
    return {
      name: person,
      checkedAt: now().utc,
      // Machines come and go: the louder of the two counts.
      noise: background === null || noise === null ? background : Math.max(background, noise),
      speech: trials().some(({ heard }) => heard) ? speech : null,
      isClipped,
      trials: [...trials()],
    };
  }

  return {
    stage,
    trials,
    async begin() {
      leaving.abort();
      leaving = new AbortController();
      const { signal } = leaving;
      const voice = await run(signal);
      if (!signal.aborted) setStage({ kind: 'over', voice });
      return signal.aborted ? null : voice;
    },
    leave() {
      leaving.abort();
      void devices.announce([]);
    },
  };
}

const NO_WORD = '[unk]';

function trialOf(asked: string, utterance: Utterance | null): Voice['trials'][number] {
  const words = utterance?.words.filter(({ word }) => word !== NO_WORD) ?? [];
  const heard = words.map(({ word }) => word);
  // With other talk in it, it is not what was asked for.
  const isWhole = utterance !== null && words.length === utterance.words.length;
  return {
    asked,
    heard: heard.join(' '),
    confidence: heard.length === 0 ? 0 : Math.max(0, Math.min(1, ...words.map(({ confidence }) => confidence))),
    isRight: isWhole && isHeardAs(asked, heard),
  };
}

const isOpen = ({ kind }: HearingState): boolean => kind === 'listening' || kind === 'hearing';

/** @returns whether it is open; not where it fails, or takes too long */
function earOpens({ hearing }: Devices, signal: AbortSignal): Promise<boolean> {
  return first<boolean>(EAR_OPENS_MS, false, signal, (settle) => {
    const look = (state: HearingState): void => {
      if (isOpen(state)) settle(true);
      else if (state.kind === 'failed') settle(false);
    };
    const end = hearing.subscribe(look);
    look(hearing.state);
    return end;
  });
}

/** The next utterance with a word in it; null where none comes in time. */
function nextUtterance({ hearing }: Devices, signal: AbortSignal): Promise<Utterance | null> {
  return first<Utterance | null>(ANSWER_MS, null, signal, (settle) =>
    hearing.onUtterance((utterance) => {
      if (utterance.words.some(({ word }) => word !== NO_WORD)) settle(utterance);
    }),
  );
}

const pause = (ms: number, signal: AbortSignal): Promise<null> => first(ms, null, signal, () => () => undefined);

/** What a subscription gives first; `otherwise` where that takes too long, or nobody waits any more. */
async function first<Value>(
  ms: number,
  otherwise: Value,
  signal: AbortSignal,
  subscribe: (settle: (value: Value) => void) => () => void,
): Promise<Value> {
  if (signal.aborted) return otherwise;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let end = (): void => undefined;
  try {
    return await new Promise<Value>((settle) => {
      timer = setTimeout(() => settle(otherwise), ms);
      signal.addEventListener('abort', () => settle(otherwise), { once: true });
      end = subscribe(settle);
    });
  } finally {
    clearTimeout(timer);
    end();
  }
}
