/** From words to what they can mean by the forms of a grammar: every way, none preferred. */
import { DECIMAL, type Unit } from '../units/index.ts';
import type { Form, Part } from './grammar.ts';
import { POINT_WORDS } from './numbers/grammar.ts';
import { readNumber, readNumbers, sayDigits, type ReadingStyle } from './numbers/index.ts';
import { readingMachine } from './numbers/read.ts';

/** One way to take an utterance. Figures are exact decimal text, zeros before and after kept. */
export interface Match {
  readonly fastener: string | null;
  readonly value: string | null;
  /** "minus" stood before the value. */
  readonly isMinus: boolean;
  /** The words of the value; none where figures were typed. */
  readonly valueWords: readonly string[];
  readonly unit: Unit<'torque'> | null;
  /** How the words make the value; figures were typed; or words and figures only make it where they are joined. */
  readonly style: ReadingStyle | 'figures' | 'joined' | null;
  readonly names: boolean;
  /** What was taken back in the same breath. */
  readonly dropped: Match | null;
}

/** In words. "bolt number one hundred and twenty three at one thousand two hundred and thirty four point five" has 16. */
const LONGEST_UTTERANCE = 32;

/** Every way in which exactly these words are one of the forms. */
export function matchesOf(forms: readonly Form[], words: readonly string[]): readonly Match[] {
  if (words.length === 0 || words.length > LONGEST_UTTERANCE) return [];
  return forms.flatMap(({ names, parts }) => matchParts(parts, words, { ...NOTHING_YET, names }));
}

/**
 * Whether more words can follow these in one of the forms. It may say so where only the sense of a number is against it:
 * the number of a fastener has four figures at most, and no more words are looked for in it than that they are a number's.
 */
export const canGoOn = (forms: readonly Form[], words: readonly string[]): boolean =>
  words.length < LONGEST_UTTERANCE && forms.some(({ parts }) => partsGoOn(parts, words));

const NOTHING_YET: Match = {
  fastener: null,
  value: null,
  isMinus: false,
  valueWords: [],
  unit: null,
  style: null,
  names: false,
  dropped: null,
};

function matchParts(parts: readonly Part[], words: readonly string[], sofar: Match): readonly Match[] {
  const [part, ...later] = parts;
  if (part === undefined) return words.length === 0 ? [sofar] : [];
  switch (part.kind) {
    case 'words': {
      const without = part.optional ? matchParts(later, words, sofar) : [];
      const withWords = part.wordings.flatMap((wording) => {
        const start = wording.words.split(' ');
        if (!start.every((word, i) => word === words[i])) return [];
        return matchParts(later, words.slice(start.length), {
          ...sofar,
          unit: wording.unit ?? sofar.unit,
          isMinus: wording.isMinus ?? sofar.isMinus,
        });
      });
      return [...without, ...withWords];
    }
    case 'number':
      return beginnings(words).flatMap((length) =>
        numbersIn(part.of, words.slice(0, length), sofar.names).flatMap((found) =>
          matchParts(later, words.slice(length), { ...sofar, ...found }),
        ),
      );
    case 'taken back':
      return beginnings(words).flatMap((length) => {
        // What follows comes first: without "correction" it fails at once.
        const rest = matchParts(later, words.slice(length), sofar);
        if (rest.length === 0) return [];
        const taken = matchesOf(part.forms, words.slice(0, length));
        return taken.flatMap((dropped) => rest.map((match) => ({ ...match, dropped })));
      });
  }
}

function partsGoOn(parts: readonly Part[], words: readonly string[]): boolean {
  const [part, ...later] = parts;
  if (part === undefined) return false;
  // No part of a form is always empty.
  if (words.length === 0) return true;
  switch (part.kind) {
    case 'words':
      return (
        (part.optional && partsGoOn(later, words)) ||
        part.wordings.some((wording) => {
          const start = wording.words.split(' ');
          return words.length < start.length
            ? words.every((word, i) => word === start[i])
            : start.every((word, i) => word === words[i]) && partsGoOn(later, words.slice(start.length));
        })
      );
    case 'number':
      return (
        numberGoesOn(part.of, words) ||
        beginnings(words).some(
          (length) => partsGoOn(later, words.slice(length)) && numbersIn(part.of, words.slice(0, length)).length > 0,
        )
      );
    case 'taken back':
      return (
        canGoOn(part.forms, words) ||
        beginnings(words).some(
          (length) => partsGoOn(later, words.slice(length)) && matchesOf(part.forms, words.slice(0, length)).length > 0,
        )
      );
  }
}

/** Whether these words begin a number that has more words. Every state of the machine leads to an end. */
function numberGoesOn(of: Extract<Part, { kind: 'number' }>['of'], words: readonly string[]): boolean {
  const goesOn = stepsInto(words) === 'goes on';
  if (of !== 'fastener and value') return goesOn;
  const isFastener = (count: number): boolean => numbersIn('fastener', words.slice(0, count)).length > 0;
  return (
    goesOn ||
    beginnings(words).some((length) => {
      const value = words.slice(length);
      return (value.length === 0 || stepsInto(value) === 'goes on') && isFastener(length);
    })
  );
}

/** How far the words lead into a number: out of every number, to where one ends for good, or to where more can follow. */
function stepsInto(words: readonly string[]): 'nowhere' | 'ends' | 'goes on' {
  let states = [readingMachine.start];
  for (const word of words) states = states.flatMap((state) => (state.steps.get(word) ?? []).map(({ to }) => to));
  if (states.length === 0) return 'nowhere';
  return states.some(({ steps }) => steps.size > 0) ? 'goes on' : 'ends';
}

const beginnings = (words: readonly string[]): readonly number[] => words.map((_, i) => i + 1);

type Found = Partial<Pick<Match, 'fastener' | 'value' | 'valueWords' | 'style'>>;

function numbersIn(
  of: Extract<Part, { kind: 'number' }>['of'],
  words: readonly string[],
  names = false,
): readonly Found[] {
  const [figures] = words;
  const isFigures = words.length === 1 && figures !== undefined && DECIMAL.test(figures);
  if (of === 'fastener and value' && words.some((word) => DECIMAL.test(word))) return halfTyped(words, names);
  switch (of) {
    case 'fastener':
      return (isFigures ? [figures] : readNumber(words).map(({ digits }) => digits))
        .filter((digits) => FASTENER_NUMBER.test(digits))
        .map((fastener) => ({ fastener }));
    case 'value':
      return isFigures
        ? [{ value: figures, valueWords: [], style: 'figures' }]
        : readNumber(words).map(({ digits, style }) => ({ value: digits, valueWords: words, style }));
    case 'fastener and value':
      return readNumbers(words).flatMap((said) =>
        said.kind === 'value'
          ? []
          : [
              {
                fastener: said.fastener.digits,
                value: said.value.digits,
                valueWords: said.value.asSaid.split(' '),
                style: said.value.style,
              },
            ],
      );
  }
}

/**
 * One of the two in figures and the other in words, as they may be typed: "nine 12", "9 one two". Figures are never cut.
 * What the same words are elsewhere asked about as well, said out ("one 5" is also 15), is given as joined.
 */
function halfTyped(words: readonly string[], names: boolean): readonly Found[] {
  const areFigures = (some: readonly string[]): boolean => some.every((word) => DECIMAL.test(word));
  const at = areFigures(words.slice(0, 1)) ? 1 : words.length - 1;
  const [fastener, value] = [words.slice(0, at), words.slice(at)];
  if (areFigures(fastener) === areFigures(value) || words.some((word) => word.startsWith('-'))) return [];
  const apart = fastenerAndValue(fastener, value);
  if (apart.length === 0) return [];
  const said = words.map(saidOut);
  const joined = words.flatMap((_, cut) => {
    const behind = said.slice(cut).flat();
    if (cut === 0) return names ? [] : numbersIn('value', behind);
    return cut === at ? [] : fastenerAndValue(said.slice(0, cut).flat(), behind);
  });
  return [...joined.map((found): Found => ({ ...found, style: 'joined' })), ...apart];
}

function fastenerAndValue(fastener: readonly string[], value: readonly string[]): readonly Found[] {
  // "4 point five" is no stud four.
  if (POINT_WORDS.includes(value[0] ?? '')) return [];
  return numbersIn('fastener', fastener).flatMap((one) =>
    numbersIn('value', value).map((other) => ({ ...one, ...other })),
  );
}

/** Figures one by one; any other word as it is. */
const saidOut = (word: string): readonly string[] =>
  DECIMAL.test(word) ? [...word].flatMap((mark) => (mark === '.' ? 'point' : sayDigits(mark))) : [word];

/** A number that can be marked on a part. */
const FASTENER_NUMBER = /^\d{1,4}$/;
