import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Adapter,
  correct,
  middleOf,
  nearestMark,
  plusMinus,
  settingFor,
  settingRatio,
  torqueAtFastener,
} from '../../src/tightening/index.ts';
import { angle, length, limits, subtract, torque, valueIn } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const inches = (lever: number, adapter: number, degrees: number): Adapter => ({
  lever: length(lever, 'in'),
  length: length(adapter, 'in'),
  angle: angle(degrees),
});
const inchPounds = (value: number) => torque(value, 'lbf·in');

describe('the setting with an adapter', () => {
  it.each([
    ['NAVEDTRA 14315, figure 3-45', 100, 12, 6, 0, 66.7, 0.05],
    ['TM 1-1500-204-23-9, chapter 8', 300, 10, 4, 0, 214, 0.5],
    ['a light-helicopter maintenance manual, figure 20-1', 135, 10, 1.5, 0, 117.39, 0.005],
    ['a light-helicopter maintenance manual, figure 20-2', 135, 10, 1.5, 180, 158.82, 0.005],
    ['a hand-tool leaflet', 50, 16, 2, 0, 44.44, 0.005],
    ['a torque-tool information page', 30, 12, 6, 0, 20, 1e-9],
  ])(
    'agrees with %s: T %d, L %d, E %d, %d° gives %d',
    (_source, wanted, lever, adapter, degrees, printed, tolerance) => {
      const setting = settingFor(inchPounds(wanted), inches(lever, adapter, degrees)).value;
      expect(Math.abs(setting - printed)).toBeLessThanOrEqual(tolerance);
    },
  );

  it('takes lever and adapter in different units: 30 ft·lb, 1 ft, 3 in gives 24 (light-aircraft manual, figure 2-14)', () => {
    const adapter: Adapter = { lever: length(1, 'ft'), length: length(3, 'in'), angle: angle(0) };
    expect(settingFor(torque(30, 'lbf·ft'), adapter).value).toBeCloseTo(24, 9);
  });

  it('is undone: a setting of 60 with L 12 and E 2 is 70 at the fastener (TM 9-254, figure 4-5)', () => {
    expect(torqueAtFastener(inchPounds(60), inches(12, 2, 0)).value).toBeCloseTo(70, 9);
  });

  it.each([
    [0, 85.714],
    [30, 87.387],
    [45, 89.457],
    [60, 92.308],
    [90, 100],
    [120, 109.091],
    [135, 113.36],
    [180, 120],
  ])(
    'sweeps with the angle: T 100, L 12, E 2 at %d° gives %d (computed; formula of TM 9-254, figure 4-6)',
    (degrees, expected) => {
      expect(settingFor(inchPounds(100), inches(12, 2, degrees)).value).toBeCloseTo(expected, 3);
    },
  );

  it('is exactly the torque itself at 90° (NAVEDTRA 14008), and without any adapter length', () => {
    const positive = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(
        positive,
        positive,
        positive,
        fc.double({ min: 0, max: 180, noNaN: true }),
        (wanted, lever, adapter, degrees) => {
          expect(settingFor(inchPounds(wanted), inches(lever, adapter, 90)).value).toBe(wanted);
          expect(settingFor(inchPounds(wanted), inches(lever, 0, degrees)).value).toBe(wanted);
        },
      ),
    );
  });

  it('is set to the nearest mark inside the window: 117.39 to 117, 158.82 to 159 (light-helicopter manual)', () => {
    const mark = (setting: number) =>
      nearestMark(inchPounds(setting), limits(inchPounds(setting - 5), inchPounds(setting + 5)), inchPounds(1))?.value;
    expect(mark(117.39)).toBe(117);
    expect(mark(158.82)).toBe(159);
    const half = torque(0.5, 'N·m');
    expect(nearestMark(torque(24.3, 'N·m'), limits(torque(24, 'N·m'), torque(25, 'N·m')), half)?.value).toBe(24.5);
    // The nearest mark, 117, is just under the window; 118 is in it.
    const above = limits(inchPounds(117.2), inchPounds(118.4));
    expect(nearestMark(inchPounds(117.4), above, inchPounds(1))?.value).toBe(118);
    const narrow = limits(inchPounds(117.2), inchPounds(117.6));
    expect(nearestMark(inchPounds(117.39), narrow, inchPounds(1))).toBeNull();
  });

  it.each([
    ['bad-lever', inches(0, 2, 0)],
    ['bad-lever', inches(-12, 2, 0)],
    ['bad-adapter', inches(12, -2, 0)],
    ['bad-adapter', inches(12, 2, -1)],
    ['bad-adapter', inches(12, 2, 181)],
    ['adapter-past-the-drive', inches(10, 10, 180)],
    ['adapter-past-the-drive', inches(10, 25, 120)],
  ])('is refused with %s', (code, adapter) => {
    expect(refusal(() => settingRatio(adapter))).toBe(code);
    expect(refusal(() => torqueAtFastener(inchPounds(1), adapter))).toBe(code);
  });

  it('and the way back cancel', () => {
    const adapters = fc
      .tuple(
        fc.double({ min: 1, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0, max: 180, noNaN: true }),
      )
      .map(([lever, share, degrees]) => inches(lever, lever * share, degrees));
    fc.assert(
      fc.property(adapters, fc.double({ min: 1e-3, max: 1e5, noNaN: true }), (adapter, value) => {
        const back = torqueAtFastener(settingFor(inchPounds(value), adapter), adapter).value;
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * value);
      }),
    );
  });
});

describe('the run-down torque', () => {
  // A light-aircraft maintenance manual, table 2-3, shear column: middle of the range plus run-on torque.
  it.each([
    ['8-36', 7, 9, 4.3, 12.3],
    ['10-32', 12, 15, 7.3, 20.8],
    ['1/4-28', 30, 40, 8.9, 43.9],
    ['5/16-24', 60, 85, 10.2, 82.7],
    ['3/8-24', 95, 110, 15.2, 117.7],
    ['7/16-20', 270, 300, 37, 322],
    ['1/2-20', 290, 410, 48.5, 398.5],
    ['9/16-18', 480, 600, 60, 600],
    ['5/8-18', 600, 780, 105, 795],
  ])(
    'of %s is added to the middle of %d–%d: + %d = %d (light-aircraft manual, table 2-3)',
    (_thread, min, max, runDown, sum) => {
      const corrected = correct({ ...middleOf(inchPounds(min), inchPounds(max)), runDown: inchPounds(runDown) });
      expect(corrected.atWrench.target).toEqual(inchPounds(sum));
    },
  );

  it('moves the window with it: 600 for 9/16-18 lies inside 540 to 660 and not at the maximum', () => {
    const { atWrench } = correct({ ...middleOf(inchPounds(480), inchPounds(600)), runDown: inchPounds(60) });
    expect(atWrench.window).toEqual(limits(inchPounds(540), inchPounds(660)));
  });

  it('is added first, and the sum corrected: (50 + 8), L 10, E 2 gives 48.333 (AC 43.13-1B, 7-40; computed)', () => {
    const corrected = correct({
      ...plusMinus(inchPounds(50), inchPounds(5)),
      runDown: inchPounds(8),
      adapter: inches(10, 2, 0),
    });
    expect(corrected.atWrench.target.value).toBeCloseTo(48.333, 3);
    expect(corrected.atFastener.target.value).toBe(58);
    expect(corrected.atWrench.window.min.value).toBeCloseTo((53 * 10) / 12, 9);
    expect(corrected.atWrench.window.max.value).toBeCloseTo((63 * 10) / 12, 9);
  });

  it('shifts setting and window alike, in any unit', () => {
    const units = fc.constantFrom('N·m' as const, 'lbf·in' as const, 'kgf·cm' as const);
    const size = fc.double({ min: 1, max: 1000, noNaN: true });
    fc.assert(
      fc.property(size, fc.double({ min: 0, max: 100, noNaN: true }), units, (target, drag, unit) => {
        const wanted = plusMinus(torque(target, 'N·m'), torque(target / 10, 'N·m'));
        const runDown = torque(drag, unit);
        const { atWrench } = correct({ ...wanted, runDown });
        const expected = valueIn(runDown, 'N·m');
        for (const shift of [
          subtract(atWrench.target, wanted.target),
          subtract(atWrench.window.min, wanted.window.min),
          subtract(atWrench.window.max, wanted.window.max),
        ]) {
          expect(Math.abs(shift.value - expected)).toBeLessThanOrEqual(1e-12 * (target + expected));
        }
      }),
    );
  });

  it('cannot be negative', () => {
    expect(refusal(() => correct({ ...plusMinus(inchPounds(50), inchPounds(5)), runDown: inchPounds(-1) }))).toBe(
      'bad-run-down',
    );
  });
});

describe('a used self-locking nut', () => {
  const wanted = plusMinus(inchPounds(350), inchPounds(60));
  const nut = (runDown: number, minimum: number) => () =>
    correct({ ...wanted, runDown: inchPounds(runDown), minimumRunDown: inchPounds(minimum) });

  it('of 1/2-20 that runs down with 9 is refused by both tables (AC 43.13-1B table 7-2: 10; Army minimum: 18)', () => {
    expect(refusal(nut(9, 10))).toBe('nut-worn');
    expect(refusal(nut(9, 18))).toBe('nut-worn');
    expect(nut(9, 10)).toThrow('reject it and fit another');
  });

  it('at the minimum still serves', () => {
    expect(nut(10, 10)().atFastener.target.value).toBe(360);
  });

  it('must be measured', () => {
    expect(refusal(() => correct({ ...wanted, minimumRunDown: inchPounds(10) }))).toBe('bad-run-down');
  });
});
