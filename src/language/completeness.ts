/** How far an utterance has come, from its words so far: what the end of speech is decided by. */
import { MISHEARD } from './decoys.ts';
import { isReason } from './dictation.ts';
import { grammarOf } from './grammar.ts';
import { canGoOn, matchesOf } from './grammar-match.ts';
import type { SaidReading } from '../session/intent.ts';
import { POINT_WORDS } from './numbers/grammar.ts';
import { NUMBER_WORDS, PRONUNCIATIONS } from './numbers/index.ts';
import { plainWords } from './numbers/read.ts';
import type { ReadingRoom } from './reading-room.ts';
import type { Saying } from './sayings.ts';
import type { Situation } from './situation.ts';
import { understand } from './understand.ts';

export type Completeness =
  /** Something that may be said now, and no longer phrase begins with it. */
  | 'complete and closed'
  /**
   * A reading which the tool cannot show with other words after it: "two four point five" where half a newton metre is a
   * mark and the scale ends at sixty. What could follow is its unit, or a slip.
   */
  | 'complete, likely whole'
  /** Something that may be said now, which is also the beginning of something longer. */
  | 'complete, may go on'
  /** The beginning of something that may be said now. No words at all are one. */
  | 'unfinished'
  /** Nothing that may be said now, whatever follows. */
  | 'nothing';

/**
 * Judges words by the grammar that they will be understood by in this situation, and by what the scale of the tool can
 * show. The target has no part in it. Pure: the same words are always the same.
 */
export function completenessIn(situation: Situation): (words: readonly string[]) => Completeness {
  const { sayings, rules } = grammarOf(situation);
  const fixed = sayings.map((saying) => saying.words);
  const forms = rules.flatMap((rule) => rule.forms);
  const known = new Map<string, Completeness>();
  /** Whether a saying is these words and more. "Help me" is not waited for after "help": a second is long under a weight. */
  const addsTo = (text: string, { words, meaning }: Saying): boolean =>
    words.startsWith(`${text} `) &&
    !(meaning.kind === 'help' && sayings.some((said) => said.words === text && said.meaning.kind === 'help'));
  const judge = (text: string): Completeness => {
    // Own words may always go on.
    if (situation.dictation) return isReason(text) ? 'complete, may go on' : 'unfinished';
    const words = text === '' ? [] : text.split(' ');
    const isComplete = fixed.includes(text) || matchesOf(forms, words).length > 0;
    const goesOn = words.length === 0 || sayings.some((saying) => addsTo(text, saying)) || canGoOn(forms, words);
    if (!isComplete) return goesOn ? 'unfinished' : 'nothing';
    if (!goesOn) return 'complete and closed';
    return isLikelyWhole(words, situation) ? 'complete, likely whole' : 'complete, may go on';
  };
  return (heard) => {
    const asHeard = plainWords(heard).join(' ');
    const text = MISHEARD.get(asHeard) ?? asHeard;
    const judged = known.get(text) ?? judge(text);
    known.set(text, judged);
    return judged;
  };
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const NUMBERS: ReadonlySet<string> = new Set([...NUMBER_WORDS, ...PRONUNCIATIONS.keys()]);
const PARTS_SAID: ReadonlySet<string> = new Set([...POINT_WORDS, 'half', 'quarter', 'quarters']);

/** What is known of words before an utterance has ended, by what may be said in a situation. */
export const judgeIn = (
  situation: Situation,
): {
  readonly completeness: (words: readonly string[]) => Completeness;
  readonly isHeardTwice: (words: readonly string[]) => boolean;
} => ({ completeness: completenessIn(situation), isHeardTwice: isHeardTwiceIn(situation) });

/** Numbers are heard twice: other talk, pressed into them by a list of phrases, is something else without it. */
export function isHeardTwiceIn(situation: Situation): (words: readonly string[]) => boolean {
  return (heard) =>
    understand(
      heard.map((word) => ({ word, confidence: 1 })),
      situation,
    ).kind === 'meant' && heard.some((word) => NUMBERS.has(word));
}

/**
 * Whether the words are a reading on a mark of the scale, and with another figure after them no other one. It may be one of
 * two readings, which is asked about: that does not need more words either.
 */
function isLikelyWhole(words: readonly string[], situation: Situation): boolean {
  const shown = shownBy(words, situation);
  if (shown.length === 0) return false;
  const isInParts = words.some((word) => PARTS_SAID.has(word));
  // "point" and whatever is a mark can follow.
  if (!isInParts && !shown.every(({ resolution }) => isWhole(resolution))) return false;
  // Of all that can follow whole figures, these make the least: "two zero", "twenty one".
  return (isInParts ? DIGITS : ['zero', 'one']).every((digit) =>
    shownBy([...words, digit], situation).every(
      ({ value, isCalled }) => !isCalled || shown.some((before) => before.value === value),
    ),
  );
}

/** A value on a mark of the tool's scale. */
interface Shown {
  readonly value: number;
  readonly resolution: number;
  /** Whether it is of the fastener called for. */
  readonly isCalled: boolean;
}

/** The values that these words can be of, as far as the tool can show them. */
function shownBy(words: readonly string[], situation: Situation): readonly Shown[] {
  const understood = understand(
    words.map((word) => ({ word, confidence: 1 })),
    situation,
  );
  if (understood.kind === 'nothing') return [];
  const { meaning } = understood;
  switch (meaning.kind) {
    case 'reading':
      return marksAmong([meaning.reading], situation.reading);
    case 'correction':
      return marksAmong([meaning.reading], situation.correction);
    case 'witness':
      return marksAmong([meaning.reading], situation.witness);
    case 'unclear':
      return marksAmong(meaning.readings, situation.reading ?? situation.correction);
    default:
      return [];
  }
}

function marksAmong(readings: readonly SaidReading[], room: ReadingRoom | null): readonly Shown[] {
  const [held] = room?.held.values() ?? [];
  if (!room || held?.resolution.unit !== room.unit) return [];
  const { min, max } = room.scale;
  const resolution = held.resolution.value;
  return readings
    .map(({ fastener, value }) => ({
      value: Number(value),
      resolution,
      isCalled: fastener === null || fastener === room.called,
    }))
    .filter(({ value }) => value >= min.value && value <= max.value && isWhole(value / resolution));
}

const isWhole = (count: number): boolean => Math.abs(count - Math.round(count)) < 1e-6;
