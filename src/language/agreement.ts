/** Whether a reading, heard within a list of phrases, is what was heard without the list. */
import { NUMBER_WORDS, PRONUNCIATIONS } from './numbers/index.ts';
import { POINT_WORDS } from './numbers/grammar.ts';
import { plainWords } from './numbers/read.ts';

export type Agreement =
  /** The same figures, and hardly a word more. */
  | 'same'
  /** Much of it is the same: one of the two has lost or changed a word. */
  | 'alike'
  /** Other words, which a list with hardly anything but numbers in it had pressed into numbers. */
  | 'other talk';

/** A sign is part of a number: lost or heard into it, it makes another one. */
const NUMBERS: ReadonlySet<string> = new Set([...NUMBER_WORDS, ...POINT_WORDS, 'minus']);
/** One figure, two words. */
const FIGURE: ReadonlyMap<string, string> = new Map([
  ['oh', 'zero'],
  ['decimal', 'point'],
  ['to', 'two'],
  ['too', 'two'],
  ['for', 'four'],
  ['ate', 'eight'],
  ['won', 'one'],
  ['niner', 'nine'],
  ...PRONUNCIATIONS,
]);
/** Words beside the figures by which the free hearing may be longer: the name of a fastener, misheard. */
const MORE_WORDS = 1;

/** @param words within the list; @param again without it, separated by spaces */
export function agreementOf(words: readonly string[], again: string): Agreement {
  const [listed, free] = [split(words), split(again.split(' ').filter(Boolean))];
  // No words at all are no other talk: noise, or a number that was hardly heard.
  if (free.figures.length + free.others === 0) return 'alike';
  const common = commonLength(listed.figures, free.figures);
  const isSame = common === listed.figures.length && common === free.figures.length;
  if (free.others > listed.others + MORE_WORDS + (isSame ? 0 : free.figures.length)) return 'other talk';
  if (isSame) return 'same';
  return common * 2 >= Math.max(listed.figures.length, free.figures.length) ? 'alike' : 'other talk';
}

interface Parts {
  readonly figures: readonly string[];
  /** How many words are no figures. */
  readonly others: number;
}

function split(words: readonly string[]): Parts {
  const plain = plainWords(words).map((word) => FIGURE.get(word) ?? word);
  const figures = plain.filter((word) => NUMBERS.has(word));
  return { figures, others: plain.length - figures.length };
}

/** Length of the longest common subsequence. */
function commonLength(one: readonly string[], other: readonly string[]): number {
  let row = one.map(() => 0);
  for (const word of other) {
    let [diagonal, left] = [0, 0];
    row = row.map((above, at) => {
      left = one[at] === word ? diagonal + 1 : Math.max(left, above);
      diagonal = above;
      return left;
    });
  }
  return row.at(-1) ?? 0;
}
