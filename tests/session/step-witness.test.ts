/** The second person looks at what a step asks for: nobody else's word goes past it. */
import { describe, expect, test } from 'vitest';
import { currentStep } from '../../src/session/state.ts';
import { awaitsStepWitness } from '../../src/session/step-witness.ts';
import {
  affirm,
  back,
  correction,
  disregard,
  happened,
  kinds,
  negative,
  next,
  procedureOf,
  reading,
  refused,
  start,
  step,
  tell,
  tighten,
} from './play.ts';

const agrees = { kind: 'witness says', agrees: true } as const;
const objects = { kind: 'witness says', agrees: false } as const;
const leaves = { kind: 'second person', name: null } as const;
const last = step('clean', 'do');

describe('a step that a second person looks at', () => {
  const play = start(procedureOf([step('look', 'witness', { what: 'the whole ring' }), last]));

  test.each([next, affirm, negative, reading('24'), { kind: 'answer', outcome: 'x' } as const])(
    'is not passed by $kind',
    (meaning) => expect(refused(tell(play, meaning))).toEqual({ code: 'step witness first' }),
  );
  test('is passed by their word, and the record names them', () =>
    expect(happened(tell(play, agrees))).toEqual([
      { kind: 'step witnessed', step: 'look', person: 'Second person', agrees: true },
      { kind: 'step done', step: 'look' },
    ]));
  test('stays where they do not agree, and is asked again', () => {
    const after = tell(play, objects);
    expect(kinds(after)).toEqual(['step witnessed']);
    expect(currentStep(after.state)?.id).toBe('look');
    expect(kinds(tell(after, agrees))).toEqual(['step witnessed', 'step done']);
  });
  test('waits until there is a second person, who is not the mechanic', () => {
    const alone = tell(play, leaves);
    expect(refused(tell(alone, agrees))).toEqual({ code: 'no second person' });
    expect(refused(tell(alone, { kind: 'second person', name: ' mechanic ' }))).toEqual({ code: 'doer is no witness' });
    expect(kinds(tell(alone, { kind: 'second person', name: 'Third person' }, agrees))).toEqual([
      'step witnessed',
      'step done',
    ]);
  });
});

describe('a step whose work a second person looks at', () => {
  test.each(['do', 'note'])('of kind %s is not done before they have', (kind) => {
    const play = tell(start(procedureOf([step('fit', kind, { witness: true }), last])), next);
    expect(happened(play)).toEqual([{ kind: 'witness asked', step: 'fit' }]);
    expect(refused(tell(play, next))).toEqual({ code: 'step witness first' });
    expect(kinds(tell(play, agrees))).toEqual(['step witnessed', 'step done']);
  });
  test('is worked again where they do not agree, and they are asked again', () => {
    const again = tell(start(procedureOf([step('fit', 'do', { witness: true }), last])), next, objects);
    expect(awaitsStepWitness(again.state)).toBe(false);
    expect(kinds(tell(again, next))).toEqual(['witness asked']);
  });
  test('cannot be witnessed before it is done', () =>
    expect(refused(tell(start(procedureOf([step('fit', 'do', { witness: true })])), agrees))).toEqual({
      code: 'nothing to witness',
    }));
  test('may be taken back meanwhile', () => {
    const play = start(procedureOf([step('lift', 'do'), step('fit', 'do', { witness: true }), last]));
    const after = tell(play, next, next, back);
    expect(currentStep(after.state)?.id).toBe('lift');
    expect(awaitsStepWitness(after.state)).toBe(false);
  });

  describe('with readings', () => {
    const ring = start(procedureOf([tighten('ring', { witness: true }), last]));
    const read = tell(ring, reading('24'), affirm, reading('24'), affirm, reading('24'), affirm);

    test('comes to them after the last one', () => expect(kinds(read)).toEqual(['reading confirmed', 'witness asked']));
    test('is asked about anew after a correction', () => {
      const corrected = tell(read, correction('25'), affirm);
      expect(kinds(corrected)).toEqual(['reading confirmed', 'witness asked']);
      expect(kinds(tell(corrected, agrees))).toEqual(['step witnessed', 'step done']);
    });
    test('has its last pass read again where they do not agree and the mechanic says "back"', () => {
      const again = tell(read, objects, back);
      expect(happened(again)).toEqual([{ kind: 'pass restarted', step: 'ring', pass: 1 }]);
      expect(again.state.readings.map(({ status }) => status)).toEqual(['set aside', 'set aside', 'set aside']);
    });
    test('is taken back from a step of its own as well', () => {
      const look = step('look', 'witness', { what: 'the ring' });
      const looked = tell(
        start(procedureOf([tighten('ring'), look, last])),
        ...[1, 2, 3].flatMap(() => [reading('24'), affirm]),
      );
      expect(refused(tell(looked, back))).toEqual({ code: 'readings stand' });
      const again = tell(looked, objects, back);
      expect(kinds(again)).toEqual(['step taken back', 'pass restarted']);
      expect(currentStep(again.state)?.id).toBe('ring');
    });
    test('is not asked about while a correction has opened a fastener', () => {
      const opened = tell(read, correction('30'), affirm);
      expect(kinds(opened)).toEqual(['reading confirmed']);
      expect(refused(tell(opened, agrees))).toEqual({ code: 'nothing to witness' });
    });
    test('is not asked about while a deviation that was dropped has opened a fastener', () => {
      const leftOpen = tell(
        ring,
        ...[1, 2].flatMap(() => [reading('24'), affirm]),
        { kind: 'report', what: 'damage' },
        { kind: 'reason', text: 'thread torn' },
        affirm,
        { kind: 'leave open' },
      );
      expect(kinds(leftOpen)).toEqual(['left open', 'witness asked']);
      expect(refused(tell(leftOpen, disregard, agrees))).toEqual({ code: 'nothing to witness' });
    });
  });
});
