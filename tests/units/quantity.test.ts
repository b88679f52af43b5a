import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  add,
  angle,
  compare,
  convert,
  density,
  fromWritten,
  isWithin,
  type Kind,
  length,
  limits,
  mass,
  quantity,
  Refused,
  scale,
  subtract,
  torque,
  toWritten,
  type Unit,
  unitsOf,
  valueIn,
  volume,
} from '../../src/units/index.ts';
import { refusal } from './refusal.ts';

const KINDS: readonly Kind[] = ['torque', 'mass', 'length', 'volume', 'angle', 'density'];
const ulps = (expected: number, relative: number) => Math.abs(expected) * relative;

/** A size a workshop may meet, from a thousandth to a million, either sign. */
const workshopValue = fc.double({ min: 1e-3, max: 1e6, noNaN: true }).chain((size) => fc.constantFrom(size, -size));
const kindAndUnits = fc
  .constantFrom(...KINDS)
  .chain((kind) => fc.tuple(fc.constant(kind), fc.constantFrom(...unitsOf(kind)), fc.constantFrom(...unitsOf(kind))));

describe('factors', () => {
  // Basis: 1 in = 0.0254 m, 1 lb = 0.45359237 kg, gn = 9.80665 m/s² (NIST SP 811); the products are computed.
  it.each([
    ['lbf·in', 0.1129848290276167],
    ['lbf·ft', Number('1.3558179483314004')],
    ['ozf·in', Number('0.00706155181422604375')],
    ['kgf·m', 9.80665],
    ['kgf·cm', 0.0980665],
  ] as const)('1 %s is %d N·m (exact definitions)', (unit, newtonMetres) => {
    expect(valueIn(torque(1, unit), 'N·m')).toBe(newtonMetres);
  });

  it.each([
    ['N·m', 'lbf·in', Number('8.850745791327184')],
    ['N·m', 'lbf·ft', 0.7375621492772654],
    ['N·m', 'ozf·in', 141.611932661235],
    ['N·m', 'kgf·m', 0.10197162129779283],
    ['kgf·m', 'lbf·ft', 7.233013851209894],
    ['kgf·m', 'lbf·in', 86.79616621451873],
  ] as const)('1 %s in %s is %d (computed from the exact definitions)', (from, to, expected) => {
    const found = valueIn(torque(1, from), to);
    expect(Math.abs(found - expected)).toBeLessThanOrEqual(ulps(expected, 1e-14));
  });

  it('makes 12 pound-inches exactly one pound-foot (TB 43-0218, figure 4 note)', () => {
    expect(valueIn(torque(1, 'lbf·ft'), 'lbf·in')).toBe(12);
    expect(valueIn(torque(12, 'lbf·in'), 'lbf·ft')).toBe(1);
  });

  it('divides by whole numbers exactly: n pound-inches are n/12 pound-feet', () => {
    for (let n = 1; n <= 1000; n += 1) expect(valueIn(torque(n, 'lbf·in'), 'lbf·ft')).toBe(n / 12);
  });

  it('makes a US gallon 231 cubic inches and a quart its quarter (exact)', () => {
    expect(valueIn(volume(1, 'US gal'), 'L')).toBe(3.785411784);
    expect(valueIn(volume(1, 'US qt'), 'L')).toBe(0.946352946);
  });

  it('makes an imperial gallon 4.54609 L (from memory)', () => {
    expect(valueIn(volume(1, 'Imp gal'), 'L')).toBe(4.54609);
  });

  it('makes 1 lb/US gal 0.119826427 kg/L (computed)', () => {
    expect(valueIn(density(1, 'lb/US gal'), 'kg/L')).toBeCloseTo(0.119826427, 9);
  });

  it('keeps an inch 25.4 mm and a pound 0.45359237 kg, exactly', () => {
    expect(valueIn(length(1, 'in'), 'mm')).toBe(25.4);
    expect(valueIn(length(1, 'ft'), 'cm')).toBe(30.48);
    expect(valueIn(mass(1, 'lb'), 'kg')).toBe(0.45359237);
  });

  it('brings a value back from any other unit to 1e-12', () => {
    fc.assert(
      fc.property(kindAndUnits, workshopValue, ([kind, here, there], value) => {
        const back = convert(convert(quantity(kind, value, here), there), here).value;
        expect(Math.abs(back - value)).toBeLessThanOrEqual(ulps(value, 1e-12));
      }),
    );
  });

  it('goes the same way through a third unit as directly, to 1e-12', () => {
    const units = fc.constantFrom(...unitsOf('torque'));
    fc.assert(
      fc.property(units, units, units, workshopValue, (a, b, c, value) => {
        const direct = valueIn(torque(value, a), c);
        const round = valueIn(convert(torque(value, a), b), c);
        expect(Math.abs(round - direct)).toBeLessThanOrEqual(ulps(direct, 1e-12));
      }),
    );
  });
});

describe('a quantity', () => {
  it.each([NaN, Infinity, -Infinity])('refuses %d by name', (value) => {
    expect(refusal(() => torque(value, 'N·m'))).toBe('not-finite');
    expect(refusal(() => scale(torque(1, 'N·m'), value))).toBe('not-finite');
  });

  it('refuses a sum that grows out of range', () => {
    expect(refusal(() => add(mass(1e308, 'kg'), mass(1e308, 'kg')))).toBe('not-finite');
  });

  it('refuses a unit of another kind, also where the compiler did not look', () => {
    expect(refusal(() => quantity<Kind>('torque', 1, 'kg'))).toBe('unknown-unit');
    expect(refusal(() => quantity('mass', 1, 'stone' as Unit<'mass'>))).toBe('unknown-unit');
    expect(refusal(() => convert<Kind>(mass(1, 'kg'), 'N·m'))).toBe('kinds-differ');
  });

  it('refuses with an error that names the place and the mend', () => {
    expect(() => quantity('mass', 1, 'stone' as Unit<'mass'>)).toThrow(
      '"stone" is no unit of mass; use one of: kg, g, lb.',
    );
    expect(new Refused('any', 'x')).toBeInstanceOf(RangeError);
  });

  it('does not compile with the wrong kind', () => {
    // The functions are never called: the compiler is the test, and an unused expectation is itself an error.
    const never = [
      // @ts-expect-error a mass has no unit of torque
      () => mass(1, 'N·m'),
      // @ts-expect-error a torque and a mass have no sum
      () => add(torque(1, 'N·m'), mass(1, 'kg')),
      // @ts-expect-error a length is not given in litres
      () => convert(length(1, 'm'), 'L'),
      // @ts-expect-error a torque is not compared with a volume
      () => compare(torque(1, 'N·m'), volume(1, 'L')),
      // @ts-expect-error the limits of a mass do not hold a torque
      () => isWithin(torque(1, 'N·m'), limits(mass(1, 'kg'), mass(2, 'kg'))),
    ];
    expect(never).toHaveLength(5);
  });

  it('has no minus zero', () => {
    expect(Object.is(angle(-0).value, 0)).toBe(true);
  });
});

describe('sums', () => {
  it('adds and subtracts as a person does, without binary dust', () => {
    expect(add(torque(0.1, 'N·m'), torque(0.2, 'N·m')).value).toBe(0.3);
    expect(subtract(torque(100.1, 'N·m'), torque(100, 'N·m')).value).toBe(0.1);
  });

  it('takes shares as a person does', () => {
    expect(scale(torque(90, 'N·m'), 0.7).value).toBe(63); // 62.99999999999999 in binary
    expect(scale(torque(0.1, 'N·m'), 3).value).toBe(0.3);
  });

  it('takes a share and its inverse to 1e-12', () => {
    fc.assert(
      fc.property(workshopValue, workshopValue, (value, factor) => {
        const back = scale(scale(torque(value, 'N·m'), factor), 1 / factor).value;
        expect(Math.abs(back - value)).toBeLessThanOrEqual(ulps(value, 1e-12));
      }),
    );
  });

  it('gives the sum in the unit of the first', () => {
    expect(add(length(1, 'ft'), length(3, 'in'))).toEqual(length(1.25, 'ft'));
  });

  it('takes away what was added, to 1e-12 of the larger part', () => {
    fc.assert(
      fc.property(kindAndUnits, workshopValue, workshopValue, ([kind, a, b], x, y) => {
        const first = quantity(kind, x, a);
        const second = quantity(kind, y, b);
        const back = subtract(add(first, second), second).value;
        expect(Math.abs(back - x)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(x), Math.abs(valueIn(second, a))));
      }),
    );
  });
});

describe('comparison', () => {
  it('orders across units', () => {
    expect(compare(length(1, 'in'), length(2.5, 'cm'))).toBe(1);
    expect(compare(length(1, 'in'), length(2.6, 'cm'))).toBe(-1);
    expect(compare(length(1, 'in'), length(25.4, 'mm'))).toBe(0);
  });

  it('finds a value the same after any conversion', () => {
    fc.assert(
      fc.property(kindAndUnits, workshopValue, ([kind, here, there], value) => {
        const given = quantity(kind, value, here);
        expect(compare(given, convert(given, there))).toBe(0);
      }),
    );
  });

  it('counts both limits as inside', () => {
    const window = limits(torque(90, 'N·m'), torque(110, 'N·m'));
    expect(isWithin(torque(90, 'N·m'), window)).toBe(true);
    expect(isWithin(torque(110, 'N·m'), window)).toBe(true);
    expect(isWithin(torque(89.999, 'N·m'), window)).toBe(false);
    expect(isWithin(torque(110.001, 'N·m'), window)).toBe(false);
  });

  it('refuses what is no number, also where no constructor looked', () => {
    const forged = { kind: 'torque', value: NaN, unit: 'N·m' } as const;
    expect(refusal(() => compare(forged, torque(1, 'N·m')))).toBe('not-finite');
    expect(refusal(() => isWithin(forged, limits(torque(1, 'N·m'), torque(2, 'N·m'))))).toBe('not-finite');
  });

  it('refuses limits that cross', () => {
    expect(refusal(() => limits(torque(2, 'N·m'), torque(1, 'N·m')))).toBe('limits-crossed');
  });
});

describe('the written form', () => {
  it('is a plain decimal without an exponent', () => {
    expect(toWritten(torque(1e-7, 'N·m'))).toEqual({ value: '0.0000001', unit: 'N·m' });
    expect(toWritten(torque(1.5e21, 'N·m')).value).toBe('1500000000000000000000');
    expect(toWritten(torque(-24.5, 'N·m')).value).toBe('-24.5');
    expect(toWritten(torque(-0, 'N·m')).value).toBe('0');
  });

  it('is read back as the same value, for every finite number', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        const given = torque(value, 'N·m');
        expect(fromWritten('torque', toWritten(given))).toEqual(given);
      }),
    );
  });

  it('keeps the sense of trailing zeros', () => {
    expect(fromWritten('torque', { value: '20.0', unit: 'N·m' })).toEqual(torque(20, 'N·m'));
  });

  it.each(['', ' 1', '1 ', '1,5', '1e3', '+1', '.5', '5.', '01', '1.2.3', '0x10', 'NaN', 'Infinity', '١', '1_000'])(
    'refuses "%s"',
    (value) => {
      expect(refusal(() => fromWritten('torque', { value, unit: 'N·m' }))).toBe('not-a-decimal');
    },
  );

  it('refuses more digits than a number can hold', () => {
    expect(refusal(() => fromWritten('torque', { value: '9'.repeat(400), unit: 'N·m' }))).toBe('not-finite');
  });
});
