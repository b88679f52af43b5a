import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acceptanceWindow, judge, type JudgingRule } from '../../src/tightening/index.ts';
import { limits, torque } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const newtonMetres = (value: number) => torque(value, 'N·m');
const window = (min: number, max: number) => limits(newtonMetres(min), newtonMetres(max));
const guardBand = (uncertainty: number, factor = 1): JudgingRule => ({
  rule: 'guard band',
  uncertainty: newtonMetres(uncertainty),
  factor,
});
const toolError = (errorPercent: number): JudgingRule => ({ rule: 'relative tool error', errorPercent });
const outcome = (value: number, rule: JudgingRule) => judge(newtonMetres(value), window(90, 110), rule).outcome;

describe('simple acceptance', () => {
  it.each([
    [90, 'in'],
    [110, 'in'],
    [89.9, 'under'],
    [110.1, 'over'],
  ])('finds %d in 90 to 110 N·m: %s', (value, expected) => {
    expect(outcome(value, { rule: 'simple' })).toBe(expected);
  });

  it('judges a reading in another unit than the window', () => {
    expect(judge(torque(73.8, 'lbf·ft'), window(100, 110), { rule: 'simple' }).outcome).toBe('in');
    expect(judge(torque(73.7, 'lbf·ft'), window(100, 110), { rule: 'simple' }).outcome).toBe('under');
  });
});

describe('the guard band', () => {
  it('of U = 4 turns 90–110 into 94–106 (JCGM 106, ISO 14253-1)', () => {
    expect(acceptanceWindow(window(90, 110), guardBand(4))).toEqual(window(94, 106));
  });

  it.each([
    [94, 'in'],
    [106, 'in'],
    [93.9, 'not provable'],
    [86, 'not provable'],
    [85.9, 'under'],
    [114, 'not provable'],
    [114.1, 'over'],
  ])('finds %d in 90 to 110 N·m with U = 4: %s', (value, expected) => {
    expect(outcome(value, guardBand(4))).toBe(expected);
  });

  it('says so when the tool can prove nothing in this window', () => {
    const verdict = judge(newtonMetres(100), window(90, 110), guardBand(11));
    expect(verdict).toMatchObject({ outcome: 'not provable', window: null });
  });

  it('is r × U wide; with r = 0 the rule is simple acceptance (ISO 14253-1)', () => {
    expect(acceptanceWindow(window(90, 110), guardBand(4, 0.5))).toEqual(window(92, 108));
    expect(acceptanceWindow(window(90, 110), guardBand(4, 0))).toEqual(window(90, 110));
  });

  it('refuses a band below zero', () => {
    expect(refusal(() => outcome(100, guardBand(-1)))).toBe('bad-uncertainty');
    expect(refusal(() => outcome(100, guardBand(1, -1)))).toBe('bad-uncertainty');
  });
});

describe('the relative tool error', () => {
  it.each([
    [90, 110, 93.75, 105.769],
    [50, 70, 52.083, 67.308],
  ])('of 4 %% turns %d–%d into %d–%d (computed)', (min, max, low, high) => {
    const accepted = acceptanceWindow(window(min, max), toolError(4));
    expect(accepted?.min.value).toBeCloseTo(low, 3);
    expect(accepted?.max.value).toBeCloseTo(high, 3);
  });

  // 90/0.96, 110/1.04, 90/1.04 and 110/0.96
  it.each([
    [93.8, 'in'],
    [105.7, 'in'],
    [93.7, 'not provable'],
    [105.8, 'not provable'],
    [86.6, 'not provable'],
    [86.5, 'under'],
    [114.5, 'not provable'],
    [114.6, 'over'],
  ])('finds %d in 90 to 110 N·m with 4 %%: %s (computed)', (value, expected) => {
    expect(outcome(value, toolError(4))).toBe(expected);
  });

  it.each([-1, 100, NaN])('refuses %d per cent', (error) => {
    expect(refusal(() => outcome(100, toolError(error)))).toBe('bad-uncertainty');
  });
});

describe('a window the wrong way round', () => {
  it.each([{ rule: 'simple' } as const, guardBand(4), toolError(4)])('is refused by $rule', (rule) => {
    const crossed = { min: newtonMetres(110), max: newtonMetres(90) };
    expect(refusal(() => judge(newtonMetres(100), crossed, rule))).toBe('limits-crossed');
  });
});

describe('any rule', () => {
  const value = fc.double({ min: 1, max: 200, noNaN: true });
  const rules = fc.oneof(
    fc.constant<JudgingRule>({ rule: 'simple' }),
    fc.double({ min: 0, max: 20, noNaN: true }).map((uncertainty) => guardBand(uncertainty)),
    fc.double({ min: 0, max: 20, noNaN: true }).map(toolError),
  );
  const widening = fc.double({ min: 0, max: 50, noNaN: true });

  it('never turns "in" into anything else when the window is widened', () => {
    fc.assert(
      fc.property(value, value, value, widening, widening, rules, (a, b, reading, down, up, rule) => {
        const [min, max] = [Math.min(a, b), Math.max(a, b)];
        fc.pre(judge(newtonMetres(reading), window(min, max), rule).outcome === 'in');
        expect(judge(newtonMetres(reading), window(min - down, max + up), rule).outcome).toBe('in');
      }),
    );
  });

  it('accepts nothing outside the window itself', () => {
    fc.assert(
      fc.property(value, value, value, rules, (a, b, reading, rule) => {
        const [min, max] = [Math.min(a, b), Math.max(a, b)];
        if (judge(newtonMetres(reading), window(min, max), rule).outcome !== 'in') return;
        expect(reading).toBeGreaterThanOrEqual(min * (1 - 1e-12));
        expect(reading).toBeLessThanOrEqual(max * (1 + 1e-12));
      }),
    );
  });
});
