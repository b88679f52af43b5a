/** Every fixed phrase and the one thing that it means. */
import type { DeviationKind, Meaning, Question } from '../session/intent.ts';

/** A fixed phrase, always a whole utterance, and the one thing it means here. */
export interface Saying {
  readonly words: string;
  readonly meaning: Meaning;
  /** Understood where it is written, and never told to the recogniser: one of its words sounds like a digit. */
  readonly written?: true;
}

export const says = (meaning: Meaning, ...phrases: readonly string[]): readonly Saying[] =>
  phrases.map((words) => ({ words, meaning }));

export const SAY_AGAIN = says({ kind: 'say again' }, 'say again');
export const STAND_BY = says({ kind: 'stand by' }, 'stand by');
export const CONTINUE = says({ kind: 'continue' }, 'continue');
export const NEXT = says({ kind: 'next' }, 'next', 'done');
export const TURNED = says({ kind: 'turned' }, 'turned', 'it turned');
export const BACK = says({ kind: 'back' }, 'back', 'go back');
export const AFFIRM = says({ kind: 'affirm' }, 'affirm', 'affirmative');
export const NEGATIVE = says({ kind: 'negative' }, 'negative');
/**
 * In noise the small model hears "nine" for one "affirm" in eight (tests/language/confusions.tsv). Beside a read-back it is
 * asked, and not taken for another value: "correction nine" is one.
 */
export const NINE_FOR_AFFIRM = says({ kind: 'unclear', doubt: 'not sure', readings: [] }, 'nine');
/** "Holding" is another word for those whom "held" is not heard of: it shares its end with "help". */
export const HELD = says({ kind: 'held' }, 'held', 'holding');
export const SET_DOWN = says({ kind: 'set down' }, 'set down', 'it is down');
export const HELP = says({ kind: 'help' }, 'help', 'help me');
export const REUSE_OR_REPLACE = [
  ...says({ kind: 'answer', outcome: 'reuse' }, 'reuse'),
  ...says({ kind: 'answer', outcome: 'replace' }, 'replace'),
];
export const DISREGARD = says({ kind: 'disregard' }, 'disregard', 'cancel that');

export const WITNESS_SAYS = [
  ...says({ kind: 'witness says', agrees: true }, 'witness affirm'),
  ...says({ kind: 'witness says', agrees: false }, 'witness negative'),
];
export const WITNESS_LEAVES = says({ kind: 'second person', name: null }, 'witness leaving');
export const HAND_OVER = says({ kind: 'hand over' }, 'hand over');
export const REPORTS: Readonly<Record<DeviationKind, readonly Saying[]>> = {
  'over torque': says({ kind: 'report', what: 'over torque' }, 'report over torque'),
  'under torque': says({ kind: 'report', what: 'under torque' }, 'report under torque'),
  'takes no torque': says({ kind: 'report', what: 'takes no torque' }, 'report no torque'),
  damage: says({ kind: 'report', what: 'damage' }, 'report damage'),
};
export const LEAVE_OPEN = says({ kind: 'leave open' }, 'leave open');

const asks = (about: Exclude<Question['about'], 'logged'>, spoken: string, ...written: readonly string[]) => {
  const meaning: Meaning = { kind: 'question', question: { about } };
  return [
    ...says(meaning, spoken),
    ...says(meaning, ...written).map((saying) => ({ ...saying, written: true }) as const),
  ];
};
export const WHY: readonly Saying[] = asks('why', 'explain', 'why', 'why is that');
export const WHERE: readonly Saying[] = [
  ...asks('place', 'where are we', 'where am i'),
  ...asks('left', 'remaining', 'what is left', "what's left"),
];
export const QUESTIONS: readonly Saying[] = [
  ...WHERE,
  ...asks('last readings', 'last values', 'last readings', 'last three', 'last three readings'),
  ...asks('slowly', 'say slowly', 'say it slowly'),
  ...WHY,
];
