import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fluidMass, handlingMass, teamCapacity } from '../../src/lifting/index.ts';
import { compare, density, mass, valueIn, volume } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const oil = density(0.9975, 'kg/L');

describe('the mass of a fluid', () => {
  it('of 2 US quarts of oil at 0.9975 kg/L is 1.8880 kg, 4.162 lb (computed from the exact gallon)', () => {
    const found = fluidMass({ volume: volume(2, 'US qt'), density: oil });
    expect(valueIn(found, 'kg')).toBeCloseTo(1.888, 4);
    expect(valueIn(found, 'lb')).toBeCloseTo(4.162, 3);
  });

  it.each([
    [6.7, 0.803],
    [7.5, 0.899],
    [8.35, 1.0005],
  ])('at %d lb/US gal is %d kg/L (computed; weight-and-balance conventions, from memory)', (pounds, kilograms) => {
    expect(valueIn(density(pounds, 'lb/US gal'), 'kg/L')).toBeCloseTo(kilograms, 3);
  });

  it('of a range counts the upper density: jet fuel 0.775 to 0.840 (MIL-HDBK-1022A, 2.3.2)', () => {
    const fuel = { low: density(0.775, 'kg/L'), high: density(0.84, 'kg/L') };
    expect(fluidMass({ volume: volume(10, 'L'), density: fuel })).toEqual(mass(8.4, 'kg'));
  });
});

describe('the mass in the hands', () => {
  it('is the dry component and all it still holds, in the unit of the dry mass', () => {
    const found = handlingMass(mass(20, 'kg'), [
      { volume: volume(500, 'mL'), density: density(1, 'kg/L') },
      { volume: volume(2, 'L'), density: density(0.9, 'kg/L') },
    ]);
    expect(found.fluid.value).toBeCloseTo(2.3, 12);
    expect(found.total.value).toBeCloseTo(22.3, 12);
    expect(handlingMass(mass(10, 'lb'), []).total).toEqual(mass(10, 'lb'));
  });

  it('never falls when more fluid stays in', () => {
    const litres = fc.double({ min: 0, max: 100, noNaN: true });
    fc.assert(
      fc.property(litres, litres, (some, more) => {
        const holding = (value: number) => handlingMass(mass(10, 'kg'), [{ volume: volume(value, 'L'), density: oil }]);
        expect(compare(holding(some + more).total, holding(some).total)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it.each([
    ['bad-mass', () => handlingMass(mass(0, 'kg'), [])],
    ['bad-volume', () => handlingMass(mass(1, 'kg'), [{ volume: volume(-1, 'L'), density: oil }])],
    ['bad-density', () => handlingMass(mass(1, 'kg'), [{ volume: volume(1, 'L'), density: density(0, 'kg/L') }])],
    ['bad-density', () => fluidMass({ volume: volume(1, 'L'), density: { low: oil, high: density(0.5, 'kg/L') } })],
  ])('is refused with %s', (code, call) => {
    expect(refusal(call)).toBe(code);
  });
});

describe('a team (common practice)', () => {
  it('of two lifts two thirds of the sum, of three one half', () => {
    expect(teamCapacity([mass(30, 'kg')]).value).toBe(30);
    expect(teamCapacity([mass(30, 'kg'), mass(30, 'kg')]).value).toBeCloseTo(40, 12);
    expect(teamCapacity([mass(30, 'kg'), mass(30, 'kg'), mass(20, 'kg')]).value).toBe(40);
  });

  it('is one to three people', () => {
    expect(refusal(() => teamCapacity([]))).toBe('bad-team');
    expect(refusal(() => teamCapacity(Array.from({ length: 4 }, () => mass(20, 'kg'))))).toBe('bad-team');
    expect(refusal(() => teamCapacity([mass(-1, 'kg')]))).toBe('bad-mass');
  });
});
