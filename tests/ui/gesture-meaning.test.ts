/** What a gesture before the camera means at each moment, and what follows from it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ANSWERS, type Answer } from '../../src/gesture/gate.ts';
import { situationOf } from '../../src/language/situation.ts';
import { gestureMeaning } from '../../src/ui/gesture-meaning.ts';
import { goOpenly, job } from '../session/anything.ts';
import {
  affirm,
  continue_,
  negative,
  next,
  procedureOf,
  reading,
  start,
  step,
  tell,
  tighten,
  torquePass,
  type Play,
} from '../session/play.ts';

const answered = ({ state }: Play, answer: Answer) => gestureMeaning(state, situationOf(state), answer);

const ring = start(procedureOf([tighten('ring')]));
const byHand = start(procedureOf([tighten('ring', { passes: [{ kind: 'snug' }, torquePass('24.5', '23', '26')] })]));
const warned = start(
  procedureOf([step('lift', 'do', { hazards: [{ signal: 'warning', consequence: 'person', text: 'Mind.' }] })]),
);
const carry = step('carry', 'hold', { orientation: 'ports up', everySeconds: 30, calls: ['Straight off', 'Down'] });
const atHold = start(procedureOf([carry, step('rest', 'do')]));

describe('a nod', () => {
  test('acknowledges a warning', () =>
    expect(answered(warned, 'affirm')).toEqual({ meaning: affirm, consequence: 'answer' }));
  test('confirms a read-back inside its window, where it is sure', () =>
    expect(answered(tell(ring, reading('24.5')), 'affirm')).toEqual({ meaning: affirm, consequence: 'value' }));
  test.each(['22.9', '26.1'])('is not enough for a read-back outside its window: %s N·m', (value) =>
    expect(answered(tell(ring, reading(value)), 'affirm')?.consequence).toBe('own word'),
  );
  test('is not enough for a read-back in doubt, though it lies inside its window', () => {
    const inDoubt = tell(ring, {
      kind: 'reading',
      reading: { fastener: null, value: '24.25' },
      doubts: ['between marks'],
    });
    expect(answered(inDoubt, 'affirm')?.consequence).toBe('own word');
  });
  test('is not enough where somebody looks at a seal, nor is a shake of the head: it would fail for good', () => {
    const inspect = step('inspect', 'check', {
      seals: [{ seal: 'ring', is: 'inspected' }],
      outcomes: [
        { id: 'reuse', text: 'Reuse it.', then: 'go on' },
        { id: 'replace', text: 'Replace it.', then: 'go on' },
      ],
    });
    const ringSeal = { id: 'ring', name: 'round seal', reuse: 'if it passes inspection', criteria: ['no cut'] };
    const looking = start(procedureOf([inspect], { seals: [ringSeal] }));
    expect(answered(looking, 'affirm')?.consequence).toBe('own word');
    expect(answered(looking, 'negative')?.consequence).toBe('own word');
  });
  test('must be surer to take a weight than to take the next call', () => {
    expect(answered(atHold, 'affirm')?.consequence).toBe('value');
    expect(answered(tell(atHold, { kind: 'held' }), 'affirm')?.consequence).toBe('answer');
  });
  test('answers nothing where nothing is asked', () => {
    expect(answered(ring, 'affirm')).toBeNull();
    expect(answered(start(procedureOf([step('drain', 'do')])), 'affirm')).toBeNull();
  });
  test('takes a weight, and in a hold wants the next call; it never sets down', () => {
    expect(answered(atHold, 'affirm')?.meaning).toEqual({ kind: 'held' });
    const holding = tell(atHold, { kind: 'held' });
    const called = tell(holding, next);
    expect(answered(holding, 'affirm')?.meaning).toEqual(next);
    expect(answered(called, 'affirm')?.meaning).toEqual(next);
    expect(tell(called, next).state.hold).not.toBeNull();
  });
});

test('a shake has a value asked for again', () =>
  expect(answered(tell(ring, reading('24.5')), 'negative')).toEqual({ meaning: negative, consequence: 'answer' }));

describe('a wave', () => {
  test('does a fastener that takes no value, and goes back', () => {
    expect(answered(byHand, 'next')).toEqual({ meaning: next, consequence: 'move' });
    expect(answered(byHand, 'back')?.meaning).toEqual({ kind: 'back' });
  });
  test('must be surer to go back where that sets readings aside', () => {
    const objects = { kind: 'witness says', agrees: false } as const;
    const looked = tell(start(procedureOf([step('fit', 'do', { witness: true })])), next, objects);
    expect(answered(byHand, 'back')?.consequence).toBe('move');
    expect(answered(looked, 'back')?.consequence).toBe('value');
  });
  test('never confirms a value by going on', () => {
    const goingOn = start(procedureOf([tighten('ring', { confirm: 'by going on' })]));
    expect(answered(tell(goingOn, reading('24.5')), 'next')).toBeNull();
  });
  test('goes on where work stands by', () => {
    expect(answered(tell(ring, { kind: 'stand by' }), 'next')?.meaning).toEqual(continue_);
  });
});

test('a hand over the lens has work stand by, and asks for little sureness', () =>
  expect(answered(ring, 'stand by')).toEqual({ meaning: { kind: 'stand by' }, consequence: 'pause' }));

test('at no moment of any job does a gesture mean more than a word would, sign, or give a value', () => {
  const MAY: ReadonlySet<string> = new Set(['affirm', 'negative', 'next', 'back', 'stand by', 'continue', 'held']);
  fc.assert(
    fc.property(job, fc.nat(60), fc.constantFrom(...Object.values(ANSWERS)), (begun, count, answer) => {
      const play = goOpenly(begun, count);
      const asked = answered(play, answer);
      if (asked === null) return;
      expect(MAY).toContain(asked.meaning.kind);
      expect(situationOf(play.state).sayings.map(({ meaning }) => meaning.kind)).toContain(asked.meaning.kind);
    }),
    { numRuns: 60 },
  );
});
