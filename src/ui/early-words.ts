import { createSignal, type Accessor } from 'solid-js';
import { inHaste } from '../language/doubt.ts';
import { provisionalOf, type Provisional } from '../language/provisional.ts';
import { situationOf, type Situation } from '../language/situation.ts';
import type { Sureness } from '../language/sureness.ts';
import { understand, type Understanding } from '../language/understand.ts';
import { isBack } from '../session/break.ts';
import type { People } from '../session/event.ts';
import type { SessionState } from '../session/state.ts';
import { now } from './clock.ts';
import type { Heeded } from './heeded.ts';
import { SETTLE } from './settle.ts';

/** What utterances mean where the work stands, and what one that may still go on comes to, shown before it counts. */
export interface EarlyWords {
  /** What is being said comes to this, if it is all; null where nothing is shown before it counts. */
  readonly provisional: Accessor<Provisional | null>;
  /** What an utterance means now. A reading that came sooner than a wrench can be moved is in doubt. */
  understood(utterance: Heeded): Understanding;
  /** What it would have meant in another situation. */
  understoodIn(situation: Situation, utterance: Heeded): Understanding;
  /** Shows what an utterance would come to that may still go on. Null takes it back. */
  show(utterance: Heeded | null): void;
  /** Whether an answer of that time may be to what is shown provisionally: that cannot be answered yet. */
  isAnsweredBy(from: number): boolean;
}

interface Fittings {
  readonly state: Accessor<SessionState>;
  /** When what is wanted changed last, and when the fastener that is called was called, in milliseconds on the clock of the page. */
  readonly changedAt: () => number;
  readonly calledAt: () => number;
  /** Nothing can be written any more. */
  readonly isStopped: () => boolean;
  /** How surely these people are to be heard; absent: as anybody. */
  readonly sureness?: ((people: People) => Sureness) | undefined;
}

export function createEarlyWords({ state, changedAt, calledAt, isStopped, sureness }: Fittings): EarlyWords {
  const [provisional, setProvisional] = createSignal<Provisional | null>(null);
  /** When what is shown provisionally came up or went. */
  let swappedAt = -Infinity;

  function put(next: Provisional | null): void {
    const isSwapped = (next?.state ?? null) !== (provisional()?.state ?? null);
    if (isSwapped) swappedAt = performance.now();
    setProvisional(next);
  }

  const understoodIn = (situation: Situation, { words, again = null, isTrusted = true }: Heeded): Understanding =>
    understand(words, situation, { wanted: sureness?.(state().people), again, isTrusted });

  function understood(utterance: Heeded): Understanding {
    const found = understoodIn(situationOf(state()), utterance);
    const { spoken } = utterance;
    return found.kind === 'meant' && spoken
      ? { kind: 'meant', meaning: inHaste(found.meaning, spoken.from - calledAt()) }
      : found;
  }

  return {
    provisional,
    understood,
    understoodIn,
    show(utterance) {
      const isOfBefore = utterance?.spoken !== undefined && utterance.spoken.from < changedAt();
      const understanding = utterance && understood(utterance);
      const isShown = understanding?.kind === 'meant' && !isOfBefore && !isStopped() && !isBack(state(), now().utc);
      put(isShown ? provisionalOf(state(), understanding.meaning, now()) : null);
    },
    isAnsweredBy: (from) => Boolean(provisional()?.state) || from < swappedAt + SETTLE,
  };
}
