/** Faults of a file in words for somebody who fills in a form and never sees the file. */

const REWORDED: readonly (readonly [RegExp, string])[] = [
  [/such as \{ "value": "([^"]*)", "unit": "([^"]*)" \}/gu, 'such as $1 $2'],
  [/such as "([^"]*)"/gu, 'such as $1'],
  [/ \(a point, no exponent, no thousands mark\)/gu, ', with a point'],
  [/an object with the fields (\w+(?:, \w+)*)/gu, '$1'],
  [/a name in quotes/gu, 'a choice'],
  [/ in quotes/gu, ''],
];

/** "missing, expected words in quotes" is "Fill in words". */
export function formWords(message: string): string {
  const plain = REWORDED.reduce((words, [pattern, by]) => words.replace(pattern, by), message);
  const wanted = /^(?:missing|found nothing|found ""), expected (.*)$/u.exec(plain)?.[1];
  const words = wanted === undefined ? plain : `fill in ${wanted}`;
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Whether a fault only says that nothing was filled in yet. */
export const isMissing = (message: string): boolean => /^(?:missing|found nothing|found ""), expected/u.test(message);
