/**
 * The lift as it is assessed before the work. Published figures of the manual of the equation (DHHS (NIOSH) 94-110, rev.
 * 9/2021) multiply multipliers that are rounded to two places; the program multiplies in full. Both are named.
 */
import { describe, expect, test } from 'vitest';
import { carryingOf } from '../../../src/session/preparation/load.ts';
import { valueIn } from '../../../src/units/index.ts';
import { demo, fireBoat, procedureOf, step } from '../play.ts';
import { findings } from './entering.ts';

const inches = (value: number) => ({ value: `${value}`, unit: 'in' });
const end = (horizontal: number, vertical: number, asymmetry = 0) => ({
  horizontal: inches(horizontal),
  vertical: inches(vertical),
  asymmetry: { value: `${asymmetry}`, unit: '°' },
});

interface Task {
  readonly pounds: number;
  readonly from: object;
  readonly to: object;
  readonly more?: object;
}

/** A procedure whose component is lifted as in an example of the manual. */
const lifted = ({ pounds, from, to, more = {} }: Task) =>
  procedureOf([step('lift', 'do')], {
    component: { name: 'Load', dryMass: { value: `${pounds}`, unit: 'lb' } },
    lift: {
      system: 'US',
      persons: 1,
      origin: from,
      destination: to,
      perMinute: '0.2',
      duration: 'short',
      gloves: false,
      ...more,
    },
  });

const assessed = (task: Task) => {
  const { lift } = carryingOf(lifted(task));
  if (!lift?.assessment.index) throw new Error('There is no lift.');
  return { limit: lift.assessment.recommendedLimit.value, index: lift.assessment.index, lift };
};

describe('the worked examples of the manual, each as the lift of a component', () => {
  test('4, package inspection: its worse end, the destination, is printed as 15.2 lb and index 1.7; 15.25 lb in full', () => {
    const { limit, index, lift } = assessed({
      pounds: 26,
      from: end(10, 22),
      to: end(20, 59),
      more: { perMinute: '3', coupling: 'fair' },
    });
    expect(Math.abs(limit - 15.25)).toBeLessThan(0.005);
    expect(index).toBeCloseTo(1.7, 1);
    expect(lift.least).toBe('sling or hoist');
    expect(lift.follows).toBe('26.0 lb is above the 22.8 lb that three may carry together by common practice.');
  });

  const EXAMPLES: readonly (readonly [string, Task, number, number, string])[] = [
    // The worse end of each: printed limit and index, from memory. Full precision computed.
    [
      '1, punch press stock: 14.5 lb and 3.0 printed',
      { pounds: 44, from: end(23, 15), to: end(23, 64), more: { coupling: 'fair' } },
      14.15,
      3.0,
      'sling or hoist',
    ],
    [
      '2, supply rolls: 18.1 lb and 1.9 printed',
      { pounds: 35, from: end(15, 27), to: end(20, 10) },
      18.06,
      1.9,
      'sling or hoist',
    ],
  ];
  test.each(EXAMPLES)('%s, from memory', (_, task, full, printedIndex, least) => {
    const { limit, index, lift } = assessed(task);
    expect(Math.abs(limit - full)).toBeLessThan(0.01);
    // The printed index is that of the rounded limit, to one place.
    expect(Math.abs(index - printedIndex)).toBeLessThan(0.15);
    expect(lift.least).toBe(least);
  });

  test('3, bags to a hopper, its origin: 18.9 lb and 2.1 printed, 18.52 lb in full, from memory', () => {
    const { limit, index } = assessed({
      pounds: 40,
      from: end(18, 15, 45),
      to: end(10, 36),
      more: { coupling: 'fair' },
    });
    expect(Math.abs(limit - 18.52)).toBeLessThan(0.006);
    expect(index).toBeCloseTo(2.1, 0);
  });
});

describe('the weight with the fluid that stays inside', () => {
  test('2 US qt of oil at 0.9975 kg/L are 1.888 kg, 4.162 lb (computed from exact definitions)', () => {
    const withOil = procedureOf([step('lift', 'do')], {
      component: {
        name: 'Cooler',
        dryMass: { value: '10', unit: 'lb' },
        fluid: { name: 'oil', density: { value: '0.9975', unit: 'kg/L' } },
        retains: { value: '2', unit: 'US qt' },
      },
    });
    const { load } = carryingOf(withOil);
    expect(valueIn(load, 'lb') - 10).toBeCloseTo(4.162, 3);
    expect(valueIn(load, 'kg') - 4.5359237).toBeCloseTo(1.888, 4);
  });
  test('the cooler of the ropeway with 1.8 L of oil at 0.89 kg/L: 31.5 + 1.602 kg, above what three may carry', () => {
    const { load, lift } = carryingOf(demo());
    expect(load.value).toBeCloseTo(33.102, 6);
    expect(lift?.least).toBe('sling or hoist');
  });
});

describe('what follows from it', () => {
  const bench = end(10, 30);
  const task = (pounds: number, more: object = {}): Task => ({
    pounds,
    from: bench,
    to: bench,
    more: { coupling: 'good', ...more },
  });
  // In the best posture the equation allows its load constant, 51 lb (94-110). Two may carry two thirds of twice as much,
  // three half of three times as much (common practice).
  test.each([
    [51, 'one person'],
    [51.1, 'two persons'],
    [68, 'two persons'],
    [68.1, 'three persons'],
    [76.5, 'three persons'],
    [76.6, 'sling or hoist'],
  ])('%d lb in the best posture: %s', (pounds, least) => expect(assessed(task(pounds)).lift.least).toBe(least));

  test('nothing said of how it is carried stops the work, with the weight and what follows', () =>
    expect(findings(lifted(task(60)), { handling: null })).toEqual([
      'stops: Nobody has said yet how the 60.0 lb are carried. 60.0 lb is above the 51.0 lb recommended for one person; two may carry 68.0 lb together by common practice.',
    ]));
  test('the number of the procedure holds: where the equation would have more, it warns and says what helps', () =>
    expect(findings(lifted(task(60)), { handling: 'one person' })).toEqual([
      'warns: The procedure has one person carry it, and that holds. Guidance, the lifting equation, warns all the same: 60.0 lb is above the 51.0 lb recommended for one person; two may carry 68.0 lb together by common practice. Have a hoist or a stand help, or a competent person plan the lift.',
    ]));
  test('fewer than the procedure says stops', () =>
    expect(findings(lifted(task(30, { persons: 2 })), { handling: 'one person' })).toEqual([
      'stops: The procedure lifts it with 2 persons, not with 1. Do as it says, or use a sling.',
    ]));
  test('more to carry than are named stops', () => {
    expect(findings(lifted(task(60)), { handling: 'two persons', second: '' })).toEqual([
      'stops: 2 persons are to carry, and 1 is named. Name the others, or use a sling.',
    ]);
    expect(findings(lifted(task(60)), { handling: 'three persons', helpers: 'Bo' })).toEqual([]);
  });
  test('by hand where the limit is zero stops', () => {
    const far = { ...task(10), from: end(26, 30) };
    expect(findings(lifted(far), { handling: 'three persons', helpers: 'Bo' })).toEqual([
      'stops: At this reach, height, turn or rate nothing may be lifted by hand: use a sling, a hoist or a stand.',
    ]);
    expect(findings(lifted(far), { handling: 'sling or hoist' })).toEqual([]);
    expect(findings(lifted(far), { handling: 'stand or support' })).toEqual([]);
  });
  test('work that the equation does not cover warns', () =>
    expect(findings(fireBoat(), { handling: 'two persons' })).toEqual([
      'warns: The procedure has 2 persons carry it, and that number holds. Guidance, the lifting equation, warns all the same: 43.2 lb is above the 32.2 lb recommended for one person; three may carry 48.3 lb together by common practice. Have a hoist or a stand help, or a competent person plan the lift.',
      'warns: The equation does not cover lifting in a constrained space; the true limit is lower.',
      'warns: The equation does not cover lifting on slippery ground; the true limit is lower.',
    ]));
  test('a heavy component whose lift is not described warns', () =>
    expect(
      findings(
        procedureOf([step('lift', 'do')], { component: { name: 'Load', dryMass: { value: '24', unit: 'kg' } } }),
      ),
    ).toEqual(['warns: The component weighs 24.0 kg, and the file does not say how it is lifted. Agree on it first.']));
});
