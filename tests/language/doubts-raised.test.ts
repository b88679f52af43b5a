/** Doubts on their way from the ear to the record: raised as a reading is understood, asked in the read-back, written down. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { announce } from '../../src/language/announce.ts';
import { situationOf } from '../../src/language/situation.ts';
import { sayNumber } from '../../src/language/numbers/index.ts';
import { typedWords } from '../../src/language/typed.ts';
import { understand } from '../../src/language/understand.ts';
import { torque } from '../../src/units/index.ts';
import {
  affirm,
  dial,
  happened,
  kinds,
  newtonMetres,
  next,
  tell,
  torquePass,
  window,
  type Play,
  indicating,
} from '../session/play.ts';
import { heard, ring, understood } from './meant.ts';

/** The doubts about an utterance, as they come with its meaning. */
function doubts(play: Play, text: string, confidence?: number): readonly string[] {
  const meaning = understood(play, text, confidence);
  if (meaning?.kind !== 'reading' && meaning?.kind !== 'correction') throw new Error(`"${text}" is no reading.`);
  return meaning.doubts ?? [];
}
/** The play after an utterance. */
function hear(play: Play, text: string): Play {
  const meaning = understood(play, text);
  if (!meaning) throw new Error(`"${text}" means nothing.`);
  return tell(play, meaning);
}
const said = (play: Play): string => announce(play.state, happened(play)).join(' ');

describe('a reading is understood', () => {
  test('without a doubt where there is none, over the whole window', () => {
    for (const text of ['two four point five', 'two three', 'two six', 'three zero', 'stud one at two four'])
      expect(doubts(ring(), text)).toEqual([]);
  });
  test.each([
    ['nine zero', 'off the scale'],
    ['two four point two five', 'between marks'],
    ['fifty', 'sounds like another'],
    ['four two point five', 'digits swapped'],
    ['nine', 'digit count'],
  ])('as it was said, with its doubt: "%s" is %s', (text, doubt) => expect(doubts(ring(), text)).toEqual([doubt]));
  test('with the doubt of a point moved by one place', () => {
    const low = ring({ passes: [torquePass('6', '5.5', '6.5')] });
    expect(doubts(low, 'six zero')).toEqual(['out by ten']);
  });
  test('with a doubt where digits that sound alike were not quite sure', () => {
    expect(doubts(ring(), 'two five', 0.9)).toEqual(['sounds like another']);
    expect(doubts(ring(), 'stud one at two five', 0.9)).toEqual(['sounds like another']);
    expect(doubts(ring(), 'two five', 0.96)).toEqual([]);
  });
  test('typed, with a doubt about the scale or the window, and none about its sound', () => {
    const doubtsOf = (line: string) => doubts(ring(), typedWords(line).join(' '));
    expect(doubtsOf('24.5')).toEqual([]);
    expect(doubtsOf('15')).toEqual([]);
    expect(doubtsOf('24.25')).toEqual(['between marks']);
    expect(doubtsOf('1 245')).toEqual(['off the scale']);
    expect(doubtsOf('42.5')).toEqual(['digits swapped']);
  });
  test('with no doubt where it is of a fastener that is not called: it is refused, not asked about', () =>
    expect(doubts(ring(), 'stud three at four two point five')).toEqual([]));
  test('as a correction against the window of the reading that it corrects', () => {
    const passes = [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')];
    const first = Array.from({ length: 10 }).reduce<Play>((at) => tell(hear(at, 'one two'), affirm), ring({ passes }));
    expect(doubts(first, 'correction two one')).toEqual(['digits swapped']);
    expect(doubts(first, 'two four')).toEqual([]);
  });
  test('against what the next fastener wants, where its value confirms the one before', () => {
    const passes = [torquePass('12', '11', '13'), torquePass('24.5', '23', '26')];
    let at = ring({ passes, confirm: 'by going on' });
    for (let i = 0; i < 10; i++) at = hear(at, 'one two');
    expect(doubts(at, 'four two point five')).toEqual(['digits swapped']);
    expect(doubts(at, 'correction two one')).toEqual(['digits swapped']);
    expect(doubts(at, 'two four point five')).toEqual([]);
  });
  test('against the dial that shows the running torque, and the wrench after it', () => {
    const runDown = { used: true, minimum: newtonMetres('2'), tool: 'dial' };
    const at = ring(
      { runDown, confirm: 'by going on' },
      { tools: [{ ...indicating, range: window('5', '60') }, dial] },
    );
    expect(doubts(at, 'two point five five')).toEqual(['between marks']);
    expect(doubts(at, 'two point five')).toEqual([]);
  });
});

test('what is recognised does not depend on where the value is wanted: only the doubts do', () => {
  const value = fc.integer({ min: 0, max: 1300 }).map((halves) => `${halves / 2}`);
  const limits = fc.tuple(fc.integer({ min: 5, max: 50 }), fc.integer({ min: 0, max: 9 }));
  const styles = fc.constantFrom('digits' as const, 'natural' as const, 'aviation' as const);
  fc.assert(
    fc.property(
      value,
      limits,
      styles,
      fc.double({ min: 0.5, max: 1, noNaN: true }),
      (value, [min, width], style, sure) => {
        const words = heard(sayNumber(value, style).join(' '), sure);
        const situation = situationOf(ring().state);
        const { reading } = situation;
        if (!reading) throw new Error('No reading is wanted.');
        const moved = new Map(
          [...reading.held].map(([fastener, held]) => [
            fastener,
            { ...held, window: { min: torque(min, 'N·m'), max: torque(min + width, 'N·m') } },
          ]),
        );
        const plain = (held: typeof reading.held) => {
          const understanding = understand(words, { ...situation, reading: { ...reading, held } });
          if (understanding.kind === 'nothing' || understanding.meaning.kind !== 'reading') return understanding;
          return understanding.meaning.reading;
        };
        expect(plain(moved)).toEqual(plain(reading.held));
        expect(plain(new Map())).toEqual(plain(reading.held));
      },
    ),
  );
});

describe('a reading in doubt', () => {
  const swapped = hear(ring({ confirm: 'by going on' }), 'four two point five');

  test('is captured as it was said, with its doubts', () =>
    expect(happened(swapped)).toMatchObject([
      { kind: 'reading captured', reading: newtonMetres('42.5'), doubts: ['digits swapped'] },
    ]));
  test('is captured without the word where nothing is doubted', () =>
    expect(happened(hear(ring(), 'two four'))[0]).not.toHaveProperty('doubts'));
  test('is read back with its question, which holds no other value', () =>
    expect(said(swapped)).toBe(
      'Stud one, four two point five. That is over the window. Check the order of the digits. Affirm, or say what the tool shows.',
    ));
  test('is asked as usual where the same value is said again: that answers the question', () => {
    const again = hear(swapped, 'four two point five');
    expect(said(again)).toBe('Stud one, four two point five. That is over the window. Is that correct?');
    expect(happened(again)).toMatchObject([{ doubts: ['digits swapped'] }]);
  });
  test('is answered by the value that the tool shows', () => {
    const right = hear(swapped, 'two four point five');
    expect(right.state.readings.map(({ status }) => status)).toEqual(['replaced', 'captured']);
    expect(said(right)).toBe('Stud one, two four point five. Next, stud two.');
  });

  test('is asked about for as long as no scale shows it, though the same value is said again', () => {
    const again = hear(hear(ring(), 'nine zero'), 'nine zero');
    expect(said(again)).toMatch(/What does the tool show\? Say it digit by digit\.$/);
    expect(tell(again, affirm).last).toEqual({ kind: 'refused', reason: { code: 'in doubt', fastener: 1 } });
    expect(said(hear(again, 'two four'))).toBe('Stud one, two four. Is that correct?');
  });

  describe('inside its window, in a step that is confirmed by going on', () => {
    const between = hear(ring({ confirm: 'by going on' }), 'two four point two five');

    test('is asked about', () =>
      expect(said(between)).toBe(
        'Stud one, two four point two five. That is between the marks of the tool. Affirm, or say what the tool shows.',
      ));
    test('is not confirmed by going on: it wants its own word', () => {
      expect(tell(between, next).last).toEqual({ kind: 'refused', reason: { code: 'confirm first', fastener: 1 } });
      expect(kinds(hear(between, 'stud two at two four'))).toEqual([]);
      expect(kinds(tell(between, affirm))).toEqual(['reading confirmed']);
    });
  });
});
