const DIGITS = 'zero one two three four five six seven eight nine niner oh';
const SPOKEN_ALONE = new Set([...DIGITS.split(' '), 'point', 'decimal']);

/**
 * Puts a comma between neighbouring digits, so that a voice sets each apart and noise that covers one spares the next.
 * "two four point five newton metres" → "two, four, point, five newton metres".
 * Digits said one by one are common practice on the radiotelephone.
 */
export function separateDigits(text: string): string {
  const words = text.trim().split(/\s+/);
  return words
    .map((word, i) => (isAlone(word) && isAlone(words[i + 1]?.replace(/[.,;?!]+$/, '')) ? `${word},` : word))
    .join(' ');
}

const isAlone = (word: string | undefined): boolean => word !== undefined && SPOKEN_ALONE.has(word.toLowerCase());
