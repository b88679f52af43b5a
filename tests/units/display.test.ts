import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angle, display, displayWindow, limits, rounded, roundedWindow, torque } from '../../src/units/index.ts';
import { refusal } from './refusal.ts';

const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const places = fc.integer({ min: 0, max: 6 });
/** Fifteen digits and at most fifteen places are kept on display. */
const dust = (size: number) => 1e-14 * (1 + Math.abs(size));

describe('display', () => {
  it('rounds once, in the unit asked for', () => {
    expect(display(torque(100, 'N·m'), 'lbf·ft', 2)).toBe('73.76 lbf·ft');
    expect(display(angle(90), '°', 0)).toBe('90°');
  });

  it('rounds a tie away from zero, on the decimal as written', () => {
    expect(rounded(torque(12.25, 'N·m'), 'N·m', 1).value).toBe('12.3');
    expect(rounded(torque(2.5, 'N·m'), 'N·m', 0).value).toBe('3');
    expect(rounded(torque(-2.5, 'N·m'), 'N·m', 0).value).toBe('-3');
    expect(rounded(torque(1.005, 'N·m'), 'N·m', 2).value).toBe('1.01'); // 1.005 is a little less in binary
    expect(rounded(torque(2.4999, 'N·m'), 'N·m', 0).value).toBe('2');
  });

  it('keeps the places asked for', () => {
    expect(rounded(torque(20, 'N·m'), 'N·m', 2).value).toBe('20.00');
    expect(rounded(torque(-0.04, 'N·m'), 'N·m', 1).value).toBe('0.0');
  });

  it('rounds up towards more and down towards less, whatever the sign', () => {
    expect(rounded(torque(1.21, 'N·m'), 'N·m', 1, 'up').value).toBe('1.3');
    expect(rounded(torque(1.29, 'N·m'), 'N·m', 1, 'down').value).toBe('1.2');
    expect(rounded(torque(-1.29, 'N·m'), 'N·m', 1, 'up').value).toBe('-1.2');
    expect(rounded(torque(-1.21, 'N·m'), 'N·m', 1, 'down').value).toBe('-1.3');
  });

  it('is not moved a whole step by the last bit of a conversion', () => {
    expect(rounded(torque(0.1 + 0.2, 'N·m'), 'N·m', 1, 'up').value).toBe('0.3');
  });

  it('is never further than half a step away, or a whole one when directed', () => {
    fc.assert(
      fc.property(value, places, (given, digits) => {
        const step = 10 ** -digits;
        const slack = dust(given);
        const shown = (rounding: 'nearest' | 'up' | 'down') =>
          Number(rounded(torque(given, 'N·m'), 'N·m', digits, rounding).value);
        expect(Math.abs(shown('nearest') - given)).toBeLessThanOrEqual(step / 2 + slack);
        expect(shown('up')).toBeGreaterThanOrEqual(given - slack);
        expect(shown('down')).toBeLessThanOrEqual(given + slack);
        expect(shown('up') - shown('down')).toBeLessThanOrEqual(step + slack);
      }),
    );
  });

  it.each([-1, 1.5, 16, NaN])('refuses %d places', (bad) => {
    expect(refusal(() => display(torque(1, 'N·m'), 'N·m', bad))).toBe('not-a-number-of-places');
  });
});

describe('a window on display', () => {
  it('never opens: the minimum goes up, the maximum down', () => {
    const window = limits(torque(50, 'lbf·in'), torque(70, 'lbf·in'));
    expect(displayWindow(window, 'N·m', 1)).toBe('5.7 to 7.9 N·m');
  });

  it('lies inside the true window at any number of places', () => {
    fc.assert(
      fc.property(value, fc.double({ min: 0, max: 1e3, noNaN: true }), places, (low, width, digits) => {
        const window = limits(torque(low, 'N·m'), torque(low + width, 'N·m'));
        const { min, max } = roundedWindow(window, 'N·m', digits);
        const slack = dust(Math.abs(low) + width);
        expect(Number(min.value)).toBeGreaterThanOrEqual(low - slack);
        expect(Number(max.value)).toBeLessThanOrEqual(low + width + slack);
        expect(Number(min.value)).toBeLessThanOrEqual(Number(max.value));
      }),
    );
  });

  it('of one value is that value, at the places asked for', () => {
    expect(displayWindow(limits(torque(5, 'N·m'), torque(5, 'N·m')), 'N·m', 0)).toBe('5 to 5 N·m');
  });

  it('takes more places where the window is too narrow for those asked for', () => {
    expect(displayWindow(limits(torque(10.12, 'N·m'), torque(10.18, 'N·m')), 'N·m', 0)).toBe('10.12 to 10.18 N·m');
  });
});
