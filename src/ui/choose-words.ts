import { useWords } from '../words/said.ts';
import type { Words } from '../words/words.ts';

const ENGLISH = 'en';

/** Fetches the words of a language. */
export type WordsFile = () => Promise<{ readonly words: Partial<Words> }>;

/** The files of other languages, by their BCP 47 tag; each is fetched when it is wanted. */
const others: ReadonlyMap<string, WordsFile> = new Map(
  Object.entries(import.meta.glob<{ words: Words }>('../words/languages/*.ts')).map(([file, load]) => [
    file.replace(/^.*\/|\.ts$/g, ''),
    load,
  ]),
);

/**
 * Shows the words of the first language that the person reads and that there is a file of. One that cannot be fetched is
 * passed over: words in English are better than none.
 * @param wanted as browsers have it, the best first: BCP 47 tags
 * @returns the tag of the language that is shown
 */
export async function chooseWords(wanted: readonly string[], files = others): Promise<string> {
  for (const tag of wanted.flatMap(fromWhole)) {
    if (tag === ENGLISH) return ENGLISH;
    const file = await files
      .get(tag)?.()
      .catch(() => null);
    if (!file) continue;
    useWords(file.words);
    return tag;
  }
  return ENGLISH;
}

/** A tag and what it narrows: "zh-Hant-TW", "zh-Hant", "zh". */
const fromWhole = (tag: string): readonly string[] =>
  tag === '' ? [] : [tag, ...fromWhole(tag.split('-').slice(0, -1).join('-'))];
