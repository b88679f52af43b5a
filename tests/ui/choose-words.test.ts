import { afterEach, describe, expect, test } from 'vitest';
import { chooseWords, type WordsFile } from '../../src/ui/choose-words.ts';
import { cameraWords } from '../../src/ui/camera-words.ts';
import { camera } from '../../src/words/camera.ts';
import { useWords } from '../../src/words/said.ts';

const file =
  (off: string): WordsFile =>
  () =>
    Promise.resolve({ words: { camera: { ...camera, off } } });
const files: ReadonlyMap<string, WordsFile> = new Map([
  ['de', file('○ Kamera aus')],
  ['pt-BR', file('○ Câmera desligada')],
  ['fr', () => Promise.reject(new TypeError('not fetched'))],
]);
const off = (): string => cameraWords({ kind: 'off' });

describe('the language of the words', () => {
  afterEach(() => useWords({}));

  test.each([
    [['de-CH', 'en'], 'de', '○ Kamera aus'],
    [['pt-BR'], 'pt-BR', '○ Câmera desligada'],
    [['nl', 'de'], 'de', '○ Kamera aus'],
    [['en-GB', 'de'], 'en', '○ Camera off'],
    [['nl'], 'en', '○ Camera off'],
    [[], 'en', '○ Camera off'],
  ])('that a person who reads %j is shown is %s', async (wanted, shown, words) => {
    expect(await chooseWords(wanted, files)).toBe(shown);
    expect(off()).toBe(words);
  });

  test('is the next one where a file does not come', async () => {
    expect(await chooseWords(['fr', 'de'], files)).toBe('de');
    useWords({});
    expect(await chooseWords(['fr'], files)).toBe('en');
    expect(off()).toBe('○ Camera off');
  });
});
