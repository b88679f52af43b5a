import { createEffect, createMemo, createSignal, onCleanup, type Accessor } from 'solid-js';
import type { Utterance } from '../hearing/types.ts';
import { judgeIn } from '../language/completeness.ts';
import { isHush } from '../language/hush.ts';
import { missedWords, recogniserPhrases } from '../language/phrases.ts';
import type { Situation } from '../language/situation.ts';
import { typedWords } from '../language/typed.ts';
import type { Source } from '../session/intent.ts';
import { voiceOf } from '../storage/voices.ts';
import type { Shop } from './app.tsx';
import { pronunciationsOf } from './check-words.ts';
import { isTrusted, type HeardSound } from './heard-sound.ts';
import type { Heeded } from './heeded.ts';
import type { LiveSession } from './live-session.ts';
import { createMute, type Mute } from './mute.ts';
import type { SidesCheck } from './sides-check.ts';

/** What is heard, or typed in its place, at work. */
export interface EarAtWork extends Mute {
  /** Words of the moment that the speech model does not know. */
  readonly missing: Accessor<readonly string[]>;
  /** Takes a typed line. While the voice speaks, a typed stop hushes it as a spoken one does. */
  typed(line: string): void;
}

interface Beside {
  readonly sides: SidesCheck;
  /** What may be said now, to the session or to what is asked beside it. */
  readonly situation: Accessor<Situation>;
  readonly isPractice: boolean;
}

/**
 * Listens for what may be said now, for as long as its owner is up.
 * @param who the one who works: whoever takes over is heard as they are
 */
export function createEarAtWork(
  shop: Shop,
  live: LiveSession,
  who: Accessor<string>,
  { sides, situation, isPractice }: Beside,
): EarAtWork {
  const { devices } = shop;
  const mechanic = createMemo(who);
  const [missing, setMissing] = createSignal<readonly string[]>([]);

  createEffect(() => {
    devices.modelName();
    const spoken = pronunciationsOf(shop.voices(), live.state().people);
    const phrases = situation().dictation ? null : recogniserPhrases(situation(), spoken);
    const lacking = devices.hearing.setPhrases(phrases, judgeIn(situation()));
    setMissing(missedWords(situation(), lacking));
  });
  createEffect(() => {
    const speech = voiceOf(shop.voices(), mechanic())?.speech ?? null;
    if (speech !== null) devices.hearing.expectSpeech(speech);
  });
  const hear = (utterance: Heeded, source: Source): void => {
    if (!sides.takesWords(utterance)) void live.hear(utterance, source);
  };
  onCleanup(devices.hearing.onUtterance((utterance) => hear(heeded(utterance, devices.sound()), 'voice')));
  onCleanup(
    devices.hearing.onProvisional((utterance) => live.showProvisional(utterance && heeded(utterance, devices.sound()))),
  );
  onCleanup(
    devices.heedCall(
      // Asked whenever the voice begins.
      () => live.state().people.second !== null && situation().sayings.some(({ meaning }) => meaning.kind === 'help'),
      () => void live.act({ kind: 'help' }, 'voice'),
    ),
  );
  return {
    ...createMute(shop, mechanic, isPractice),
    missing,
    typed(line) {
      const words = typedWords(line);
      if (isHush(words) && devices.speakingState().saying !== null) devices.speaking.hush();
      else hear({ words: words.map(sure) }, 'key');
    },
  };
}

const sure = (word: string): { word: string; confidence: number } => ({ word, confidence: 1 });

function heeded({ words, again, overNoise }: Utterance, sound: HeardSound | null): Heeded {
  const [first, last] = [words[0], words.at(-1)];
  return {
    words,
    again,
    isTrusted: isTrusted(overNoise, sound),
    ...(first && last ? { spoken: { from: first.start, to: last.end } } : {}),
  };
}
