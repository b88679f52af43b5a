import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { isSituationName, SITUATION_NAMES, stateIn } from '../../src/language/named-situations.ts';
import { situationOf } from '../../src/language/situation.ts';
import { typedWords } from '../../src/language/typed.ts';
import { understand } from '../../src/language/understand.ts';
import { notationOf } from './notation.ts';

const rows = readFileSync(new URL('corpus.tsv', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => line.split('\t'));
const situations = new Map(SITUATION_NAMES.map((name) => [name, situationOf(stateIn(name))]));

test('the corpus has every situation, at least 400 utterances, and none twice in one situation', () => {
  const places = rows.map(([situation, utterance]) => `${situation}: ${utterance}`);
  expect(rows.length).toBeGreaterThanOrEqual(400);
  expect(places.filter((place, i) => places.indexOf(place) !== i)).toEqual([]);
  expect([...new Set(rows.map(([situation]) => situation))].sort()).toEqual([...SITUATION_NAMES].sort());
});

describe.each(SITUATION_NAMES)('in the situation "%s"', (name) => {
  test.each(rows.filter(([situation]) => situation === name))('%s: "%s" means %s', (_, utterance = '', meaning) => {
    const situation = situations.get(name);
    if (!situation || !isSituationName(name)) throw new Error(name);
    const words = typedWords(utterance).map((word) => ({ word, confidence: 1 }));
    expect(notationOf(understand(words, situation))).toBe(meaning);
  });
});
