/**
 * Doubts about a reading that was understood. A doubt adds a question; it never changes what was said or what is recorded.
 * The window of the fastener may raise a question here. It has no part in recognition, and no question holds a value other
 * than the one that was said: who is asked must not be told what would be right.
 */
import type { Meaning, ReadingDoubt } from '../session/intent.ts';
import { isOfValue } from '../session/reading.ts';
import {
  compare,
  DECIMAL,
  fromWritten,
  isWithin,
  type Limits,
  scale,
  type Torque,
  type Unit,
  valueIn,
} from '../units/index.ts';
import { readBack } from '../words/read-back.ts';
import { nearReadings, type SoundAlike, soundsLike } from './numbers/index.ts';
import { digits as sayDigits, sentence } from './say.ts';
import { USUAL, type Sureness } from './sureness.ts';

/** What is known of a reading besides its value. */
export interface DoubtContext {
  /** The scale that it was read off. */
  readonly room: { readonly scale: Limits<'torque'>; readonly unit: Unit<'torque'> };
  /** The step between two marks of the scale, where the tool has one stated. */
  readonly resolution?: Torque;
  /** The words of the value as heard. Without them every usual way to say it is looked at, once it is not quite sure. */
  readonly words?: readonly string[];
  /** The least confidence of its words, 0 to 1; 1 for typed and tapped values. */
  readonly confidence: number;
  /** How surely those who work are to be heard; the default is that for anybody. */
  readonly wanted?: Sureness;
  /** Where the pass wants the value to be. */
  readonly window?: Limits<'torque'>;
}

/** A doubt, and of a sound that it could be taken for, why. */
export type FoundDoubt =
  | { readonly kind: Exclude<ReadingDoubt, 'sounds like another' | 'too soon'> }
  | { readonly kind: 'sounds like another'; readonly because: SoundAlike };

export interface Doubted {
  readonly doubt: FoundDoubt;
  /** A sentence to speak. Of all numbers it holds the value that was said, and no other. */
  readonly question: string;
}

/**
 * Asked about however sure the recogniser is: it is as sure of "fifteen" as of "fifty", and ten times as much is the
 * gravest slip. Other pairs (five and nine, a doubled digit) are in nearly every value: a question each time would be
 * answered without thought, and the read-back is there for them.
 */
const ALWAYS_ASKED: ReadonlySet<SoundAlike> = new Set(['teen-ty', 'unit-ty']);

/**
 * The doubts about a value, the gravest first; [] where there is none.
 * @param value unsigned decimal text in the unit of the scale, such as '24.50'
 */
export function doubtsAbout(value: string, context: DoubtContext): readonly Doubted[] {
  return doubtsIn(value, context).map((doubt) => ({ doubt, question: questionOf(value, doubt) }));
}

function doubtsIn(value: string, context: DoubtContext): readonly FoundDoubt[] {
  const unsure: readonly FoundDoubt[] =
    context.confidence < (context.wanted ?? USUAL).reading ? [{ kind: 'not sure' }] : [];
  if (!isOnScale(value, context)) return [{ kind: 'off the scale' }, ...unsure];
  return [
    ...(isOnMark(value, context) ? [] : [{ kind: 'between marks' } as const]),
    ...besideWindow(value, context),
    ...unsure,
    ...alike(value, context),
  ];
}

/** In milliseconds from the call to the first word. Nobody walks round a ring and pulls in less; common practice, no source. */
export const FASTEST = 2500;

/** A reading with the doubt that it came too soon, where it did. What was meant stays as it was. */
export function inHaste(meaning: Meaning, sinceCall: number): Meaning {
  if (meaning.kind !== 'reading' || sinceCall >= FASTEST) return meaning;
  return { ...meaning, doubts: [...(meaning.doubts ?? []), 'too soon'] };
}

// ---- the scale -------------------------------------------------------------------------------------------------------

const torqueOf = (value: string, { room }: DoubtContext): Torque => fromWritten('torque', { value, unit: room.unit });

const isOnScale = (value: string, context: DoubtContext): boolean =>
  isWithin(torqueOf(value, context), context.room.scale);

function isOnMark(value: string, context: DoubtContext): boolean {
  const { resolution } = context;
  if (!resolution) return true;
  const marks = Math.round(valueIn(torqueOf(value, context), resolution.unit) / resolution.value);
  return compare(scale(resolution, marks), torqueOf(value, context)) === 0;
}

// ---- the window ------------------------------------------------------------------------------------------------------

/** What a slip of the tongue or the ear would have made of a value in the window. A value in the window is no slip. */
function besideWindow(value: string, context: DoubtContext): readonly FoundDoubt[] {
  const { window } = context;
  if (!window) return [];
  const fits = (text: string): boolean => isWithin(torqueOf(text, context), window);
  if (fits(value)) return [];
  if (tenfolds(value).some(fits)) return [{ kind: 'out by ten' }];
  if (swaps(value).some(fits)) return [{ kind: 'digits swapped' }];
  const counts = [window.min, window.max].map((limit) => wholeDigits(valueIn(limit, context.room.unit)));
  const [fewest, most] = [Math.min(...counts), Math.max(...counts)];
  const count = wholeDigits(Number(value));
  return count < fewest || count > most ? [{ kind: 'digit count' }] : [];
}

/** Ten times, and a tenth. */
function tenfolds(value: string): readonly string[] {
  const [whole = '', places = ''] = value.split('.');
  const [next = '0', ...rest] = places;
  return [tidy(`${whole}${next}.${rest.join('')}`), tidy(`${whole.slice(0, -1)}.${whole.slice(-1)}${places}`)];
}

/** Two neighbouring digits changed over, across the point too. */
function swaps(value: string): readonly string[] {
  const at = value.indexOf('.');
  const figures = [...value.replace('.', '')];
  return figures.slice(1).map((figure, i) => {
    const swapped = figures
      .with(i, figure)
      .with(i + 1, figures[i] ?? '')
      .join('');
    return tidy(at < 0 ? swapped : `${swapped.slice(0, at)}.${swapped.slice(at)}`);
  });
}

/** A decimal without zeros before it, a point at its end, or nothing before its point. */
const tidy = (text: string): string =>
  text
    .replace(/^0+(?=\d)/, '')
    .replace(/\.$/, '')
    .replace(/^(?=\.|$)/, '0');

const wholeDigits = (value: number): number => String(Math.trunc(value)).length;

// ---- the sound -------------------------------------------------------------------------------------------------------

/** The first number that sounds like it and could have been read off the same scale, as a doubt. */
function alike(value: string, context: DoubtContext): readonly FoundDoubt[] {
  const { words, confidence, wanted = USUAL } = context;
  const near = words ? nearReadings(words) : confidence < wanted.sound ? soundsLike(value) : [];
  const partner = near.find(
    ({ number: { digits: other }, because }) =>
      (ALWAYS_ASKED.has(because) || confidence < wanted.sound) &&
      DECIMAL.test(other) &&
      isOnScale(other, context) &&
      isOnMark(other, context),
  );
  return partner ? [{ kind: 'sounds like another', because: partner.because }] : [];
}

// ---- the question ----------------------------------------------------------------------------------------------------

const questionOf = (value: string, { kind }: FoundDoubt): string =>
  sentence(readBack.doubtful(sayDigits(value), questionAbout(kind)));

/**
 * The question of a doubt, without the value: it holds no number at all.
 * @param isKept both read again, and no yes is an answer
 */
export const questionAbout = (doubt: ReadingDoubt, isKept = false): string =>
  `${readBack.doubt[doubt]} ${isKept ? readBack.bothAgain : isOfValue(doubt) ? readBack.sayAgain : readBack.affirmOrSay}`;
