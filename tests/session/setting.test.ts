/** What a wrench is set to, and by what a reading is judged: running torque added first, then the adapter. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Procedure, TightenStep } from '../../src/procedure/procedure.ts';
import { settingFor } from '../../src/session/setting.ts';
import { judge, settingRatio, torqueTarget } from '../../src/tightening/index.ts';
import { compare, isWithin, limits, scale, subtract, torque, valueIn } from '../../src/units/index.ts';
import { indicating, newtonMetres, procedureOf, setting, tighten, torquePass, window } from './play.ts';

const lever = { value: '400', unit: 'mm' };
const crowfoot = (length: string, angle: string) => ({
  id: 'crowfoot',
  name: 'Crowfoot',
  length: { value: length, unit: 'mm' },
  angle: { value: angle, unit: '°' },
});
const fine = { ...indicating, range: window('1', '500'), resolution: newtonMetres('0.1'), lever };

function stepOf(procedure: Procedure): TightenStep {
  const [step] = procedure.steps;
  if (step?.kind !== 'tighten') throw new Error('The first step tightens nothing.');
  return step;
}
/** One step of tightening with an adapter, and a tool to look at. */
const bench = (more: object = {}, tool: object = fine, length = '60', angle = '45') => {
  const procedure = procedureOf([tighten('ring', { adapter: 'crowfoot', runDown: { used: false }, ...more })], {
    tools: [tool],
    adapters: [crowfoot(length, angle)],
  });
  return { procedure, step: stepOf(procedure) };
};
const inNm = (value: number) => torque(value, 'N·m');

describe('the setting at the wrench', () => {
  test('is target and running torque, times lever over effective lever', () => {
    const { procedure, step } = bench({}, fine, '100', '0');
    const found = settingFor(procedure, step, torqueTarget(inNm(90), limits(inNm(85), inNm(95))), inNm(10));
    // (90 + 10) × 400 / (400 + 100) = 80; the window (85 + 10) × 0.8 = 76 to (95 + 10) × 0.8 = 84.
    expect(found.value).toEqual(newtonMetres('80'));
    expect(found.atWrench.window).toEqual({ min: inNm(76), max: inNm(84) });
  });

  test('is called in the unit of the tool, to its marks', () => {
    const inches = { value: '1', unit: 'lbf·in' };
    const tool = { ...fine, range: { min: inches, max: { value: '900', unit: 'lbf·in' } }, resolution: inches };
    const { procedure, step } = bench({ adapter: undefined }, tool);
    const found = settingFor(procedure, step, torqueTarget(inNm(24.5), limits(inNm(23), inNm(26))), null);
    // 24.5 N·m / 0.1129848 N·m = 216.84 lbf·in (NIST SP 811: 1 lbf·in = 0.1129848 N·m)
    expect(found.value).toEqual({ value: '217', unit: 'lbf·in' });
    expect(found.atWrench.window.min.value).toBeCloseTo(23 / 0.1129848, 3);
  });

  test('is the value itself where no mark of a tool that shows lies in the window: it is pulled to between two', () => {
    const coarse = { ...fine, resolution: newtonMetres('5') };
    const { procedure, step } = bench({ adapter: undefined }, coarse);
    const narrow = torqueTarget(inNm(12.3), limits(inNm(12), inNm(12.6)));
    expect(settingFor(procedure, step, narrow, null).value).toEqual(newtonMetres('12.3'));
  });

  test('is nothing where a setting tool has no mark that is accepted: it cannot be set between two', () => {
    const judging = { rule: 'guard band', uncertainty: newtonMetres('0.7') };
    const { procedure, step } = bench({ adapter: undefined, judging }, { ...setting, resolution: newtonMetres('1') });
    // The window has the marks 24 and 25; less 0.7 on both sides it is 24.1 to 24.9 and has none.
    const wanted = torqueTarget(inNm(24.5), limits(inNm(23.4), inNm(25.6)));
    expect(settingFor(procedure, step, wanted, null).value).toBeNull();
  });

  test('is a mark that the rule of judging accepts, where one is', () => {
    const halves = { ...setting, resolution: newtonMetres('0.5') };
    const judging = { rule: 'guard band', uncertainty: newtonMetres('0.4') };
    const { procedure, step } = bench({ adapter: undefined, judging }, halves);
    // The window less 0.4 on both sides is 23.4 to 24.6: the mark nearest to 24.2 is 24.
    const wide = torqueTarget(inNm(24.2), limits(inNm(23), inNm(25)));
    expect(settingFor(procedure, step, wide, null).value).toEqual(newtonMetres('24'));
    // From 23.7 it is 24.1 to 24.6: 24 is outside, and the next mark is 24.5.
    const high = torqueTarget(inNm(24.2), limits(inNm(23.7), inNm(25)));
    expect(settingFor(procedure, step, high, null).value).toEqual(newtonMetres('24.5'));
  });
});

describe('whatever the values', () => {
  const milli = (most: number) => fc.integer({ min: 1, max: most * 1000 }).map((whole) => whole / 1000);
  const values = fc
    .record({ target: milli(150), below: milli(10), above: milli(10), running: milli(40), length: fc.nat(200) })
    .filter(({ target, below }) => target > below);
  const angle = fc.integer({ min: 0, max: 180 });

  test('a running torque shifts setting and window alike, and the width of the window stays', () => {
    fc.assert(
      fc.property(values, angle, ({ target, below, above, running, length }, at) => {
        const { procedure, step } = bench({}, fine, `${length}`, `${at}`);
        const wanted = torqueTarget(inNm(target), limits(inNm(target - below), inNm(target + above)));
        const bare = settingFor(procedure, step, wanted, null).atWrench;
        const moved = settingFor(procedure, step, wanted, inNm(running)).atWrench;
        const shift = running * settingRatio({ lever: torqueLever, ...crowfootOf(length, at) });
        for (const [a, b] of [
          [bare.target, moved.target],
          [bare.window.min, moved.window.min],
          [bare.window.max, moved.window.max],
        ] as const)
          expect(valueIn(subtract(b, a), 'N·m')).toBeCloseTo(shift, 9);
      }),
    );
  });

  test('the verdict at the wrench is the verdict at the fastener, once running torque and adapter are taken off again', () => {
    const said = fc.integer({ min: 0, max: 3000 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(values, angle, said, ({ target, below, above, running, length }, at, reading) => {
        const { procedure, step } = bench({}, fine, `${length}`, `${at}`);
        const wanted = torqueTarget(inNm(target), limits(inNm(target - below), inNm(target + above)));
        const { atWrench, adapter } = settingFor(procedure, step, wanted, inNm(running));
        if (!adapter) throw new Error('The adapter is gone.');
        const shown = inNm(reading);
        const atFastener = subtract(scale(shown, 1 / settingRatio(adapter)), inNm(running));
        // At the very limit the two may differ by the last bit of a double.
        const isAtLimit = [atWrench.window.min, atWrench.window.max].some(
          (limit) => Math.abs(valueIn(limit, 'N·m') - reading) < 1e-9,
        );
        fc.pre(!isAtLimit);
        expect(judge(shown, atWrench.window, { rule: 'simple' }).outcome).toBe(
          judge(atFastener, wanted.window, { rule: 'simple' }).outcome,
        );
      }),
    );
  });

  test('what is called lies in the window wherever a mark does', () => {
    fc.assert(
      fc.property(values, ({ target, below, above, running }) => {
        const { procedure, step } = bench();
        const wanted = torqueTarget(inNm(target), limits(inNm(target - below), inNm(target + above)));
        const { value, atWrench } = settingFor(procedure, step, wanted, inNm(running));
        const { min, max } = atWrench.window;
        const firstMark = Math.ceil(Number((min.value * 10).toPrecision(12))) / 10;
        fc.pre(compare(inNm(firstMark), max) <= 0);
        expect(value?.value).toMatch(/^\d+(\.\d)?$/);
        expect(isWithin(inNm(Number(value?.value)), { min, max })).toBe(true);
      }),
    );
  });
});

const torqueLever = { kind: 'length', value: 400, unit: 'mm' } as const;
const crowfootOf = (length: number, at: number) => ({
  length: { kind: 'length', value: length, unit: 'mm' } as const,
  angle: { kind: 'angle', value: at, unit: '°' } as const,
});

test('a pass in per cent has its setting worked out from its share of the target', () => {
  const final = { target: newtonMetres('40'), window: torquePass('40', '38', '42').window };
  const passes = [
    { kind: 'percent', percent: '50' },
    { kind: 'percent', percent: '100' },
  ];
  const { procedure, step } = bench({ final, passes }, fine, '100', '0');
  const half = torqueTarget(inNm(20), limits(inNm(19), inNm(21)));
  expect(settingFor(procedure, step, half, inNm(5)).value).toEqual(newtonMetres('20')); // (20 + 5) × 0.8
});
