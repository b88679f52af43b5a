import { describe, expect, it } from 'vitest';
import { type Kind, parseUnit, unitsOf } from '../../src/units/index.ts';
import { refusal } from './refusal.ts';

describe('unit text', () => {
  it.each(['torque', 'mass', 'length', 'volume', 'angle', 'density'] as const)(
    'knows every unit of %s by its own name',
    (kind: Kind) => {
      for (const unit of unitsOf(kind)) expect(parseUnit(kind, unit)).toBe(unit);
    },
  );

  it.each([
    ['N·m', ['Nm', 'N.m', 'N m', 'N-m', 'N⋅m', 'N*m', 'newton metres', 'newton-meter']],
    ['lbf·in', ['in-lb', 'in·lb', 'in lbs', 'inch-pounds', 'lb-in', 'lbf-in', 'pound-inches', 'in.-lb.', 'IN LB']],
    ['lbf·ft', ['ft-lb', 'lb-ft', 'ft lbs', 'foot-pounds', 'lbf ft', 'pound-feet', 'ft·lbf']],
    ['ozf·in', ['oz-in', 'in-oz', 'ozf in']],
    ['kgf·m', ['kgf-m', 'kg-m', 'm·kg', 'kp·m']],
    ['kgf·cm', ['kgf-cm', 'kg-cm']],
  ] as const)('reads shop forms of %s', (unit, texts) => {
    for (const text of texts) expect(parseUnit('torque', text)).toBe(unit);
  });

  it('asks about a bare gallon or quart, and never guesses', () => {
    for (const text of ['gal', 'gallons', 'qt'])
      expect(refusal(() => parseUnit('volume', text))).toBe('ambiguous-unit');
    expect(refusal(() => parseUnit('density', 'lb/gal'))).toBe('ambiguous-unit');
    expect(parseUnit('volume', 'US gallons')).toBe('US gal');
  });

  it.each(['J', 'Nm/J', 'mN', 'kN·m', 'lb/in', 'N/m', '', 'toString', '__proto__', 'constructor'])(
    'refuses "%s" as a torque',
    (text) => {
      expect(refusal(() => parseUnit('torque', text))).toBe('unknown-unit');
    },
  );
});
