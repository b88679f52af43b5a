import { isWellFormed, type Meaning, type SaidReading } from '../session/intent.ts';
import { compare, DECIMAL, fromWritten, unitsOf, type Unit } from '../units/index.ts';
import { plainWords, readNumber, readNumbers } from './numbers/read.ts';
import type { ReadingRoom, Situation } from './situation.ts';
import { TORQUE_UNIT_SPOKEN } from './words.ts';

/** One word as the recogniser gave it. Typed and tapped words have confidence 1. */
export interface HeardWord {
  readonly word: string;
  readonly confidence: number;
}

export type Understanding =
  | { readonly kind: 'meant'; readonly meaning: Meaning }
  /** Not for us, or nothing that may be said now. */
  | { readonly kind: 'nothing' };

/** A command is acted on at once, so it wants sureness; a reading is read back anyway, so a doubt is asked instead. */
const SURE_COMMAND = 0.85;
/** These change nothing that stands, so missing one costs more than taking one by mistake. */
const HARMLESS: ReadonlySet<Meaning['kind']> = new Set(['say again', 'stand by', 'negative']);
const SURE_HARMLESS = 0.5;
const SURE_READING = 0.7;

/**
 * What a whole utterance means in a situation. A command word inside other talk is no command: all words count.
 * More than one possible reading, or a doubtful one, becomes `unclear`: it is asked, never guessed.
 */
export function understand(heard: readonly HeardWord[], situation: Situation): Understanding {
  const words = heard.flatMap(({ word }) => (DECIMAL.test(word) ? [word] : plainWords([word])));
  const sureness = Math.min(1, ...heard.map(({ confidence }) => confidence));
  const text = words.join(' ');

  const saying = situation.sayings.find((candidate) => candidate.words === text);
  if (saying) {
    const enough = HARMLESS.has(saying.meaning.kind) ? SURE_HARMLESS : SURE_COMMAND;
    return sureness >= enough ? meant(saying.meaning) : NOTHING;
  }
  const isCorrection = words[0] === 'correction';
  const room = isCorrection ? situation.correction : situation.reading;
  if (room === null || words.length === 0) return NOTHING;
  const rest = isCorrection ? words.slice(1) : words;
  const click = isCorrection ? null : clickIn(rest, room);
  if (click) return sureness >= SURE_COMMAND ? meant(click) : NOTHING;

  const { unit, before } = splitUnit(rest);
  const readings = readingsIn(before, room);
  const [reading, ...others] = readings;
  if (reading === undefined) return NOTHING;
  // No unit is ever converted by ear: the tool has one scale, and it was not read off that.
  if (unit !== null && unit !== room.unit) return meant({ kind: 'unclear', doubt: 'other unit', readings: [] });
  if (others.length > 0) return meant({ kind: 'unclear', doubt: 'several readings', readings });
  if (sureness < SURE_READING) return meant({ kind: 'unclear', doubt: 'not sure', readings });
  return meant({ kind: isCorrection ? 'correction' : 'reading', reading });
}

const NOTHING: Understanding = { kind: 'nothing' };
const meant = (meaning: Meaning): Understanding => ({ kind: 'meant', meaning });

/** Words that may stand before a fastener's number. */
const LABELS = new Set(['stud', 'nut', 'bolt', 'screw', 'fastener', 'number']);

function clickIn(words: readonly string[], room: ReadingRoom): Meaning | null {
  if (!room.takesClicks || words.at(-1) !== 'click') return null;
  const before = withoutLabel(words.slice(0, -1)).rest;
  if (before.length === 0) return { kind: 'click', fastener: null };
  const [fastener, ...others] = digitsOf(before).filter((digits) => FASTENER_NUMBER.test(digits));
  return fastener !== undefined && others.length === 0 ? { kind: 'click', fastener: Number(fastener) } : null;
}

/** Every reading the words allow on this scale, each once. */
function readingsIn(words: readonly string[], room: ReadingRoom): readonly SaidReading[] {
  if (words.length > LONGEST_READING) return [];
  const { isLabelled, rest } = withoutLabel(words);
  // A number that was called a fastener's is one, even where there is no such fastener: that is said, not passed over.
  const isNamed = isLabelled || rest.includes('at');
  const all = numbersIn(rest).filter(({ fastener }) => !isNamed || fastener !== null);
  const known = all.filter(({ fastener }) => fastener === null || room.fasteners.has(fastener));
  const possible = isNamed && known.length === 0 ? all : known;
  // What the scale cannot show was hardly read off it. Where nothing fits, the words stand as said and are read back.
  const onScale = possible.filter(({ value }) => isOnScale(value, room));
  const kept = onScale.length > 0 ? onScale : possible.filter(({ fastener }) => isNamed || fastener === null);
  // "two five" while stud six is called is a value, not stud two: it is read back with the number that it is taken for.
  const asCalled = kept.filter(({ fastener }) => fastener === null || fastener === room.called);
  return [
    ...new Map(
      (asCalled.length > 0 ? asCalled : kept).map((reading) => [`${reading.fastener}:${reading.value}`, reading]),
    ).values(),
  ];
}

/** In words. "bolt number one hundred and twenty three at one thousand two hundred and thirty four point five" has 16. */
const LONGEST_READING = 24;

function numbersIn(words: readonly string[]): readonly SaidReading[] {
  return cutsOf(words)
    .filter(({ fastener }) => fastener === null || FASTENER_NUMBER.test(fastener))
    .map(({ fastener, value }) => ({
      fastener: fastener === null ? null : Number(fastener),
      value: withoutLeadingZeros(value),
    }))
    .filter(isWellFormed);
}

/** Decimal text of a value, and of the fastener before it. */
interface Cut {
  readonly fastener: string | null;
  readonly value: string;
}

/** "four at two four" has its own cut; without "at", every cut between a fastener number and a value counts. */
function cutsOf(words: readonly string[]): readonly Cut[] {
  const at = words.indexOf('at');
  if (at >= 0) {
    const values = digitsOf(words.slice(at + 1));
    return digitsOf(words.slice(0, at)).flatMap((fastener) => values.map((value) => ({ fastener, value })));
  }
  if (isFigures(words)) return digitsOf(words).map((value) => ({ fastener: null, value }));
  return readNumbers(words).map((said) => ({
    fastener: said.kind === 'value' ? null : said.fastener.digits,
    value: said.value.digits,
  }));
}

/** What words can mean as one number, as decimal text. Typed figures are one word, and mean themselves. */
const digitsOf = (words: readonly string[]): readonly string[] =>
  isFigures(words) ? words : readNumber(words).map(({ digits }) => digits);

const isFigures = (words: readonly string[]): boolean =>
  words.length === 1 && words.every((word) => DECIMAL.test(word));

/** A number that can be marked on a part. */
const FASTENER_NUMBER = /^\d{1,4}$/;

function withoutLabel(words: readonly string[]): { isLabelled: boolean; rest: readonly string[] } {
  let labels = 0;
  while (LABELS.has(words[labels] ?? '')) labels++;
  return { isLabelled: labels > 0, rest: words.slice(labels) };
}

/** A unit at the end of the words, and the words before it. */
function splitUnit(words: readonly string[]): {
  readonly unit: Unit<'torque'> | null;
  readonly before: readonly string[];
} {
  for (const unit of unitsOf('torque')) {
    const form = TORQUE_UNIT_SPOKEN[unit].map((text) => text.split(' ')).find((form) => endsWith(words, form));
    if (form) return { unit, before: words.slice(0, -form.length) };
  }
  return { unit: null, before: words };
}

const endsWith = (words: readonly string[], end: readonly string[]): boolean =>
  words.length > end.length && end.every((word, i) => words[words.length - end.length + i] === word);

const isOnScale = (value: string, { scale, unit }: ReadingRoom): boolean => {
  const reading = fromWritten('torque', { value, unit });
  return compare(reading, scale.min) >= 0 && compare(reading, scale.max) <= 0;
};

const withoutLeadingZeros = (digits: string): string => digits.replace(/^0+(?=\d)/, '');
