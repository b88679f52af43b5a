import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sayDigits, sayNumber } from '../../src/language/numbers/index.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand } from '../../src/language/understand.ts';
import type { Meaning } from '../../src/session/intent.ts';
import {
  affirm,
  answer,
  back,
  continue_,
  disregard,
  indicating,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  torquePass,
  turned,
  window,
  type Play,
} from '../session/play.ts';
import { meant, several, otherUnit, ring, outcomes } from './meant.ts';

const sayAgain: Meaning = { kind: 'say again' };
const standBy: Meaning = { kind: 'stand by' };

const hazards = [{ signal: 'warning', consequence: 'person', text: 'Oil under pressure.' }];

describe('a saying', () => {
  const doing = start(procedureOf([step('drain', 'do'), step('lift', 'do')]));
  const warned = start(procedureOf([step('drain', 'do', { hazards })]));
  const checking = start(procedureOf([step('inspect', 'check', { outcomes })]));
  const pending = tell(ring(), reading('24'));
  const waiting = tell(doing, standBy);
  const final = { target: { value: '24', unit: 'N·m' }, window: window('23', '25') };
  const round = ring({ final, passes: [{ kind: 'circular check' }] });

  test.each<[string, Play, string, Meaning | null]>([
    ['a step', doing, 'next', next],
    ['a step', doing, 'Done', next],
    ['a step', doing, 'back', back],
    ['a step', doing, 'go back', back],
    ['a step', doing, 'say again', sayAgain],
    ['a step', doing, 'stand by', standBy],
    ['a step', doing, 'stand-by', standBy],
    ['a step', doing, 'continue', null],
    ['a step', doing, 'affirm', null],
    ['a step', doing, 'turned', null],
    ['a step', doing, 'two four point five', null],
    ['a warning', warned, 'affirm', affirm],
    ['a warning', warned, 'next', null],
    ['a warning', warned, 'negative', null],
    ['a warning', warned, 'back', null],
    ['a check', checking, 'reuse', answer('reuse')],
    ['a check', checking, 'fit a new one', answer('replace')],
    ['a check', checking, 'replace', answer('replace')],
    ['a check', checking, 'negative', negative],
    ['a check', checking, 'next', null],
    ['a check', checking, 'affirm', null],
    ['a reading to confirm', pending, 'affirmative', affirm],
    ['a reading to confirm', pending, 'negative', negative],
    ['a reading to confirm', pending, 'disregard', disregard],
    ['a reading to confirm', pending, 'cancel that', disregard],
    ['a reading to confirm', pending, 'back', null],
    ['a round of checks', round, 'turned', turned],
    ['a round of checks', round, 'it turned', turned],
    ['a round of checks', round, 'next', next],
    ['a round of checks', round, 'two four', null],
    ['standing by', waiting, 'continue', continue_],
    ['standing by', waiting, 'say again', sayAgain],
    ['standing by', waiting, 'next', null],
    ['a closed session', tell(doing, next, next), 'next', null],
    ['a closed session', tell(doing, next, next), 'say again', sayAgain],
  ])('at %s: "%s"', (_, play, text, meaning) => expect(meant(play, text)).toEqual(meaning));

  test.each(['please go next', 'next next', 'what is next', 'affirm two four', 'is that affirm'])(
    'is a whole utterance or none: "%s"',
    (text) => {
      expect(meant(doing, text)).toBeNull();
      expect(meant(pending, text)).toBeNull();
    },
  );
  test.each(['the', '', 'number', 'stud four', 'at', 'stud at two four', 'four at', 'click', 'correction'])(
    '"%s" is none where a reading is wanted',
    (text) => expect(meant(ring(), text)).toBeNull(),
  );
  test('is acted on at once, so it wants to be sure', () => {
    expect(meant(doing, 'next', 0.84)).toBeNull();
    expect(meant(doing, 'next', 0.85)).toEqual(next);
  });
  test('that takes something back is asked about where the sound cannot be trusted; all others are taken there', () => {
    const situation = situationOf(tell(pending, affirm).state);
    const asked = (words: string): boolean => {
      const heard = words.split(' ').map((word) => ({ word, confidence: 1 }));
      const found = understand(heard, situation, { isTrusted: false });
      expect(found.kind === 'nothing' ? { ...found, ask: '' } : found).toEqual(
        found.kind === 'nothing' ? { kind: 'nothing', ask: '', isUnsure: true } : understand(heard, situation),
      );
      return found.kind === 'nothing' && Boolean(found.ask?.startsWith(`Was that ${words}? It is too loud`));
    };
    const sayings = situation.sayings.map(({ words }) => words);
    expect(sayings.filter(asked)).toEqual(['back', 'go back', 'disregard', 'cancel that']);
  });
  test('is as sure as its least sure word', () =>
    expect(
      understand(
        [
          { word: 'go', confidence: 1 },
          { word: 'back', confidence: 0.6 },
        ],
        situationOf(doing.state),
      ),
    ).toEqual({ kind: 'nothing' }));
  test.each([
    ['say again', sayAgain],
    ['stand by', standBy],
  ])('that changes nothing is taken at half: "%s"', (text, meaning) => {
    expect(meant(doing, text, 0.5)).toEqual(meaning);
    expect(meant(doing, text, 0.4)).toBeNull();
  });
});

describe('a reading', () => {
  const play = ring();

  test.each<[string, Meaning]>([
    ['two four point five', reading('24.5')],
    ['two four point five newton metres', reading('24.5')],
    ['two four point five newton meter', reading('24.5')],
    ['twenty four and a half', reading('24.5')],
    ['twenty four point five zero', reading('24.50')],
    ['Stud four at two four point five', reading('24.5', 4)],
    ['stud number four at two four point five', reading('24.5', 4)],
    ['bolt four at two four', reading('24', 4)],
    ['four at two four point five', reading('24.5', 4)],
    ['stud zero four at two four', reading('24', 4)],
    ['stud ten at zero five', reading('5', 10)],
  ])('"%s"', (text, meaning) => expect(meant(play, text)).toEqual(meaning));

  test.each<[string, Meaning]>([
    ['four two four point five', reading('24.5', 4)],
    ['stud four two four point five', reading('24.5', 4)],
    ['stud four five six', reading('56', 4)],
  ])('is cut where the pattern and the scale allow one cut only: "%s"', (text, meaning) =>
    expect(meant(play, text)).toEqual(meaning),
  );
  test.each<[string, Meaning]>([
    ['one five', several([null, '15'], [1, '5'])],
    ['one six point five', several([null, '16.5'], [1, '6.5'])],
  ])('with two cuts, one of them the fastener called, is asked about: "%s"', (text, meaning) =>
    expect(meant(play, text)).toEqual(meaning),
  );
  test('is the value where the other cut names a fastener that is not called', () =>
    expect(meant(play, 'two five')).toEqual(reading('25')));
  test.each<[string, Meaning]>([
    ['nine zero', reading('90')],
    ['four at nine zero', reading('90', 4)],
    ['stud four at three', reading('3', 4)],
    ['zero', reading('0')],
  ])('off the scale stands as said, to be read back: "%s"', (text, meaning) =>
    expect(meant(play, text)).toEqual(meaning),
  );
  test.each(['stud eleven at two four', 'eleven at two four'])(
    'of a fastener that does not exist is told, not passed over: "%s"',
    (text) => expect(meant(play, text)).toEqual(reading('24', 11)),
  );
  test.each([
    'stud four point five at two four',
    'four and a half at two four',
    'stud one two three four five at two four',
  ])('has a whole fastener number of at most four digits: "%s"', (text) => expect(meant(play, text)).toBeNull());
  test.each([
    'two four point five please',
    'it was two four point five',
    'two four point five correction',
    'correction two four point five',
    'two four point five newton',
    `${'two '.repeat(200)}two`,
    `${'two '.repeat(20)}two`,
  ])('is a whole utterance that can be one value, or none: "%s"', (text) => expect(meant(play, text)).toBeNull());

  test.each(['two one seven inch pounds', 'stud four at one eight foot pounds', 'two four kilogram metres'])(
    'in another unit than the tool has is asked about, never converted: "%s"',
    (text) => expect(meant(play, text)).toEqual(otherUnit),
  );
  test('with the unit of the tool is taken, whatever the manual has', () => {
    const inches = { min: { value: '50', unit: 'lbf·in' }, max: { value: '500', unit: 'lbf·in' } };
    const tool = { ...indicating, range: inches };
    const inInches = ring({}, { tools: [tool] });
    expect(meant(inInches, 'two one seven inch pounds')).toEqual(reading('217'));
    expect(meant(inInches, 'two four point five newton metres')).toEqual(otherUnit);
  });
  test('that was not heard surely is asked about', () => {
    const unsure = { kind: 'unclear', doubt: 'not sure', readings: [{ fastener: null, value: '24.5' }] };
    expect(meant(play, 'two four point five', 0.69)).toEqual(unsure);
    expect(meant(play, 'two four point five', 0.7)).toEqual(reading('24.5'));
  });
  test('that is hardly heard is other people’s, unless it names its fastener', () => {
    expect(meant(play, 'two four point five', 0.54)).toBeNull();
    expect(meant(play, 'two seventy', 0.54)).toBeNull();
    expect(meant(play, 'stud four two four point five', 0.54)).toMatchObject({ kind: 'unclear', doubt: 'not sure' });
  });

  test('with its fastener is understood as said over the whole scale and beyond it, whatever the target', () => {
    const fastener = fc.integer({ min: 1, max: 10 });
    const value = fc.integer({ min: 0, max: 9999 }).map((tenths) => `${tenths / 10}`);
    const target = fc.constantFrom('6', '24.5', '59');
    fc.assert(
      fc.property(fastener, value, target, fc.constantFrom('digits', 'natural'), (fastener, value, target, style) => {
        const around = ring({ passes: [torquePass(target, target, target)] });
        const said = `stud ${sayNumber(String(fastener), style).join(' ')} at ${sayNumber(value, style).join(' ')}`;
        expect(meant(around, said)).toEqual(reading(value, fastener));
      }),
    );
  });
  test('alone is understood as said or asked about, and never as another value of the fastener that is called', () => {
    const value = fc.integer({ min: 50, max: 600 }).map((tenths) => `${tenths / 10}`);
    fc.assert(
      fc.property(value, (value) => {
        const meaning = meant(play, sayDigits(value).join(' '));
        if (meaning?.kind === 'unclear') expect(meaning.readings).toContainEqual({ fastener: null, value });
        else expect(meaning).toEqual(reading(value));
      }),
    );
  });
});
