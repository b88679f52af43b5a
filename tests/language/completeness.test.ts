import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { completenessIn } from '../../src/language/completeness.ts';
import { MISHEARD } from '../../src/language/decoys.ts';
import { grammarOf } from '../../src/language/grammar.ts';
import { SITUATION_NAMES, stateIn, type SituationName } from '../../src/language/named-situations.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand } from '../../src/language/understand.ts';
import { heard } from './meant.ts';
import { utteranceOf } from './utterances.ts';

const places = SITUATION_NAMES.map((name) => {
  const situation = situationOf(stateIn(name));
  return { name, situation, grammar: grammarOf(situation), completeness: completenessIn(situation) };
});
const at = (name: SituationName, text: string) =>
  completenessIn(situationOf(stateIn(name)))(text.split(' ').filter(Boolean));

/** Everything that the grammar allows somewhere: where, and in which words. */
const phrase = fc.constantFrom(...places).chain((place) => {
  const sayings = place.grammar.sayings.map(({ words }) => words);
  const ofRules = place.grammar.rules.map((rule) =>
    fc
      .record({
        offeredOnly: fc.boolean(),
        style: fc.constantFrom('digits' as const, 'natural' as const, 'aviation' as const),
        fastener: fc.integer({ min: 1, max: 10 }),
        value: fc.integer({ min: 0, max: 9999 }).map((tenths) => `${tenths / 10}`),
      })
      .chain((options) => utteranceOf(rule, options))
      .map(({ words }) => words),
  );
  return fc.oneof(fc.constantFrom(...sayings), ...ofRules).map((words) => ({ place, words: words.split(' ') }));
});

describe('how far an utterance has come', () => {
  test('every phrase of the grammar is complete', () => {
    fc.assert(
      fc.property(phrase, ({ place, words }) => {
        expect(place.completeness(words)).toMatch(/^complete/);
      }),
      { numRuns: 500 },
    );
  });
  test('every strict beginning of a phrase may go on, whether it is complete or not', () => {
    fc.assert(
      fc.property(phrase, fc.nat(), ({ place, words }, cut) => {
        const beginning = words.slice(0, cut % words.length);
        fc.pre(!(words[0] === 'help' && beginning.length === 1));
        expect(['unfinished', 'complete, may go on', 'complete, likely whole']).toContain(
          place.completeness(beginning),
        );
      }),
      { numRuns: 800 },
    );
  });
  test('after what is closed or nothing, no words of the list make a phrase', () => {
    const word = fc.constantFrom(
      ...new Set(places.flatMap(({ situation }) => recogniserPhrases(situation)).flatMap((p) => p.split(' '))),
    );
    fc.assert(
      fc.property(phrase, fc.array(word, { minLength: 1, maxLength: 3 }), ({ place, words }, more) => {
        const before = place.completeness(words);
        const after = place.completeness([...words, ...more]);
        if (before === 'complete and closed') expect(after).toBe('nothing');
        const alone = place.completeness(more);
        if (alone === 'nothing') expect(place.completeness([...more, ...words])).toBe('nothing');
      }),
      { numRuns: 500 },
    );
  });
  test('what is complete is understood, and what is not means nothing', () => {
    const word = fc.constantFrom(
      ...new Set(places.flatMap(({ situation }) => recogniserPhrases(situation)).flatMap((p) => p.split(' '))),
    );
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.array(word, { minLength: 1, maxLength: 5 }), (place, words) => {
        const isMeant = understand(heard(words.join(' ')), place.situation).kind === 'meant';
        const completeness = place.completeness(words);
        if (isMeant) expect(completeness).toMatch(/^complete/);
        if (!completeness.startsWith('complete')) expect(isMeant).toBe(false);
      }),
      { numRuns: 500 },
    );
  });
  test('a word of other talk anywhere makes it nothing', () => {
    fc.assert(
      fc.property(phrase, fc.nat(), ({ place, words }, where) => {
        // Where a reason is dictated, there is no other talk.
        fc.pre(!place.situation.dictation);
        expect(place.completeness(words.toSpliced(where % (words.length + 1), 0, '[unk]'))).toBe('nothing');
      }),
    );
  });
  test('no words yet are the beginning of anything', () => {
    for (const { completeness } of places) expect(completeness([])).toBe('unfinished');
  });
  test('what is misheard for a saying is as far as that saying', () => {
    for (const { completeness } of places)
      for (const [asHeard, said] of MISHEARD)
        expect(completeness(asHeard.split(' '))).toBe(completeness(said.split(' ')));
  });
});

test('"help" is decided at once: "help me" means nothing more', () =>
  expect(at('hold', 'help')).toBe('complete and closed'));

test.each([
  ['confirm', 'affirm', 'complete and closed'],
  ['confirm', 'negative', 'complete and closed'],
  ['confirm', 'say', 'unfinished'],
  ['confirm', 'say again', 'complete and closed'],
  ['confirm', 'confirm', 'nothing'],
  ['step', 'go', 'unfinished'],
  ['step', 'go back', 'complete and closed'],
  // Longer by a word, it is the same question.
  ['step', 'last three', 'complete, may go on'],
  ['step', 'two four', 'nothing'],
  ['reading', 'two four', 'complete, may go on'],
  ['reading', 'two four point', 'unfinished'],
  // On a scale from 5 to 60 by 0.5, no other figure can follow.
  ['reading', 'two four point five', 'complete, likely whole'],
  ['reading', 'four two four point five', 'complete, likely whole'],
  ['reading', 'twenty four and a half', 'complete, likely whole'],
  // 19.5, or 9.5 of stud one: it is asked, and needs no more words for that.
  ['reading', 'one nine point five', 'complete, likely whole'],
  // "correction" may still follow any reading.
  ['reading', 'two four point five newton metres', 'complete, likely whole'],
  ['reading', 'two four point three', 'complete, may go on'],
  ['reading', 'six two point five', 'complete, may go on'],
  ['reading', 'twenty', 'complete, may go on'],
  ['reading', 'two three correction two four point five', 'complete, likely whole'],
  // On a scale from 40 to 400 by 1.
  ['inches', 'two one seven', 'complete, likely whole'],
  ['inches', 'two hundred', 'complete, may go on'],
  ['inches', 'two one', 'complete, may go on'],
  ['inches', 'nine five', 'complete, likely whole'],
  ['inches', 'one twenty', 'complete, may go on'],
  // Off the scale: what was meant is open.
  ['inches', 'five zero', 'complete, likely whole'],
  ['inches', 'five zero eight', 'complete, may go on'],
  ['reading', 'two four newton', 'unfinished'],
  ['reading', 'stud', 'unfinished'],
  ['reading', 'stud four', 'unfinished'],
  ['reading', 'stud four at two four', 'complete, may go on'],
  ['reading', 'two three correction', 'unfinished'],
  ['reading', 'two hundred and', 'unfinished'],
  ['reading', 'point point', 'nothing'],
  ['click', 'four', 'complete, may go on'],
  ['click', 'four click', 'complete and closed'],
  ['witness', 'witness', 'unfinished'],
  ['standing-by', 'continue', 'complete and closed'],
  ['standing-by', 'affirm', 'nothing'],
] as const)('at "%s", "%s" is %s', (name, text, expected) => expect(at(name, text)).toBe(expected));
