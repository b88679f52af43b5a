/**
 * The grammar of a situation, as data: everything that may be said now, and nothing else. The recogniser's phrases
 * (phrases.ts) and the meaning of an utterance (understand.ts) are both read from it.
 */
import {
  BEFORE_NAME,
  BEFORE_VALUE,
  BETWEEN,
  CLICK,
  CORRECTION,
  IT,
  LOGGED,
  LOOK_UP,
  MINUS,
  namesOf,
  ON,
  unitsAfter,
  WITNESS,
  WRITTEN_MINUS,
  type Wording,
} from './carriers.ts';
import { sayUnit } from './say-observed.ts';
import type { Saying } from './sayings.ts';
import type { ReadingRoom } from './reading-room.ts';
import type { Situation } from './situation.ts';

/** One place of an utterance. */
export type Part =
  | { readonly kind: 'words'; readonly wordings: readonly Wording[]; readonly optional: boolean }
  /** A spoken number: of a fastener, a value, or a fastener and then its value with no word between them. */
  | { readonly kind: 'number'; readonly of: 'fastener' | 'value' | 'fastener and value' }
  /** A whole reading that is taken back in the same breath: its value is dropped, its fastener stands. */
  | { readonly kind: 'taken back'; readonly forms: readonly Form[] };

/** A way to say a reading or a click, place by place. */
export interface Form {
  /** Whether its words say that a number is a fastener's: it is one then, even where there is no such fastener. */
  readonly names: boolean;
  readonly parts: readonly Part[];
}

/** The forms of one meaning, with the fasteners and the scale that they are about. */
export interface ReadingRule {
  readonly meaning: 'reading' | 'correction' | 'click' | 'logged' | 'witness';
  readonly forms: readonly Form[];
  readonly room: ReadingRoom;
}

/** The forms of a value that is read off something else than a torque tool. */
export interface ValueRule {
  readonly meaning: 'observed';
  readonly forms: readonly Form[];
}

export type Rule = ReadingRule | ValueRule;

export interface Grammar {
  /** Fixed phrases, each a whole utterance. */
  readonly sayings: readonly Saying[];
  readonly rules: readonly Rule[];
}

const said = (wordings: readonly Wording[]): Part => ({ kind: 'words', wordings, optional: false });
const perhaps = (wordings: readonly Wording[]): Part => ({ kind: 'words', wordings, optional: true });
const number = (of: Extract<Part, { kind: 'number' }>['of']): Part => ({ kind: 'number', of });

/** The ways to say a reading. Each utterance is of one form, so that its words are cut in the ways of that form only. */
function readingForms({ label, unit }: ReadingRoom): readonly Form[] {
  const names = namesOf(label);
  const units = perhaps(unitsAfter(unit));
  return [
    // "two four point five", "it's two four newton metres"
    { names: false, parts: [perhaps(BEFORE_VALUE), number('value'), units] },
    // "four two four": a fastener and its value
    { names: false, parts: [number('fastener and value'), units] },
    // "stud four two four", "at stud four, two four"
    { names: true, parts: [perhaps(BEFORE_NAME), said(names), number('fastener and value'), units] },
    // "on four two four"
    { names: true, parts: [said(ON), number('fastener and value'), units] },
    // "stud four at two four", "four is two four"
    {
      names: true,
      parts: [perhaps(BEFORE_NAME), perhaps(names), number('fastener'), said(BETWEEN), number('value'), units],
    },
    // "two four newton metres on stud four"
    { names: true, parts: [number('value'), units, said(BEFORE_NAME), said(names), number('fastener')] },
  ];
}

/** The same form after other words. */
const after = (parts: readonly Part[], form: Form): Form => ({ ...form, parts: [...parts, ...form.parts] });

/** "four click". Of a setting tool: it clicked at the value it was set to. */
const clickForms = ({ label }: ReadingRoom): readonly Form[] => [
  { names: false, parts: [perhaps(IT), said(CLICK)] },
  { names: true, parts: [perhaps(namesOf(label)), number('fastener'), said(CLICK)] },
];

/** "what did you log for four": what is logged of a fastener. */
const loggedForms = ({ label }: ReadingRoom): readonly Form[] => [
  { names: true, parts: [said(LOOK_UP), said([{ words: label, offered: true }]), number('fastener')] },
  { names: true, parts: [said(LOGGED), perhaps(namesOf(label)), number('fastener')] },
];

/** "zero point four", "correction minus four decimal zero": a value, and nothing else. Its unit may be typed after it. */
const valueForms = ({ unit, belowZero }: NonNullable<Situation['observed']>): readonly Form[] => [
  {
    names: false,
    parts: [
      perhaps(CORRECTION),
      perhaps(BEFORE_VALUE),
      perhaps(belowZero ? MINUS : WRITTEN_MINUS),
      number('value'),
      ...(unit === ''
        ? []
        : [
            perhaps([
              { words: unit.toLowerCase(), offered: false },
              { words: sayUnit(unit), offered: false },
            ]),
          ]),
    ],
  },
];

/** The grammar of what may be said in a situation. */
export function grammarOf({ sayings, reading, correction, logged, witness, observed }: Situation): Grammar {
  const rules: Rule[] = [];
  if (observed) rules.push({ meaning: 'observed', forms: valueForms(observed) });
  if (reading) {
    const forms = readingForms(reading);
    if (reading.takesClicks) rules.push({ meaning: 'click', forms: clickForms(reading), room: reading });
    // "two three, correction two four": ICAO has the word inside what was said as well as before it.
    const takenBack: Part = { kind: 'taken back', forms };
    const anew = forms.map((form) => after([takenBack, said(CORRECTION)], form));
    rules.push({ meaning: 'reading', forms: [...forms, ...anew], room: reading });
  }
  if (witness) {
    const forms = readingForms(witness).map((form) => after([said(WITNESS)], form));
    rules.push({ meaning: 'witness', forms, room: witness });
  }
  if (logged) rules.push({ meaning: 'logged', forms: loggedForms(logged), room: logged });
  if (correction) {
    const forms = readingForms(correction).map((form) => after([said(CORRECTION)], form));
    rules.push({ meaning: 'correction', forms, room: correction });
  }
  return { sayings, rules };
}
