import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { conformityProbability } from '../../src/tightening/index.ts';
import { limits, torque } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const newtonMetres = (value: number) => torque(value, 'N·m');
const probability = (reading: number, u: number, min = 90, max = 110) =>
  conformityProbability(newtonMetres(reading), limits(newtonMetres(min), newtonMetres(max)), newtonMetres(u));

describe('the conformity probability', () => {
  it.each([
    [106, 0.97725],
    [109, 0.69146],
  ])('of %d in 90–110 with u = 2 is %d (computed; JCGM 106, clause 7, from memory)', (reading, expected) => {
    expect(probability(reading, 2)).toBeCloseTo(expected, 5);
  });

  it('is one half at a limit far from the other, one in the middle of a wide window, none far outside', () => {
    expect(probability(110, 0.1)).toBeCloseTo(0.5, 12);
    expect(probability(100, 0.1)).toBe(1);
    expect(probability(200, 0.1)).toBe(0);
  });

  it('is the same whatever the units of window and uncertainty', () => {
    const window = limits(torque(1000, 'lbf·in'), torque(1200, 'lbf·in'));
    const mixed = conformityProbability(torque(98, 'lbf·ft'), window, torque(24, 'lbf·in'));
    const plain = conformityProbability(torque(1176, 'lbf·in'), window, torque(24, 'lbf·in'));
    expect(mixed).toBeCloseTo(plain, 12);
  });

  it('lies between 0 and 1, mirrors about the middle, and never falls when the window widens', () => {
    const value = fc.double({ min: 50, max: 150, noNaN: true });
    const size = fc.double({ min: 0.01, max: 50, noNaN: true });
    fc.assert(
      fc.property(value, size, size, (reading, u, wider) => {
        const p = probability(reading, u);
        expect(p).toBeGreaterThanOrEqual(-1e-14);
        expect(p).toBeLessThanOrEqual(1 + 1e-14);
        expect(probability(200 - reading, u)).toBeCloseTo(p, 10);
        expect(probability(reading, u, 90 - wider, 110 + wider)).toBeGreaterThanOrEqual(p - 1e-14);
      }),
    );
  });

  it.each([0, -1])('refuses an uncertainty of %d', (u) => {
    expect(refusal(() => probability(100, u))).toBe('bad-uncertainty');
  });
});
