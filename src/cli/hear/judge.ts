/** What the app makes of an utterance: the same understanding and the same decision, at a named moment of a job. */
import { questionAbout } from '../../language/doubt.ts';
import { stateIn, type SituationName } from '../../language/named-situations.ts';
import { recogniserPhrases } from '../../language/phrases.ts';
import { provisionalOf } from '../../language/provisional.ts';
import { sayRefusal } from '../../language/say-refusal.ts';
import { fixed, situationOf, type Situation } from '../../language/situation.ts';
import { understand, type HeardWord, type Understanding } from '../../language/understand.ts';
import { decide } from '../../session/decide.ts';
import type { Meaning } from '../../session/intent.ts';

/** What may be said: at a named moment of a job, or a list of phrases alone. */
export type Sayable =
  | { readonly kind: 'situation'; readonly name: SituationName }
  | { readonly kind: 'phrases'; readonly phrases: readonly string[] };

/**
 * `accepted`: it is carried out (a reading is taken, and read back). `asked`: it is questioned before it counts, or the
 * words that are answers are said once more. `refused`: it does nothing, or may not be done now.
 */
export type Outcome = 'accepted' | 'asked' | 'refused';

export interface Judged {
  readonly outcome: Outcome;
  readonly meaning: Meaning | null;
  /** What is asked, or why it is refused, as it would be spoken. */
  readonly says: string | null;
}

/** A moment, ready to judge utterances. Each is judged afresh: none of them moves the job on. */
export interface Judge {
  /** The recogniser's phrase list; null where anything may be said, as a reason is dictated. */
  readonly phrases: readonly string[] | null;
  readonly situation: Situation;
  /** @param again as `understand` takes it */
  judge(words: readonly HeardWord[], again?: string | null): Judged;
  /** Whether what this comes to is shown while the utterance may still go on. */
  isShown(meaning: Meaning): boolean;
}

/** Phrases of a list are taken as the answers of a check: whole utterances, each surely heard. */
export function judgeOf(sayable: Sayable): Judge {
  if (sayable.kind === 'phrases') {
    const situation = answersAlone(sayable.phrases);
    return {
      phrases: sayable.phrases,
      situation,
      judge: (words, again) => judgeBy(understand(words, situation, { again: again ?? null }), accept),
      isShown: () => false,
    };
  }
  const state = stateIn(sayable.name);
  const situation = situationOf(state);
  const at = { utc: state.lastAt ?? NO_TIME, monotonic: 0 };
  return {
    phrases: situation.dictation ? null : recogniserPhrases(situation),
    situation,
    judge: (words, again) =>
      judgeBy(understand(words, situation, { again: again ?? null }), (meaning) => {
        const decision = decide(state, { meaning, at });
        if (decision.kind === 'accepted') return accept(meaning);
        const says = sayRefusal(state, decision.reason);
        return { outcome: meaning.kind === 'unclear' ? 'asked' : 'refused', meaning, says };
      }),
    isShown: (meaning) => provisionalOf(state, meaning, at) !== null,
  };
}

/** Of a moment in which nothing has happened yet. */
const NO_TIME = '1970-01-01T00:00:00.000Z';

function judgeBy(understood: Understanding, decided: (meaning: Meaning) => Judged): Judged {
  if (understood.kind === 'meant') return decided(understood.meaning);
  const { ask } = understood;
  return ask === undefined
    ? { outcome: 'refused', meaning: null, says: null }
    : { outcome: 'asked', meaning: null, says: ask };
}

/** A reading in doubt is captured, and its question comes before it counts. */
function accept(meaning: Meaning): Judged {
  const [doubt] = meaning.kind === 'reading' || meaning.kind === 'correction' ? (meaning.doubts ?? []) : [];
  return doubt === undefined
    ? { outcome: 'accepted', meaning, says: null }
    : { outcome: 'asked', meaning, says: questionAbout(doubt) };
}

const answersAlone = (phrases: readonly string[]): Situation =>
  fixed(phrases.map((words) => ({ words, meaning: { kind: 'answer', outcome: words } })));
