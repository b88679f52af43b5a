import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ANSWERS, passGate, type Consequence } from '../../src/gesture/gate.ts';
import type { GestureKind } from '../../src/gesture/gesture.ts';

const RISING: readonly Exclude<Consequence, 'own word'>[] = ['pause', 'move', 'answer', 'value'];
const kind = fc.constantFrom(...(Object.keys(ANSWERS) as GestureKind[]));
const confidence = fc.double({ min: 0, max: 1, noNaN: true });

describe('one gate for all gestures', () => {
  test('lets nothing through that wants a word, however sure', () => {
    fc.assert(
      fc.property(kind, confidence, (kind, confidence) => {
        expect(passGate({ kind, confidence }, 'own word').kind).toBe('own word');
      }),
    );
  });
  test('what passes for more passes for less, and what is surer passes where the less sure does', () => {
    fc.assert(
      fc.property(kind, confidence, confidence, fc.nat(3), fc.nat(3), (kind, one, other, a, b) => {
        const [less, more] = [RISING[Math.min(a, b)], RISING[Math.max(a, b)]];
        if (!less || !more) throw new Error('There are four.');
        if (passGate({ kind, confidence: Math.min(one, other) }, more).kind === 'passed')
          expect(passGate({ kind, confidence: Math.max(one, other) }, less).kind).toBe('passed');
      }),
    );
  });
  test('is never opened wider for one person than for anybody', () => {
    const strictness = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(kind, confidence, strictness, fc.constantFrom(...RISING), (kind, confidence, by, consequence) => {
        const own = passGate({ kind, confidence }, consequence, { [kind]: by });
        if (own.kind === 'passed') expect(passGate({ kind, confidence }, consequence).kind).toBe('passed');
      }),
    );
  });
  test('says what would have been wanted of what is not sure', () => {
    expect(passGate({ kind: 'nod', confidence: 0.85 }, 'value')).toEqual({ kind: 'unsure', wanted: 0.9 });
    expect(passGate({ kind: 'nod', confidence: 0.85 }, 'answer')).toEqual({ kind: 'passed' });
    expect(passGate({ kind: 'nod', confidence: 0.85 }, 'answer', { nod: 0.5 })).toEqual({
      kind: 'unsure',
      wanted: 0.9,
    });
  });
  test('knows no gesture that names a value or signs', () => {
    expect(new Set(Object.values(ANSWERS))).toEqual(new Set(['affirm', 'negative', 'next', 'back', 'stand by']));
  });
});
