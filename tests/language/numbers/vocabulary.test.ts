import { readFileSync } from 'node:fs';
import { gunzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { NUMBER_WORDS, numberWords, readNumber, waysToSay } from '../../../src/language/numbers/index.ts';

describe('the words offered to the recogniser', () => {
  test('are known to the model that the project ships', () => {
    const known = wordsOfModel(new URL('../../../models/bothhands-en-small.tar.gz', import.meta.url));
    expect(known.size).toBeGreaterThan(4000);
    expect(NUMBER_WORDS.filter((word) => !known.has(word))).toEqual([]);
  });

  test('are plain words, each once', () => {
    expect(new Set(NUMBER_WORDS).size).toBe(NUMBER_WORDS.length);
    for (const word of NUMBER_WORDS) expect(word).toMatch(/^[a-z]+$/);
  });

  test.each(['to', 'too', 'for', 'won', 'ate', 'no', 'o', 'tree', 'wun', 'fower', 'fife', 'ait', 'triple'])(
    'leave out "%s"',
    (word) => expect(NUMBER_WORDS).not.toContain(word),
  );

  test('are fewer for digits alone', () => {
    const digits = 'zero one two three four five six seven eight nine niner oh double point decimal'.split(' ');
    expect(numberWords(['digits']).toSorted()).toEqual(digits.toSorted());
  });

  test('are all needed: each is in some way to say some number', () => {
    const numbers = [0.25, 0.5, 0.75, 1000, 1100, ...Array.from({ length: 100 }, (_, number) => number)];
    const used = new Set(numbers.flatMap((number) => waysToSay(`${number}`).flatMap(({ words }) => words)));
    expect(NUMBER_WORDS.filter((word) => !used.has(word))).toEqual([]);
  });

  test('are all understood: no way to say a number needs another word', () => {
    for (const { words } of [...waysToSay('9099.9'), ...waysToSay('1500'), ...waysToSay('24.75')]) {
      expect(words.every((word) => NUMBER_WORDS.includes(word))).toBe(true);
      expect(readNumber(words)).not.toEqual([]);
    }
  });
});

/** The first column of graph/words.txt, read out of the tar archive (512-byte headers, name at 0, octal size at 124). */
function wordsOfModel(file: URL): ReadonlySet<string> {
  const tar = gunzipSync(readFileSync(file));
  const text = (from: number, length: number) => new TextDecoder().decode(tar.subarray(from, from + length));
  for (let at = 0; at + 512 <= tar.length;) {
    const name = text(at, 100).replace(/\0.*$/s, '');
    const size = Number.parseInt(text(at + 124, 12), 8) || 0;
    if (name.endsWith('graph/words.txt')) {
      return new Set(text(at + 512, size).split('\n').map((line) => line.split(' ')[0] ?? '')); // prettier-ignore
    }
    at += 512 + Math.ceil(size / 512) * 512;
  }
  throw new Error('The model has no graph/words.txt.');
}
