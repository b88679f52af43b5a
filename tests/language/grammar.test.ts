import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { grammarOf, type ReadingRule } from '../../src/language/grammar.ts';
import { matchesOf } from '../../src/language/grammar-match.ts';
import { SITUATION_NAMES, stateIn } from '../../src/language/named-situations.ts';
import { recogniserPhrases } from '../../src/language/phrases.ts';
import type { ReadingRoom } from '../../src/language/reading-room.ts';
import { situationOf } from '../../src/language/situation.ts';
import { understand } from '../../src/language/understand.ts';
import type { Meaning, SaidReading } from '../../src/session/intent.ts';
import { heard } from './meant.ts';
import { utteranceOf, type SaidBy } from './utterances.ts';

const places = SITUATION_NAMES.flatMap((name) => {
  const situation = situationOf(stateIn(name));
  const phrases = recogniserPhrases(situation);
  // Observed values have one form, tested with their steps.
  return grammarOf(situation).rules.flatMap((rule) =>
    rule.meaning === 'observed' ? [] : [{ name, situation, phrases, rule }],
  );
});

/** Something said in a situation. Where is a number, so that a failure is told in few words. */
interface Uttered {
  readonly place: number;
  readonly said: SaidBy;
}

const placeOf = ({ place }: Pick<Uttered, 'place'>): (typeof places)[number] => {
  const found = places[place];
  if (!found) throw new RangeError(`There is no place ${place}.`);
  return found;
};

type Style = 'digits' | 'natural' | 'aviation';

/** Anything that the grammar allows, in any situation, of any fastener, with values on and off the scale. */
function uttered(offeredOnly: boolean, ...styles: readonly Style[]): fc.Arbitrary<Uttered> {
  const value = fc.integer({ min: 0, max: 9999 }).map((tenths) => `${tenths / 10}`);
  return fc
    .tuple(fc.nat(places.length - 1), fc.integer({ min: 1, max: 10 }), value, fc.constantFrom(...styles))
    .chain(([place, fastener, value, style]) =>
      fc.record({
        place: fc.constant(place),
        said: utteranceOf(placeOf({ place }).rule, { offeredOnly, style, fastener, value }),
      }),
    );
}

const isOnScale = ({ scale }: ReadingRoom, value: string): boolean =>
  Number(value) >= scale.min.value && Number(value) <= scale.max.value;

/** Whether a reading is the one that was said. No number is the fastener that is called. */
const isThe = (reading: SaidReading, { fastener, value }: SaidBy, { called }: ReadingRoom): boolean =>
  reading.value === value && (reading.fastener ?? called) === (fastener ?? called);

function isMeant(meaning: Meaning, said: SaidBy, { room }: ReadingRule): boolean {
  switch (meaning.kind) {
    case 'click':
      return said.meaning === 'click' && meaning.fastener === said.fastener;
    case 'reading':
    case 'correction':
    case 'witness':
      return said.meaning === meaning.kind && isThe(meaning.reading, said, room);
    case 'question':
      return (
        said.meaning === 'logged' && meaning.question.about === 'logged' && meaning.question.fastener === said.fastener
      );
    default:
      return false;
  }
}

const meaningOf = (uttered: Uttered): Meaning => {
  const { said } = uttered;
  const understood = understand(heard(said.words), placeOf(uttered).situation);
  if (understood.kind !== 'meant') throw new Error(`"${said.words}" means nothing.`);
  return understood.meaning;
};

describe('an utterance made from the grammar', () => {
  test('means what was said, or is asked about; digits that run on may be cut otherwise where they do not fit', () => {
    fc.assert(
      fc.property(uttered(false, 'digits', 'natural', 'aviation'), (one) => {
        const { said } = one;
        const { rule } = placeOf(one);
        const meaning = meaningOf(one);
        const isRefused = said.unit !== null && said.unit !== rule.room.unit;
        if (isRefused) return void expect(meaning).toMatchObject({ kind: 'unclear', doubt: 'other unit' });
        const isCalled = said.fastener === null || said.fastener === rule.room.called;
        const mayBeCut = !said.isSeparate && !(isCalled && said.value !== null && isOnScale(rule.room, said.value));
        const isOffered =
          meaning.kind === 'unclear'
            ? meaning.readings.some((reading) => isThe(reading, said, rule.room))
            : isMeant(meaning, said, rule);
        expect(isOffered || mayBeCut).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });
  test('with a word between the fastener and the value means just that, on the scale and off it', () => {
    const separate = uttered(false, 'digits', 'natural', 'aviation').filter(
      (one) => one.said.isSeparate && [null, placeOf(one).rule.room.unit].includes(one.said.unit),
    );
    fc.assert(
      fc.property(separate, (one) => {
        expect(isMeant(meaningOf(one), one.said, placeOf(one).rule)).toBe(true);
      }),
    );
  });
  test('is of one rule only, and no fixed saying', () => {
    fc.assert(
      fc.property(uttered(false, 'digits', 'natural'), (one) => {
        const { rules, sayings } = grammarOf(placeOf(one).situation);
        const words = one.said.words.split(' ');
        expect(rules.filter(({ forms }) => matchesOf(forms, words).length > 0)).toHaveLength(1);
        expect(sayings.map((saying) => saying.words)).not.toContain(one.said.words);
      }),
    );
  });
  test('in offered words has words of the phrase list only', () => {
    fc.assert(
      fc.property(uttered(true, 'digits', 'natural'), (one) => {
        const known = new Set(placeOf(one).phrases.flatMap((phrase) => phrase.split(' ')));
        expect(one.said.words.split(' ').filter((word) => !known.has(word))).toEqual([]);
      }),
    );
  });
});
