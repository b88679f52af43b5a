import { describe, expect, it } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { CALL_WORD, HUSH_WORDS, hushWords, isHush, spokenWords } from '../../src/language/hush.ts';
import { SITUATION_NAMES, stateIn } from '../../src/language/named-situations.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { prompt } from '../../src/language/prompt.ts';
import { situationOf } from '../../src/language/situation.ts';
import { typedWords } from '../../src/language/typed.ts';
import { vocabularyOfModel } from './vocabulary-of-model.ts';

/** What is said in every named situation: where the work stands, what is asked, and the answers to all questions. */
const announcements = SITUATION_NAMES.map((name) => {
  const state = stateIn(name);
  const abouts = ['place', 'left', 'why', 'last readings', 'slowly'] as const;
  const answers = abouts.flatMap((about) => announce(state, [{ kind: 'asked', question: { about } }]));
  return { name, texts: [...prompt(state), ...announce(state, [{ kind: 'reopened' }]), ...answers] };
});

describe('the word that hushes the voice', () => {
  it('is known to the embedded model', () => {
    for (const word of HUSH_WORDS) expect(vocabularyOfModel().has(word)).toBe(true);
  });

  it('is no phrase of any situation: at another time it does nothing', () => {
    for (const name of SITUATION_NAMES) {
      const words = recogniserPhrases(situationOf(stateIn(name))).flatMap((phrase) => phrase.split(' '));
      for (const word of HUSH_WORDS) expect(words).not.toContain(word);
    }
  });

  it.each([
    ['stop', true],
    [' Stop. ', true],
    ['stop it', false],
    ['next', false],
    ['', false],
  ])('may be typed as well: “%s”', (line, is) => expect(isHush(typedWords(line))).toBe(is));

  it.each(announcements)('is not in what is said at “$name”, so that the voice can be hushed there', ({ texts }) => {
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) for (const word of HUSH_WORDS) expect(spokenWords(text)).not.toContain(word);
  });
});

describe('the call for help', () => {
  const words = (text: string): readonly string[] => spokenWords(text);
  it('is heard over the voice while a weight is held and somebody can be called, and at no other time', () => {
    expect(hushWords(words('Thirty seconds. Ports up.'), true)).toEqual(['stop', CALL_WORD]);
    expect(hushWords(words('Thirty seconds. Ports up.'), false)).toEqual(['stop']);
  });
  it.each([
    'Help! B. Invented, to the load, now!',
    'Held. Ports up.',
    'You hold it. Next, or set down.',
    'Hold it in place.',
  ])('is never taken from its own voice: not listened for while that says “%s”', (text) =>
    expect(hushWords(words(text), true)).toEqual(['stop']),
  );
  it('is heard over what is said again and again under a weight', () => {
    const state = stateIn('holding');
    for (const text of prompt(state)) expect(hushWords(words(text), true)).toContain(CALL_WORD);
  });
});

describe('the words of an announcement', () => {
  it('are those that are spoken, digits one by one', () => {
    expect(spokenWords('Stud 12: 24.5 newton metres. Don’t; it’s “off”.')).toEqual(
      'stud one two two four five newton metres don t it s off'.split(' '),
    );
    expect(spokenWords('Stop. Both read again.')[0]).toBe('stop');
  });
});
