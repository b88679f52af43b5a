/**
 * How often the embedded model takes a word for another, from the counts in tests/language/confusions.tsv, whose head says
 * how they were made. Few recordings are to be had: a word's own counts are smoothed by those of all words of its group.
 */
import { readFileSync } from 'node:fs';
import type { HeardWord } from '../../src/language/understand.ts';

export const CONDITIONS = ['clean', '10 dB', '5 dB'] as const;
export type Condition = (typeof CONDITIONS)[number];

/** Least confidences of the five bands that heard words are counted in: every threshold of the product is one of them. */
const BANDS = [0.95, 0.85, 0.7, 0.5, 0] as const;
/** A confidence of each band, clear of its edges. */
const CONFIDENCES = [1, 0.9, 0.78, 0.6, 0.3] as const;

/** One row of the counts. */
interface Row {
  readonly kind: string;
  readonly said: string;
  readonly heard: string;
  readonly speech: string;
  readonly condition: string;
  readonly count: number;
  readonly bands: readonly number[];
}

/** Something that may happen, and how likely it is. */
export interface Chance<T> {
  readonly outcome: T;
  readonly probability: number;
}

export interface WordChances {
  /** What is heard for the word: itself, another, `[unk]` or '' for nothing. */
  readonly heard: readonly Chance<string>[];
  /** How sure the recogniser is of it. */
  readonly confidences: ReadonlyMap<string, readonly Chance<number>[]>;
}

export interface Confusions {
  /** @throws Error for a word that nobody was recorded saying */
  chancesOf(word: string): WordChances;
  /** That one of two equal words, said one after the other, is lost. */
  readonly doubledLost: number;
  /** That the recogniser takes the place between two words for the end of the utterance. */
  readonly pause: number;
  /** That a word is heard which nobody said, in one utterance, and which. */
  readonly inserted: number;
  readonly insertions: readonly Chance<HeardWord>[];
}

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const TEENS = [
  ...['ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
];
const TENS = ['twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const GROUPS = [
  DIGITS,
  [...TEENS, ...TENS, 'point'],
  ['affirm', 'affirmative', 'negative', 'correction'],
  ['number', 'at'],
];

/**
 * Pairs that are known to be taken for one another, whether or not the counts show it: thirteen and thirty … nineteen and
 * ninety (a hospital safety page); five and nine, six and sixty (from memory); one and nine, thirteen and fifteen, eighteen
 * and fifteen, four and forty (measured with the small model); affirmative and negative (counted here).
 */
const KNOWN_PAIRS = [
  ...['thirteen thirty', 'fourteen forty', 'fifteen fifty', 'sixteen sixty', 'seventeen seventy', 'eighteen eighty'],
  ...['nineteen ninety', 'five nine', 'one nine', 'six sixty', 'seven seventy', 'eight eighty', 'nine ninety'],
  ...['four forty', 'thirteen fifteen', 'eighteen fifteen', 'affirmative negative'],
].map((pair) => pair.split(' '));

/** What is heard for a word is one of these. */
const FATES = ['right', 'lost', 'known pair', 'other of its group', 'no word that counts here'] as const;
type Fate = (typeof FATES)[number];

/** What was never counted is held for half a count, and the group of a word for so many further observations of it. */
const UNSEEN = 0.5;
const OF_GROUP = 20;
/** Bands of a confusion that was seen seldom are filled up from all confusions with so many. */
const OF_ALL = 4;

const sum = (numbers: readonly number[]): number => numbers.reduce((all, each) => all + each, 0);
const total = (rows: readonly Row[]): number => sum(rows.map(({ count }) => count));
const partnersOf = (word: string): readonly string[] =>
  KNOWN_PAIRS.filter((pair) => pair.includes(word)).flatMap((pair) => pair.filter((other) => other !== word));

function fateOf(said: string, heard: string): Fate {
  if (heard === said) return 'right';
  if (heard === '') return 'lost';
  if (partnersOf(said).includes(heard)) return 'known pair';
  return groupOf(said).includes(heard) ? 'other of its group' : 'no word that counts here';
}

function groupOf(word: string): readonly string[] {
  const group = GROUPS.find((words) => words.includes(word));
  if (!group) throw new Error(`Nobody was recorded saying "${word}".`);
  return group;
}

/** The words of a group that a fate stands for, of a word. */
function wordsOf(said: string, fate: Fate): readonly string[] {
  switch (fate) {
    case 'right':
      return [said];
    case 'lost':
      return [''];
    case 'known pair':
      return partnersOf(said);
    case 'other of its group':
      return groupOf(said).filter((word) => word !== said && !partnersOf(said).includes(word));
    case 'no word that counts here':
      return ['[unk]'];
  }
}

/** The counts of a condition as chances. `measured only` leaves the smoothing out, to see what it makes. */
export function confusionsIn(condition: Condition, smoothing: 'smoothed' | 'measured only' = 'smoothed'): Confusions {
  const rows = ROWS.filter((row) => row.condition === condition);
  const [unseen, ofGroup] = smoothing === 'smoothed' ? [UNSEEN, OF_GROUP] : [0, 0];
  const words = rows.filter(({ kind }) => kind === 'word');
  const known = new Map<string, WordChances>();
  const byPeople = rows.filter(({ speech }) => speech === 'people');
  const share = (from: readonly Row[], kind: Row['kind'], isIt: (row: Row) => boolean): number => {
    const all = from.filter((row) => row.kind === kind);
    return (total(all.filter(isIt)) + unseen) / (total(all) + 2 * unseen);
  };
  const inserted = byPeople.filter(({ kind, heard }) => kind === 'insertion' && heard !== '');
  return {
    chancesOf: (word) => {
      const chances = known.get(word) ?? chancesFrom(words, word, unseen, ofGroup);
      known.set(word, chances);
      return chances;
    },
    doubledLost: share(byPeople, 'doubled', ({ said, heard }) => said === heard),
    pause: share(rows, 'pause', ({ heard }) => heard === '|'),
    inserted: share(byPeople, 'insertion', ({ heard }) => heard !== ''),
    insertions: normal([
      ...inserted.flatMap(({ heard: word, bands }) =>
        CONFIDENCES.map((confidence, i) => ({ outcome: { word, confidence }, weight: bands[i] ?? 0 })),
      ),
      // An unseen one is any digit, as sure as can be.
      ...DIGITS.map((word) => ({ outcome: { word, confidence: CONFIDENCES[0] }, weight: unseen / DIGITS.length })),
    ]),
  };
}

/** People where people said the word, else synthetic voices. */
const ofBestSpeech = (rows: readonly Row[]): readonly Row[] => {
  const people = rows.filter(({ speech }) => speech === 'people');
  return total(people) >= OF_GROUP ? people : rows;
};

function chancesFrom(words: readonly Row[], said: string, unseen: number, ofGroup: number): WordChances {
  const own = ofBestSpeech(words.filter((row) => row.said === said));
  if (own.length === 0) throw new Error(`Nobody was recorded saying "${said}".`);
  const group = groupOf(said).flatMap((word) => ofBestSpeech(words.filter((row) => row.said === word)));
  const fates = normal(
    FATES.map((fate) => ({
      outcome: fate,
      weight: unseen + total(group.filter((row) => fateOf(row.said, row.heard) === fate)),
    })),
  );
  const weights = new Map<string, number>();
  const add = (heard: string, weight: number): void => void weights.set(heard, (weights.get(heard) ?? 0) + weight);
  for (const { heard, count } of own) add(heard, count);
  for (const { outcome: fate, probability } of fates) {
    const others = wordsOf(said, fate);
    for (const other of others) add(other, (ofGroup * probability) / others.length);
  }
  const heard = normal([...weights].map(([outcome, weight]) => ({ outcome, weight })));
  return { heard, confidences: new Map(heard.map(({ outcome }) => [outcome, surenessOf(words, own, said, outcome)])) };
}

/** How sure the recogniser is of what it heard: as counted, filled up from all words that were heard as rightly or wrongly. */
function surenessOf(
  words: readonly Row[],
  own: readonly Row[],
  said: string,
  heard: string,
): readonly Chance<number>[] {
  const bandsOf = (rows: readonly Row[]) => BANDS.map((_, i) => sum(rows.map(({ bands }) => bands[i] ?? 0)));
  const alike = bandsOf(words.filter((row) => row.heard !== '' && (row.said === row.heard) === (said === heard)));
  const all = normal(alike.map((count, i) => ({ outcome: i, weight: count + UNSEEN })));
  const seen = bandsOf(own.filter((row) => row.heard === heard));
  return normal(
    CONFIDENCES.map((confidence, i) => ({
      outcome: confidence,
      weight: (seen[i] ?? 0) + OF_ALL * (all[i]?.probability ?? 0),
    })),
  );
}

function normal<T>(weighted: readonly { readonly outcome: T; readonly weight: number }[]): readonly Chance<T>[] {
  const all = sum(weighted.map(({ weight }) => weight));
  return weighted
    .filter(({ weight }) => weight > 0)
    .map(({ outcome, weight }) => ({ outcome, probability: weight / all }));
}

const ROWS: readonly Row[] = readFileSync(new URL('../language/confusions.tsv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .slice(1)
  .map((line): Row => {
    const [kind = '', said = '', heard = '', speech = '', condition = '', count = '', ...bands] = line.split('\t');
    return {
      kind,
      said,
      heard,
      speech,
      condition,
      count: Number(count),
      bands: bands.slice(0, BANDS.length).map(Number),
    };
  });
