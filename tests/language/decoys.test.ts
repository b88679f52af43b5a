import { describe, expect, test } from 'vitest';
import { answerWanted, DECOYS, decoysFor, MISHEARD, NOT_ANSWERS } from '../../src/language/decoys.ts';
import { SITUATION_NAMES, stateIn } from '../../src/language/named-situations.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand } from '../../src/language/understand.ts';
import { heard } from './meant.ts';
import { vocabularyOfModel } from './vocabulary-of-model.ts';

const everywhere = SITUATION_NAMES.map((name) => [name, situationOf(stateIn(name))] as const);
/** In dictation every word may be meant: there is nothing to tell a command from. */
const situations = everywhere.filter(([, { dictation }]) => !dictation);

describe('a decoy', () => {
  const vocabulary = vocabularyOfModel();
  test.each(DECOYS)('"$word" beside "$near": the model knows both', ({ word, near }) => {
    expect(vocabulary).toContain(word);
    expect(vocabulary).toContain(near);
  });
  test.each(situations)(
    'is offered at "%s" beside each command that it protects, and means nothing',
    (_, situation) => {
      const phrases = recogniserPhrases(situation);
      const commands = new Set(phrases.flatMap((phrase) => phrase.split(' ')));
      for (const { word, near } of DECOYS) {
        expect({ word, isOffered: phrases.includes(word) }).toEqual({ word, isOffered: commands.has(near) });
        expect(understand(heard(word), situation)).toMatchObject({ kind: 'nothing' });
      }
    },
  );
  test('is none where the word is an answer', () =>
    expect(decoysFor(['next', 'text']).map(({ word }) => word)).not.toContain('text'));
});

describe('an answer that is none', () => {
  test.each([...NOT_ANSWERS])(
    '"%s" changes nothing anywhere; where yes or no is wanted, the answers are said',
    (words) => {
      for (const [, situation] of situations) {
        const understood = understand(heard(words), situation);
        const ask = answerWanted(situation.sayings);
        expect(understood).toEqual(ask === null ? { kind: 'nothing' } : { kind: 'nothing', ask });
      }
    },
  );
  test('that was hardly heard is not even asked about', () =>
    expect(understand(heard('yes', 0.5), situationOf(stateIn('confirm')))).toEqual({ kind: 'nothing' }));
  test('is told which words are answers', () => {
    expect(answerWanted(situationOf(stateIn('confirm')).sayings)).toBe('Say affirm or negative.');
    expect(answerWanted(situationOf(stateIn('warning')).sayings)).toBe('Say affirm.');
    expect(answerWanted(situationOf(stateIn('reading')).sayings)).toBeNull();
  });
});

test('what is misheard for a saying means that saying, and has no meaning of its own', () => {
  for (const [, situation] of situations) {
    for (const [asHeard, said] of MISHEARD) {
      expect(situation.sayings.map(({ words }) => words)).not.toContain(asHeard);
      expect(understand(heard(asHeard), situation)).toEqual(understand(heard(said), situation));
    }
  }
});
