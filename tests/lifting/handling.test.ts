import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { capacityOf, carriers, HANDLINGS, leastHandling } from '../../src/lifting/index.ts';
import { compare, mass } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const kilograms = (most: number) => fc.double({ min: 0.1, max: most, noNaN: true }).map((value) => mass(value, 'kg'));

describe('how a weight is carried', () => {
  it('is by one, two or three persons, or by none', () =>
    expect(HANDLINGS.map(carriers)).toEqual([1, 2, 3, null, null]));

  it('takes the fewest who may carry it together, and a hoist where three may not (common practice)', () =>
    fc.assert(
      fc.property(kilograms(200), kilograms(30), (load, limit) => {
        const persons = carriers(leastHandling(load, limit));
        const mayCarry = (team: number): boolean => compare(load, capacityOf(team, limit)) <= 0;
        if (persons === null) expect([1, 2, 3].some(mayCarry)).toBe(false);
        else expect([1, 2, 3].find(mayCarry)).toBe(persons);
      }),
    ));

  it('never needs fewer for a heavier load', () =>
    fc.assert(
      fc.property(kilograms(100), kilograms(100), kilograms(30), (load, more, limit) => {
        const heavier = mass(load.value + more.value, 'kg');
        const needed = (each: typeof load): number => HANDLINGS.indexOf(leastHandling(each, limit));
        expect(needed(heavier)).toBeGreaterThanOrEqual(needed(load));
      }),
    ));

  it('is by no hand at all where nobody may lift anything', () =>
    expect(leastHandling(mass(1, 'kg'), mass(0, 'kg'))).toBe('sling or hoist'));

  it('is not worked out from a limit below zero', () =>
    expect(refusal(() => leastHandling(mass(1, 'kg'), mass(-1, 'kg')))).toBe('bad-mass'));
});
