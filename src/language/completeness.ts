/** How far an utterance has come, from its words so far: what the end of speech is decided by. */
import { MISHEARD } from './decoys.ts';
import { grammarOf } from './grammar.ts';
import { canGoOn, matchesOf } from './grammar-match.ts';
import { plainWords } from './numbers/read.ts';
import type { Situation } from './situation.ts';

export type Completeness =
  /** Something that may be said now, and no longer phrase begins with it. */
  | 'complete and closed'
  /** Something that may be said now, which is also the beginning of something longer. */
  | 'complete, may go on'
  /** The beginning of something that may be said now. No words at all are one. */
  | 'unfinished'
  /** Nothing that may be said now, whatever follows. */
  | 'nothing';

/**
 * Judges words by the grammar that they will be understood by in this situation. The values of the procedure have no part
 * in it. Pure: the same words are always the same.
 */
export function completenessIn(situation: Situation): (words: readonly string[]) => Completeness {
  const { sayings, rules } = grammarOf(situation);
  const fixed = sayings.map((saying) => saying.words);
  const forms = rules.flatMap((rule) => rule.forms);
  return (heard) => {
    const asHeard = plainWords(heard).join(' ');
    const text = MISHEARD.get(asHeard) ?? asHeard;
    const words = text === '' ? [] : text.split(' ');
    const isComplete = fixed.includes(text) || matchesOf(forms, words).length > 0;
    const goesOn = words.length === 0 || fixed.some((saying) => saying.startsWith(`${text} `)) || canGoOn(forms, words);
    if (isComplete) return goesOn ? 'complete, may go on' : 'complete and closed';
    return goesOn ? 'unfinished' : 'nothing';
  };
}
