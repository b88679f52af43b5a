import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stateIn } from '../../src/language/named-situations.ts';
import { situationOf } from '../../src/language/situation.ts';
import {
  COMMAND_MOST,
  READING_BOUNDS,
  strictest,
  surenessFor,
  USUAL,
  type Trial,
} from '../../src/language/sureness.ts';
import { understand } from '../../src/language/understand.ts';

const trial: fc.Arbitrary<Trial> = fc.record({
  confidence: fc.double({ min: 0, max: 1, noNaN: true }),
  isRight: fc.boolean(),
});
const right = (...confidences: readonly number[]): readonly Trial[] =>
  confidences.map((confidence) => ({ confidence, isRight: true }));

describe('the sureness asked of one person', () => {
  test('stays within its bounds whatever a trial shows, and never relaxes commands', () =>
    fc.assert(
      fc.property(fc.array(trial, { maxLength: 12 }), (trials) => {
        const { command, harmless, reading, sound } = surenessFor(trials);
        expect(command).toBeGreaterThanOrEqual(USUAL.command);
        expect(command).toBeLessThanOrEqual(COMMAND_MOST);
        expect(reading).toBeGreaterThanOrEqual(READING_BOUNDS.least);
        expect(reading).toBeLessThanOrEqual(READING_BOUNDS.most);
        expect([harmless, sound]).toEqual([USUAL.harmless, USUAL.sound]);
      }),
    ));
  test('is relaxed for readings only where all five were heard right', () =>
    fc.assert(
      fc.property(fc.array(trial, { maxLength: 12 }), (trials) => {
        const isRelaxed = surenessFor(trials).reading < USUAL.reading;
        if (isRelaxed) expect(trials.length >= 5 && trials.every(({ isRight }) => isRight)).toBe(true);
      }),
    ));
  test('is as low as their least sure right phrase, less a margin, and no lower than 0.6', () => {
    expect(surenessFor(right(0.9, 0.71, 0.95, 0.99, 1)).reading).toBeCloseTo(0.66, 6);
    expect(surenessFor(right(0.9, 0.2, 0.95, 0.99, 1)).reading).toBe(0.6);
    expect(surenessFor(right(0.9, 0.9, 0.95, 0.99, 1))).toEqual(USUAL);
    expect(surenessFor(right(0.2, 0.2, 0.2, 0.2))).toEqual(USUAL);
  });
  test('is above what was heard wrongly with confidence, as far as the bounds go', () => {
    const wrong = (confidence: number): readonly Trial[] => [...right(1, 1, 1, 1), { confidence, isRight: false }];
    expect(surenessFor(wrong(0.8)).reading).toBeCloseTo(0.85, 6);
    expect(surenessFor(wrong(0.6))).toEqual(USUAL);
    expect(surenessFor(wrong(1))).toMatchObject({ reading: 0.9, command: 0.95 });
    expect(surenessFor(wrong(0))).toEqual(USUAL);
  });
  test('of several people is what satisfies each of them, and the usual where nobody is known', () => {
    expect(strictest([])).toEqual(USUAL);
    expect(
      strictest([
        { ...USUAL, reading: 0.6 },
        { ...USUAL, command: 0.9 },
      ]),
    ).toEqual({ ...USUAL, command: 0.9 });
  });
});

describe('what is understood of one person', () => {
  const heard = (text: string, confidence: number) => text.split(' ').map((word) => ({ word, confidence }));
  const at = situationOf(stateIn('reading'));
  test('may ask about a reading that anybody else’s would pass, and take one that anybody else’s would not', () => {
    const kindOf = (confidence: number, reading: number): string => {
      const understood = understand(heard('two four point five', confidence), at, { wanted: { ...USUAL, reading } });
      return understood.kind === 'meant' ? understood.meaning.kind : understood.kind;
    };
    expect([kindOf(0.75, 0.7), kindOf(0.75, 0.9)]).toEqual(['reading', 'unclear']);
    expect([kindOf(0.65, 0.7), kindOf(0.65, 0.6)]).toEqual(['unclear', 'reading']);
  });
  test('is the same value, where it is one: no trial changes what was said', () =>
    fc.assert(
      fc.property(fc.array(trial, { maxLength: 8 }), fc.integer({ min: 10, max: 59 }), (trials, value) => {
        const words = heard([...String(value)].map((digit) => spoken[Number(digit)]).join(' '), 1);
        expect(understand(words, at, { wanted: surenessFor(trials) })).toEqual(understand(words, at));
      }),
    ));
});

const spoken = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
