import { plainWords } from './read.ts';

/**
 * How radiotelephony has some figures said (ICAO Annex 10, volume II, 5.2.1.4: from memory), in the words of the model, and
 * the usual word for the same figure. "Too" is an ordinary word, and the model lacks "wun": both are left out. "Niner" is offered to everybody.
 */
export const PRONUNCIATIONS: ReadonlyMap<string, string> = new Map([
  ['tree', 'three'],
  ['fower', 'four'],
  ['fife', 'five'],
  ['ait', 'eight'],
]);

/** Those of these words that are such pronunciations, each once. */
export const pronouncedIn = (words: readonly string[]): readonly string[] => [
  ...new Set(plainWords(words).filter((word) => PRONUNCIATIONS.has(word))),
];

/** The phrases, and each of them once more with every figure that somebody pronounces so said so. */
export function pronounced(phrases: readonly string[], spoken: readonly string[]): readonly string[] {
  const said = new Map(
    spoken.flatMap((word) => {
      const usual = PRONUNCIATIONS.get(word);
      return usual === undefined ? [] : [[usual, word] as const];
    }),
  );
  if (said.size === 0) return phrases;
  const again = phrases.map((phrase) =>
    phrase
      .split(' ')
      .map((word) => said.get(word) ?? word)
      .join(' '),
  );
  return [...new Set([...phrases, ...again])];
}
