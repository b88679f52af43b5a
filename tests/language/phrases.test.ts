import { describe, expect, test } from 'vitest';
import { SITUATION_NAMES, stateIn } from '../../src/language/named-situations.ts';
import { NUMBER_WORDS } from '../../src/language/numbers/index.ts';
import { missedWords, recogniserPhrases } from '../../src/language/phrases.ts';
import { situationOf } from '../../src/language/situation.ts';
import { indicating, setting, tell, affirm, reading, torquePass, window } from '../session/play.ts';
import { ring } from './meant.ts';
import { vocabularyOfModel } from './vocabulary-of-model.ts';

const DIGITS = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
const phrasesIn = (name: (typeof SITUATION_NAMES)[number]): readonly string[] =>
  recogniserPhrases(situationOf(stateIn(name)));
/** How often each pair of neighbouring words is shown: what the recogniser counts. */
function pairsOf(phrases: readonly string[]): ReadonlyMap<string, number> {
  const pairs = phrases.flatMap((phrase) => {
    const words = phrase.split(' ');
    return words.slice(1).map((word, i) => `${words[i]} ${word}`);
  });
  return new Map([...new Set(pairs)].map((pair) => [pair, pairs.filter((each) => each === pair).length]));
}

describe('the phrases of the recogniser', () => {
  test.each(SITUATION_NAMES)('at "%s" are few, each once, in words', (name) => {
    const phrases = phrasesIn(name);
    // A third of them are words of other talk, told so that they are not taken for something else.
    expect(phrases.length).toBeLessThanOrEqual(350);
    expect(new Set(phrases).size).toBe(phrases.length);
    for (const phrase of phrases) expect(phrase).toMatch(/^[a-z']+( [a-z']+)*$/);
  });
  test('have every saying of the situation', () => {
    for (const name of SITUATION_NAMES) {
      for (const { words, written } of situationOf(stateIn(name)).sayings) {
        if (written) expect(phrasesIn(name)).not.toContain(words);
        else expect(phrasesIn(name)).toContain(words);
      }
    }
  });
  test('of a reading have every word of numbers, every pair of digits, and the words around a number', () => {
    const phrases = phrasesIn('reading');
    const pairs = pairsOf(phrases);
    for (const word of NUMBER_WORDS) expect(phrases.some((phrase) => phrase.split(' ').includes(word))).toBe(true);
    for (const digit of DIGITS) {
      const around = [
        `${digit} point`,
        `point ${digit}`,
        `number ${digit}`,
        `stud ${digit}`,
        `${digit} at`,
        `at ${digit}`,
      ];
      const others = DIGITS.map((other) => `${digit} ${other}`);
      for (const pair of [...around, ...others, `${digit} newton`, `correction ${digit}`, `${digit} correction`]) {
        expect([...pairs.keys()]).toContain(pair);
      }
    }
  });
  test.each(['reading', 'confirm', 'click', 'inches'] as const)('at "%s" favour no digit', (name) => {
    const pairs = pairsOf(phrasesIn(name));
    const favour = (digit: string): readonly string[] =>
      [...pairs]
        .filter(([pair]) => pair.split(' ').filter((word) => word === digit).length === 1)
        .filter(([pair]) => pair.split(' ').every((word) => word === digit || !DIGITS.includes(word)))
        .map(([pair, count]) => `${pair.replace(digit, '#')} × ${count}`)
        .sort();
    for (const digit of DIGITS) expect(favour(digit)).toEqual(favour('zero'));
    for (const first of DIGITS) for (const second of DIGITS) expect(pairs.get(`${first} ${second}`)).toBe(1);
  });
  test('do not change with the target, the window or the fastener that is called', () => {
    const at = (target: string, min: string, max: string) => ring({ passes: [torquePass(target, min, max)] });
    const phrases = recogniserPhrases(situationOf(at('24.5', '23', '26').state));
    expect(recogniserPhrases(situationOf(at('6', '5.5', '6.5').state))).toEqual(phrases);
    expect(recogniserPhrases(situationOf(at('59', '58', '60').state))).toEqual(phrases);
    const [second, third] = [
      tell(at('24.5', '23', '26'), reading('24'), affirm),
      tell(at('24.5', '23', '26'), reading('24'), affirm, reading('24'), affirm),
    ];
    expect(recogniserPhrases(situationOf(third.state))).toEqual(recogniserPhrases(situationOf(second.state)));
  });
  test('do not change with the range of the tool: a value off its scale is heard as well', () => {
    const narrow = ring({}, { tools: [{ ...indicating, range: window('20', '30') }] });
    expect(recogniserPhrases(situationOf(narrow.state))).toEqual(recogniserPhrases(situationOf(ring().state)));
  });
  test('have a click on a setting tool only, and a leading "correction" where there is something to correct', () => {
    expect(phrasesIn('click')).toContain('click');
    expect(phrasesIn('reading')).not.toContain('click');
    expect(recogniserPhrases(situationOf(ring({}, { tools: [setting] }).state))).toContain('click');
    expect(phrasesIn('first-reading').filter((phrase) => phrase.startsWith('correction'))).toEqual([]);
    expect(phrasesIn('reading').filter((phrase) => phrase.startsWith('correction'))).toHaveLength(10);
  });
  test('are words that the shipped model knows, but for "disregard", which has another wording', () => {
    const vocabulary = vocabularyOfModel();
    const words = SITUATION_NAMES.flatMap((name) => phrasesIn(name)).flatMap((phrase) => phrase.split(' '));
    expect([...new Set(words.filter((word) => !vocabulary.has(word)))]).toEqual(['disregard']);
  });
});

describe('words that a model lacks', () => {
  const situation = situationOf(stateIn('confirm'));
  test('are missed where nothing else says the same', () => {
    expect(missedWords(situation, ['negative', 'disregard', 'affirm'])).toEqual(['negative']);
    expect(missedWords(situation, ['disregard', 'cancel'])).toEqual(['disregard', 'cancel']);
  });
  test('are missed where a number needs them', () =>
    expect(missedWords(situation, ['point', 'niner'])).toEqual(['point']));
});
