/**
 * The words around a number, as data: which are accepted, and which of them the recogniser is told to expect.
 *
 * The recogniser is told few. A short word that sounds like a digit would turn the digit into itself, and a value would
 * lose its head: such words are understood where they are written, and never offered.
 */
import { unitsOf, type Unit } from '../units/index.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/** Words that stand together in one place of an utterance. */
export interface Wording {
  readonly words: string;
  /** Whether the recogniser is told to expect them. */
  readonly offered: boolean;
  /** The unit that they name, where they name one. */
  readonly unit?: Unit<'torque'>;
  /** It makes the value one below zero. */
  readonly isMinus?: true;
}

const offered = (...all: readonly string[]): readonly Wording[] => all.map((words) => ({ words, offered: true }));
const written = (...all: readonly string[]): readonly Wording[] => all.map((words) => ({ words, offered: false }));

/** "it's two four". Not offered: "it's" and "is" sound like "six", and the small model lacks "reads". */
export const BEFORE_VALUE = written(
  'it is',
  "it's",
  'its',
  "that's",
  'that is',
  'reads',
  'it reads',
  'reading',
  'value',
);

/** "minus zero point two". "Negative" is none: it is the answer no, and nothing else. */
export const MINUS: readonly Wording[] = [{ words: 'minus', offered: true, isMinus: true }];
/** Of a scale that ends at zero: understood, so that it can be refused in words. */
export const WRITTEN_MINUS: readonly Wording[] = [{ words: 'minus', offered: false, isMinus: true }];

/** "four at two four", "four is two four". Only "at" is offered: a lost "at" leaves two cuts, which are asked about. */
export const BETWEEN = [...offered('at'), ...written('is', 'reads', 'is at')];

/** "on four two four". Not offered: "on four" and "one four" sound alike. */
export const ON = written('on');

/** "at stud four two four", "two four on stud four": the name after it says that a fastener is meant. */
export const BEFORE_NAME = written('on', 'at');

/** Whatever the manual calls them, people call them this. */
const FASTENER_NAMES = ['stud', 'nut', 'bolt', 'screw', 'fastener'];

/** Names that may stand before the number of a fastener. The name that the procedure uses is offered, and "number". */
export const namesOf = (label: string): readonly Wording[] => [
  ...offered('number', label),
  ...written(
    ...FASTENER_NAMES.filter((name) => name !== label),
    ...[...new Set([label, ...FASTENER_NAMES])].map((name) => `${name} number`),
  ),
];

/** Units after a value. That of the tool is offered in its usual form; all are known, so that another can be refused. */
export const unitsAfter = (unit: Unit<'torque'>): readonly Wording[] =>
  unitsOf('torque').flatMap((each) =>
    TORQUE_UNIT_SPOKEN[each].map((words, i) => ({ words, offered: each === unit && i === 0, unit: each })),
  );

/** ICAO: an error was made; the correct version is what follows. */
export const CORRECTION = offered('correction');

/** The role word: with one microphone, it says that the second person speaks. */
export const WITNESS = offered('witness');

export const LOOK_UP = offered('look up');
/** Not offered: "for" and "four" sound alike. */
export const LOGGED = written('what did you log for', 'what is logged for', "what's logged for", 'logged for');

export const CLICK = [...offered('click'), ...written('clicked')];
export const IT = written('it');
