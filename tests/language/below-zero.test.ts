/** Values below zero, where the scale of a measurement has any: "minus" makes them, and "negative" stays the answer no. */
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import { sayRefusal } from '../../src/language/say-refusal.ts';
import { situationOf } from '../../src/language/situation.ts';
import { typedWords } from '../../src/language/typed.ts';
import { understand } from '../../src/language/understand.ts';
import { affirm, happened, negative, procedureOf, refused, start, step, tell, type Play } from '../session/play.ts';
import { vocabularyOfModel } from './vocabulary-of-model.ts';

const measuring = (more: object): Play =>
  start(procedureOf([step('gap', 'measure', { what: 'gap', unit: 'mm', ...more }), step('end', 'do')]));
const aroundZero = measuring({ window: { min: '-0.5', max: '0.5' } });
const fromZero = measuring({ window: { min: '0', max: '0.5' } });

const meant = (play: Play, line: string, again: string | null = null) =>
  understand(
    typedWords(line).map((word) => ({ word, confidence: 1 })),
    situationOf(play.state),
    { again },
  );
const observed = (value: string) => ({ kind: 'meant', meaning: { kind: 'observed', value } });
const minus = (value: string): Play => tell(aroundZero, { kind: 'observed', value: `-${value}` });

describe('a value below zero', () => {
  test.each([
    ['minus zero point two', '-0.2'],
    ['minus one', '-1'],
    ['minus oh point two five', '-0.25'],
    ['correction minus zero point four', '-0.4'],
    ['minus 0.2', '-0.2'],
    ['-0.2', '-0.2'],
    ['- 0.2 mm', '-0.2'],
    ['−0.2', '-0.2'],
    ['zero point two', '0.2'],
  ])('“%s” is %s', (line, value) => expect(meant(aroundZero, line)).toEqual(observed(value)));

  test('is no other value because a sign was doubled, or stands alone or behind', () => {
    for (const line of ['minus -0.2', 'minus minus one', 'minus', '-', 'zero point two minus'])
      expect(meant(aroundZero, line).kind).toBe('nothing');
  });

  test('is asked about where the sign was heard in one of two hearings only', () => {
    const unsure = { kind: 'meant', meaning: { kind: 'unclear', doubt: 'not sure' } };
    expect(meant(aroundZero, 'minus zero point two', 'zero point two')).toMatchObject(unsure);
    expect(meant(aroundZero, 'zero point two', 'minus zero point two')).toMatchObject(unsure);
    expect(meant(aroundZero, 'minus zero point two', 'minus zero point two')).toEqual(observed('-0.2'));
  });

  test('is judged, and read back with its sign', () => {
    expect(happened(minus('0.2'))).toMatchObject([{ value: '-0.2', verdict: 'in' }]);
    expect(announce(minus('0.2').state, happened(minus('0.2')))).toEqual([
      'Gap, minus zero point two millimetres. Is that correct?',
    ]);
    expect(happened(minus('0.6'))).toMatchObject([{ verdict: 'under' }]);
  });

  test('is refused in words where the scale ends at zero, spoken or typed', () => {
    for (const line of ['minus zero point two', '-0.2']) expect(meant(fromZero, line)).toEqual(observed('-0.2'));
    const play = tell(fromZero, { kind: 'observed', value: '-0.2' });
    const reason = refused(play);
    expect(reason).toEqual({ code: 'scale ends at zero' });
    expect(reason && sayRefusal(play.state, reason)).toBe(
      'This scale does not go below zero. Look again, and say what it shows.',
    );
    expect(play.state.observed).toEqual([]);
  });

  test('may be told of by the procedure where no window tells of it, or against its window', () => {
    expect(refused(tell(measuring({ belowZero: true }), { kind: 'observed', value: '-3' }))).toBeNull();
    expect(refused(tell(measuring({}), { kind: 'observed', value: '-3' }))?.code).toBe('scale ends at zero');
  });
});

describe('"minus" and "negative"', () => {
  test('are two words: no value has "negative" in it, and no answer is "minus"', () => {
    expect(meant(aroundZero, 'negative zero point two').kind).toBe('nothing');
    const pending = minus('0.2');
    expect(meant(pending, 'negative')).toEqual({ kind: 'meant', meaning: { kind: 'negative' } });
    expect(meant(pending, 'minus').kind).toBe('nothing');
    expect(tell(pending, negative).state.observed[0]?.status).toBe('rejected');
    expect(tell(pending, affirm).state.observed[0]?.status).toBe('confirmed');
  });

  test('the recogniser is told "minus", which its model knows, only where the scale goes below zero', () => {
    expect(vocabularyOfModel().has('minus')).toBe(true);
    const tells = (play: Play): boolean =>
      recogniserPhrases(situationOf(play.state)).some((each) => /\bminus\b/.test(each));
    expect(tells(aroundZero)).toBe(true);
    expect(tells(minus('0.2'))).toBe(true);
    expect(tells(fromZero)).toBe(false);
  });
});
