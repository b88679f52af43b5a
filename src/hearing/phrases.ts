/** What the engine may hear: phrases, or every word of its model (null), for what is dictated. */
export type Phrases = readonly string[] | null;

export interface CheckedPhrases {
  /** Those the model can recognise, each once, in a fixed order: equal lists are the same list. */
  readonly sayable: Phrases;
  /** The words the model lacks, each once. */
  readonly missing: readonly string[];
}

/** The engine drops an unknown word from a phrase without a word, and the rest would then pass for the whole: so we check. */
export function checkPhrases(phrases: Phrases, vocabulary: ReadonlySet<string>): CheckedPhrases {
  if (phrases === null) return { sayable: null, missing: [] };
  const tidy = new Set(phrases.map((phrase) => phrase.trim().toLowerCase().replace(/\s+/g, ' ')).filter(Boolean));
  const missing = new Set<string>();
  const sayable = [...tidy].filter((phrase) => {
    const unknown = phrase.split(' ').filter((word) => !vocabulary.has(word));
    for (const word of unknown) missing.add(word);
    return unknown.length === 0;
  });
  return { sayable: sayable.sort(), missing: [...missing] };
}
