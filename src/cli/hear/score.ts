/** How well recordings were heard, held against what was said in them. */
import type { Meaning } from '../../session/intent.ts';
import { align, type Pair } from './alignment.ts';
import type { Judge, Judged } from './judge.ts';

/** A recording with what was said and what was heard in it. */
export interface Trial {
  readonly file: string;
  /** Lower case, single spaces; empty where nothing was said that is for us. */
  readonly transcript: string;
  readonly kind: string | null;
  readonly utterances: readonly (Judged & { readonly text: string; readonly decisionMs: number | null })[];
}

/** What came of a recording that holds a reading. */
export interface Readings {
  readonly said: number;
  /** Understood as the one reading that was said. */
  readonly right: number;
  /** Else: another one was accepted, … */
  readonly wrong: number;
  /** … else something was asked, … */
  readonly asked: number;
  /** … else nothing came of it. */
  readonly missed: number;
}

export interface Score {
  readonly recordings: number;
  /** Of recordings with a transcript: words said, and the changes that lead to what was heard. */
  readonly words: { readonly said: number; readonly changed: number; readonly lost: number; readonly added: number };
  readonly sentences: { readonly said: number; readonly right: number };
  readonly readings: Readings;
  /** Accepted as what was not said, in recordings that mean something here, and in those that mean nothing. */
  readonly falseAccepts: {
    readonly ofOther: number;
    readonly amongMeant: number;
    readonly ofNothing: number;
    readonly amongNothing: number;
  };
  readonly decisionMs: readonly number[];
}

export interface FalseAccept {
  readonly file: string;
  readonly said: string;
  readonly heard: string;
  readonly meaning: Meaning;
}

export const falseAcceptsIn = (trial: Trial, judge: Judge): readonly FalseAccept[] => {
  const meant = meantBy(trial, judge);
  return trial.utterances.flatMap(({ text, outcome, meaning }) =>
    outcome === 'accepted' && meaning && !isSame(meaning, meant)
      ? [{ file: trial.file, said: trial.transcript, heard: text, meaning }]
      : [],
  );
};

export function scoreOf(trials: readonly Trial[], judge: Judge): Score {
  const worded = trials.filter(({ transcript }) => transcript !== '');
  const pairs = worded.flatMap(pairsIn);
  const count = (is: (pair: Pair) => boolean): number => pairs.filter(is).length;
  const accepts = trials.map((trial) => ({
    isMeant: meantBy(trial, judge) !== null,
    isFalse: falseAcceptsIn(trial, judge).length > 0,
  }));
  const among = (isMeant: boolean) => accepts.filter((each) => each.isMeant === isMeant);
  return {
    recordings: trials.length,
    words: {
      said: count(({ said }) => said !== null),
      changed: count(({ said, heard }) => said !== null && heard !== null && said !== heard),
      lost: count(({ heard }) => heard === null),
      added: count(({ said }) => said === null),
    },
    sentences: {
      said: worded.length,
      right: worded.filter((trial) => pairsIn(trial).every(({ said, heard }) => said === heard)).length,
    },
    readings: readingsIn(trials, judge),
    falseAccepts: {
      ofOther: among(true).filter(({ isFalse }) => isFalse).length,
      amongMeant: among(true).length,
      ofNothing: among(false).filter(({ isFalse }) => isFalse).length,
      amongNothing: among(false).length,
    },
    decisionMs: trials.flatMap(({ utterances }) => utterances.flatMap(({ decisionMs }) => decisionMs ?? [])),
  };
}

/** Whether each word that was said is in some phrase of the moment: others can only be refused. */
export const isInPhrases = ({ transcript }: Trial, { phrases }: Judge): boolean => {
  const words = phrases && new Set(phrases.flatMap(wordsOf));
  return transcript !== '' && wordsOf(transcript).every((word) => words?.has(word) ?? true);
};

/** The words that were changed, lost or added, the commonest first. */
export function confusionsIn(trials: readonly Trial[]): readonly { readonly pair: Pair; readonly count: number }[] {
  const found = new Map<string, { pair: Pair; count: number }>();
  for (const pair of trials.filter(({ transcript }) => transcript !== '').flatMap(pairsIn)) {
    if (pair.said === pair.heard) continue;
    const key = JSON.stringify([pair.said, pair.heard]);
    const before = found.get(key);
    if (before) before.count += 1;
    else found.set(key, { pair, count: 1 });
  }
  return [...found.values()].sort((a, b) => b.count - a.count);
}

const pairsIn = ({ transcript, utterances }: Trial): readonly Pair[] =>
  align(
    wordsOf(transcript),
    utterances.flatMap(({ text }) => wordsOf(text)),
  );

const wordsOf = (text: string): readonly string[] => text.split(' ').filter(Boolean);

/** What the transcript means when every word of it is surely heard. */
const meantBy = ({ transcript }: Trial, judge: Judge): Meaning | null =>
  transcript === '' ? null : judge.judge(wordsOf(transcript).map((word) => ({ word, confidence: 1 }))).meaning;

function readingsIn(trials: readonly Trial[], judge: Judge): Readings {
  const ends = trials.flatMap((trial): Exclude<keyof Readings, 'said'>[] => {
    const meant = meantBy(trial, judge);
    if (meant === null || !READINGS.has(meant.kind)) return [];
    const meanings = trial.utterances.flatMap(({ meaning }) => meaning ?? []);
    const [only, ...more] = meanings;
    if (only && more.length === 0 && isSame(only, meant)) return ['right'];
    if (falseAcceptsIn(trial, judge).length > 0) return ['wrong'];
    return [trial.utterances.some(({ outcome }) => outcome === 'asked') ? 'asked' : 'missed'];
  });
  const count = (end: string): number => ends.filter((each) => each === end).length;
  return {
    said: ends.length,
    right: count('right'),
    wrong: count('wrong'),
    asked: count('asked'),
    missed: count('missed'),
  };
}

/** "Unclear" is one too: some words allow more than one reading, and then asking is right. */
const READINGS: ReadonlySet<Meaning['kind']> = new Set(['reading', 'correction', 'witness', 'unclear']);

/** The same meaning; the doubts about a reading, which come from how surely it was heard, are no part of it. */
const isSame = (a: Meaning, b: Meaning | null): boolean => b !== null && key(a) === key(b);

const key = (meaning: Meaning): string =>
  JSON.stringify('reading' in meaning ? { kind: meaning.kind, ...meaning.reading } : meaning);
