import { isWellFormed, type Meaning, type ReadingDoubt, type SaidReading } from '../session/intent.ts';
import { compare, DECIMAL, fromWritten } from '../units/index.ts';
import { prompting } from '../words/prompting.ts';
import { agreementOf } from './agreement.ts';
import { answerWanted, MISHEARD, NOT_ANSWERS } from './decoys.ts';
import { isReason } from './dictation.ts';
import { doubtsAbout, type DoubtContext } from './doubt.ts';
import { grammarOf, type ReadingRule } from './grammar.ts';
import { matchesOf, type Match } from './grammar-match.ts';
import { plainWords } from './numbers/read.ts';
import type { ReadingRoom } from './reading-room.ts';
import type { Situation } from './situation.ts';
import { USUAL, type Sureness } from './sureness.ts';

/** One word as the recogniser gave it. Typed and tapped words have confidence 1. */
export interface HeardWord {
  readonly word: string;
  readonly confidence: number;
}

export type Understanding =
  | { readonly kind: 'meant'; readonly meaning: Meaning }
  /**
   * Not for us, or nothing that may be said now. With `ask`, it sounded like an answer that is none, such as "yes" or
   * "roger": nothing happens, and the words that are answers are said once more. `isUnsure`: it would undo something, and
   * may not have been said at all.
   */
  | { readonly kind: 'nothing'; readonly ask?: string; readonly isUnsure?: true };

/** These change nothing that stands, so missing one costs more than taking one by mistake. */
const HARMLESS: ReadonlySet<Meaning['kind']> = new Set(['say again', 'stand by', 'negative', 'help']);
/** These undo what stands, at once: what undoes must be surer than what goes on. */
const UNDOES: ReadonlySet<Meaning['kind']> = new Set(['back', 'disregard']);
/**
 * Numbers heard less surely, with no fastener named, are other people's: in an hour and more of other talk two thirds of
 * the numbers were, and of people's own readings one in a hundred. They are passed over, not asked about.
 */
const OTHER_TALK = 0.55;

/** What else is known of an utterance. */
export interface HeardHow {
  /** How surely its people are to be heard. */
  readonly wanted?: Sureness | undefined;
  /** The same sound heard without the phrases of the situation; null where it was heard once. */
  readonly again?: string | null;
  /** Whether the sound could be trusted. A beep in a loud room is as sure a "back" to the recogniser as the word itself. */
  readonly isTrusted?: boolean;
}

/**
 * What a whole utterance means in a situation. A command word inside other talk is no command: all words count.
 * More than one possible reading, or a doubtful one, becomes `unclear`: it is asked, never guessed.
 */
export function understand(
  heard: readonly HeardWord[],
  situation: Situation,
  { wanted = USUAL, again = null, isTrusted = true }: HeardHow = {},
): Understanding {
  const words = heard.flatMap(({ word }) => (DECIMAL.test(word) ? [word] : plainWords([word.replaceAll('’', "'")])));
  const sureness = Math.min(1, ...heard.map(({ confidence }) => confidence));
  const asHeard = words.join(' ');
  const text = MISHEARD.get(asHeard) ?? asHeard;

  const grammar = grammarOf(situation);
  const saying = grammar.sayings.find((candidate) => candidate.words === text);
  if (saying) {
    const enough = HARMLESS.has(saying.meaning.kind) ? wanted.harmless : wanted.command;
    if (sureness < enough) return NOTHING;
    if (!isTrusted && UNDOES.has(saying.meaning.kind))
      return { kind: 'nothing', ask: prompting.tooLoudToUndo(text), isUnsure: true };
    return meant(saying.meaning);
  }
  if (situation.dictation) return dictated(heard);
  for (const rule of grammar.rules) {
    const matches = matchesOf(rule.forms, words);
    const meaning =
      rule.meaning === 'observed' ? observedOf(matches, sureness, wanted) : meaningBy(rule, matches, sureness, wanted);
    if (meaning) return again === null ? meant(meaning) : heldAgainst(again, words, meaning);
  }
  const ask = NOT_ANSWERS.has(text) && sureness >= wanted.command ? answerWanted(grammar.sayings) : null;
  return ask === null ? NOTHING : { kind: 'nothing', ask };
}

/** What a recogniser gives where it heard speech and no word of its own. */
const NO_WORD = '[unk]';

/** A reason in somebody's own words, as they were heard: it is read back before it counts. */
function dictated(heard: readonly HeardWord[]): Understanding {
  const text = heard
    .flatMap(({ word }) => (word === NO_WORD ? [] : [word]))
    .join(' ')
    .trim();
  if (isReason(text)) return meant({ kind: 'reason', text });
  return text === '' ? NOTHING : { kind: 'nothing', ask: prompting.reason };
}

/** A number that was heard twice. What is other talk without the list of phrases is not for us. */
function heldAgainst(again: string, words: readonly string[], meaning: Meaning): Understanding {
  const readings = readingsIn(meaning);
  if (readings === null) return meant(meaning);
  switch (agreementOf(words, again)) {
    case 'same':
      return meant(meaning);
    case 'alike':
      return meant(meaning.kind === 'unclear' ? meaning : unclear('not sure', readings));
    case 'other talk':
      return NOTHING;
  }
}

function readingsIn(meaning: Meaning): readonly SaidReading[] | null {
  switch (meaning.kind) {
    case 'reading':
    case 'correction':
    case 'witness':
      return [meaning.reading];
    case 'observed':
      return [{ fastener: null, value: meaning.value }];
    case 'unclear':
      return meaning.readings;
    default:
      return null;
  }
}

const NOTHING: Understanding = { kind: 'nothing' };
const meant = (meaning: Meaning): Understanding => ({ kind: 'meant', meaning });

function meaningBy(
  { meaning, room }: ReadingRule,
  matches: readonly Match[],
  sureness: number,
  wanted: Sureness,
): Meaning | null {
  if (meaning === 'logged') return sureness >= wanted.command ? loggedOf(matches) : null;
  if (meaning === 'click') return sureness >= wanted.command ? clickOf(matches) : null;
  const all = readingsOf(matches, room);
  const kept = whatFits(all, room);
  const readings = distinct(kept.map(({ reading }) => reading));
  const [reading, ...others] = readings;
  if (reading === undefined) return null;
  const isForUs = sureness >= OTHER_TALK || meaning !== 'reading' || readings.some(({ fastener }) => fastener !== null);
  if (!isForUs) return null;
  // No unit is ever converted by ear: the tool has one scale, and it was not read off that.
  if (kept.some(({ unit }) => unit !== null && unit !== room.unit)) return unclear('other unit', []);
  if (others.length > 0) return unclear('several readings', readings);
  // "twenty four five": the point was not said; "twenty 4": one number or two. That the scale allows one reading only does not make it the one meant.
  if (kept.some(isHalfSaid)) {
    const possible = all.filter((each) => exists(each, room));
    return unclear('several readings', distinct(possible.map(({ reading }) => reading)));
  }
  if (sureness < wanted.reading) return unclear('not sure', readings);
  // Held against the witness's own eyes only: nothing is asked that the first value could have raised.
  if (meaning === 'witness') return { kind: meaning, reading };
  const doubts = doubtsOf(kept, reading, room, sureness, wanted);
  return { kind: meaning, reading, ...(doubts.length > 0 ? { doubts } : {}) };
}

/** The doubts about the one reading that is left. They come after what was meant is settled, and have no part in it. */
function doubtsOf(
  kept: readonly Possible[],
  { fastener, value }: SaidReading,
  { held }: ReadingRoom,
  confidence: number,
  wanted: Sureness,
): readonly ReadingDoubt[] {
  const by = held.get(fastener);
  if (!by) return [];
  const words = kept.map(({ valueWords }) => valueWords).find((some) => some.length > 0);
  const context: DoubtContext = {
    room: by,
    resolution: by.resolution,
    confidence,
    wanted,
    ...(words ? { words } : {}),
    ...(by.window ? { window: by.window } : {}),
  };
  return doubtsAbout(value, context).map(({ doubt }) => doubt.kind);
}

/** A value of something else than a torque tool: one, whole and sure, or it is asked about. */
function observedOf(matches: readonly Match[], sureness: number, wanted: Sureness): Meaning | null {
  const said = matches.flatMap(({ value, isMinus, style }) =>
    value === null || (isMinus && value.startsWith('-'))
      ? []
      : [
          {
            value: `${isMinus ? '-' : ''}${withoutLeadingZeros(value)}`,
            isHalf: style === 'unsaid-point' || style === 'unsaid-scale',
          },
        ],
  );
  const values = distinct(said.map(({ value }) => ({ fastener: null, value })).filter(isOfScale));
  const [first, ...others] = values;
  if (first === undefined || sureness < OTHER_TALK) return null;
  if (others.length > 0 || said.some(({ isHalf }) => isHalf)) return unclear('several readings', values);
  return sureness < wanted.reading ? unclear('not sure', values) : { kind: 'observed', value: first.value };
}

/** Below zero as well: what a scale cannot show is said where it is decided. */
const isOfScale = ({ value, ...said }: SaidReading): boolean =>
  isWellFormed({ ...said, value: value.replace(/^-/, '') });

type Unclear = Extract<Meaning, { kind: 'unclear' }>;
const unclear = (doubt: Unclear['doubt'], readings: readonly SaidReading[]): Unclear => ({
  kind: 'unclear',
  doubt,
  readings,
});

function clickOf(matches: readonly Match[]): Meaning | null {
  const [fastener, ...others] = new Set(matches.map(({ fastener }) => fastener));
  if (fastener === undefined || others.length > 0) return null;
  return { kind: 'click', fastener: fastener === null ? null : Number(fastener) };
}

/** What words are taken in: the window, which only raises questions, is not in it. */
type Hearing = Omit<ReadingRoom, 'held'>;

function loggedOf(matches: readonly Match[]): Meaning | null {
  const [fastener, ...others] = new Set(matches.flatMap((match) => match.fastener ?? []));
  if (fastener === undefined || others.length > 0) return null;
  return { kind: 'question', question: { about: 'logged', fastener: Number(fastener) } };
}

/** A reading that the words can mean, and how they do. */
interface Possible extends Pick<Match, 'unit' | 'style' | 'names' | 'valueWords'> {
  readonly reading: SaidReading;
}

function readingsOf(matches: readonly Match[], room: Hearing): readonly Possible[] {
  const said = matches.flatMap(({ fastener, value, dropped, ...how }) => {
    if (value === null) return [];
    const reading = { fastener: fastener === null ? null : Number(fastener), value: withoutLeadingZeros(value) };
    return isWellFormed(reading) ? [{ ...how, reading, dropped }] : [];
  });
  // "six two three, correction two four" is of stud six: what was taken back is understood like any other reading.
  return said.flatMap(({ dropped, ...possible }) => {
    if (dropped === null || possible.reading.fastener !== null) return [possible];
    return takenBack(matches, room).map((fastener) => ({
      ...possible,
      names: fastener !== null,
      reading: { ...possible.reading, fastener },
    }));
  });
}

/** The fasteners that a reading taken back can be of. */
function takenBack(matches: readonly Match[], room: Hearing): readonly (number | null)[] {
  const dropped = matches.flatMap((match) => match.dropped ?? []);
  return whatFits(readingsOf(dropped, room), room).map(({ reading }) => reading.fastener);
}

const isHalfSaid = ({ style }: Possible): boolean =>
  style === 'unsaid-point' || style === 'unsaid-scale' || style === 'joined';

const exists = ({ reading: { fastener } }: Possible, room: Hearing): boolean =>
  fastener === null || room.fasteners.has(fastener);

/** Not cut in two by guess. */
const isPlain = ({ names, reading: { fastener } }: Possible): boolean => names || fastener === null;

/** What the pattern and the scale allow, of all that was possibly said. The target has no say in it. */
function whatFits(all: readonly Possible[], room: Hearing): readonly Possible[] {
  const known = all.filter((each) => exists(each, room));
  // A number that was called a fastener's is one, even where there is no such fastener: that is said, not passed over.
  const possible = known.length > 0 ? known : all.filter(({ names }) => names);
  // What the scale cannot show was hardly read off it. Where nothing fits, the words stand as said and are read back.
  const onScale = possible.filter(({ reading }) => isOnScale(reading.value, room));
  const kept = [onScale, possible.filter(isPlain), possible].find((some) => some.length > 0) ?? [];
  // "two five" while stud six is called is a value, not stud two: it is read back with the number that it is taken for.
  const asCalled = kept.filter(({ reading: { fastener } }) => fastener === null || fastener === room.called);
  return asCalled.length > 0 ? asCalled : kept;
}

const distinct = (readings: readonly SaidReading[]): readonly SaidReading[] => [
  ...new Map(readings.map((reading) => [`${reading.fastener}:${reading.value}`, reading])).values(),
];

const isOnScale = (value: string, { scale, unit }: Hearing): boolean => {
  const reading = fromWritten('torque', { value, unit });
  return compare(reading, scale.min) >= 0 && compare(reading, scale.max) <= 0;
};

const withoutLeadingZeros = (digits: string): string => digits.replace(/^0+(?=\d)/, '');
