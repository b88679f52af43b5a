import type { Meaning, SaidReading } from '../session/intent.ts';
import { compare, fromWritten, type Unit } from '../units/index.ts';
import { plainWords, readNumber, readNumbers, type SpokenNumbers } from './numbers/read.ts';
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
  const words = plainWords(heard.map(({ word }) => word));
  const sureness = Math.min(1, ...heard.map(({ confidence }) => confidence));
  const text = words.join(' ');

  const saying = situation.sayings.find((candidate) => candidate.words === text);
  if (saying) {
    const enough = HARMLESS.has(saying.meaning.kind) ? SURE_HARMLESS : SURE_COMMAND;
    return sureness >= enough ? { kind: 'meant', meaning: saying.meaning } : { kind: 'nothing' };
  }
  if (situation.reading === null || words.length === 0) return { kind: 'nothing' };

  const isCorrection = situation.correction && words[0] === 'correction';
  const rest = isCorrection ? words.slice(1) : words;
  const click = clickIn(rest, situation.reading);
  if (click && !isCorrection) return sureness >= SURE_COMMAND ? { kind: 'meant', meaning: click } : { kind: 'nothing' };

  const readings = readingsIn(rest, situation.reading);
  const [reading, ...others] = readings;
  if (reading === undefined) return { kind: 'nothing' };
  if (others.length > 0 || sureness < SURE_READING) return { kind: 'meant', meaning: { kind: 'unclear', readings } };
  return { kind: 'meant', meaning: { kind: isCorrection ? 'correction' : 'reading', reading } };
}

/** Words that may stand before a fastener's number. */
const LABELS = new Set(['stud', 'nut', 'bolt', 'screw', 'fastener', 'number']);

function clickIn(words: readonly string[], room: ReadingRoom): Meaning | null {
  if (!room.takesClicks || words.at(-1) !== 'click') return null;
  const before = withoutLabel(words.slice(0, -1)).rest;
  if (before.length === 0) return { kind: 'click', fastener: null };
  const [fastener, ...others] = readNumber(before).map(({ digits }) => Number(digits));
  return fastener !== undefined && others.length === 0 ? { kind: 'click', fastener } : null;
}

/** Every reading the words allow on this scale, each once. */
function readingsIn(words: readonly string[], room: ReadingRoom): readonly SaidReading[] {
  const withUnit = withoutUnit(words, room.unit);
  if (withUnit === null) return [];
  const { isLabelled, rest } = withoutLabel(withUnit);
  const all = numbersIn(rest)
    .filter((said) => !isLabelled || said.kind === 'fastener-and-value')
    .map((said): SaidReading => ({
      fastener: said.kind === 'value' ? null : Number(said.fastener.digits),
      value: withoutLeadingZeros(said.value.digits),
    }));
  const known = all.filter(({ fastener }) => isLabelled || fastener === null || room.fasteners.has(fastener));
  // What the scale cannot show was hardly read off it. Where nothing fits, the words stand as said and are read back.
  const onScale = known.filter(({ value }) => isOnScale(value, room));
  const kept = onScale.length > 0 ? onScale : known.filter(({ fastener }) => isLabelled || fastener === null);
  return [...new Map(kept.map((reading) => [`${reading.fastener}:${reading.value}`, reading])).values()];
}

/** "four at two four" has its own cut; without "at", every cut between a fastener number and a value counts. */
function numbersIn(words: readonly string[]): readonly SpokenNumbers[] {
  const at = words.indexOf('at');
  if (at < 0) return readNumbers(words);
  const fasteners = readNumber(words.slice(0, at));
  const values = readNumber(words.slice(at + 1));
  return fasteners.flatMap((fastener) =>
    values.map((value): SpokenNumbers => ({ kind: 'fastener-and-value', fastener, value })),
  );
}

function withoutLabel(words: readonly string[]): { isLabelled: boolean; rest: readonly string[] } {
  let labels = 0;
  while (LABELS.has(words[labels] ?? '')) labels++;
  return { isLabelled: labels > 0, rest: words.slice(labels) };
}

/** The words before a spoken unit; null where another unit than the tool's was said: no unit is ever converted by ear. */
function withoutUnit(words: readonly string[], unit: Unit<'torque'>): readonly string[] | null {
  for (const [spoken, forms] of Object.entries(TORQUE_UNIT_SPOKEN)) {
    const form = forms.map((text) => text.split(' ')).find((unitWords) => endsWith(words, unitWords));
    if (form) return spoken === unit ? words.slice(0, -form.length) : null;
  }
  return words;
}

const endsWith = (words: readonly string[], end: readonly string[]): boolean =>
  words.length > end.length && end.every((word, i) => words[words.length - end.length + i] === word);

const isOnScale = (value: string, { scale, unit }: ReadingRoom): boolean => {
  const reading = fromWritten('torque', { value, unit });
  return compare(reading, scale.min) >= 0 && compare(reading, scale.max) <= 0;
};

const withoutLeadingZeros = (digits: string): string => digits.replace(/^0+(?=\d)/, '');
