import { describe, expect, it } from 'vitest';
import {
  layOut,
  type PassSpec,
  planLoosening,
  planPasses,
  plusMinus,
  plusMinusPercent,
  type Schedule,
} from '../../src/tightening/index.ts';
import { angle, limits, torque } from '../../src/units/index.ts';
import { refusal } from '../units/refusal.ts';

const newtonMetres = (value: number) => torque(value, 'N·m');
const final = plusMinus(newtonMetres(100), newtonMetres(10));
const ring = (count: number) => layOut({ shape: 'ring', count });
const oneTo = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
const plan = (passes: readonly PassSpec[], more: Partial<Schedule> = {}) =>
  planPasses({ pattern: ring(8), order: { kind: 'crosswise' }, final, passes, ...more });
const targets = (passes: readonly PassSpec[], more: Partial<Schedule> = {}) =>
  plan(passes, more).map(({ target }) => target?.value ?? null);

describe('a schedule in per cent', () => {
  const schedule: readonly PassSpec[] = [
    { kind: 'percent', percent: 30 },
    { kind: 'percent', percent: 70 },
    { kind: 'percent', percent: 100 },
    { kind: 'circular check' },
  ];

  it('of 30, 70, 100 and a circular check on 100 is four passes (gasket sheet after PCC-1-2010)', () => {
    const passes = plan(schedule);
    expect(passes.map(({ index, of, kind, target }) => [index, of, kind, target?.value])).toEqual([
      [1, 4, 'torque', 30],
      [2, 4, 'torque', 70],
      [3, 4, 'torque', 100],
      [4, 4, 'circular check', 100],
    ]);
    expect(passes[0]?.order).toEqual([1, 5, 3, 7, 2, 6, 4, 8]);
    expect(passes[3]?.order).toEqual(oneTo(8));
  });

  it('scales the window with the target', () => {
    expect(plan(schedule)[0]?.window).toEqual(limits(newtonMetres(27), newtonMetres(33)));
    expect(plan(schedule)[2]?.window).toEqual(final.window);
  });

  it('gives targets that can be said: 70 % of 90 is 63, ± 7 % is 58.59 to 67.41', () => {
    const [pass] = plan([{ kind: 'percent', percent: 70 }], { final: plusMinusPercent(newtonMetres(90), 7) });
    expect(pass?.target).toEqual(newtonMetres(63));
    expect(pass?.window).toEqual(limits(newtonMetres(58.59), newtonMetres(67.41)));
  });

  it('keeps the hours and the angle in the name where the manual has a name of its own', () => {
    const names = plan([
      ...schedule,
      { kind: 'angle', name: 'turn', angle: angle(60, '°'), tolerance: angle(5, '°') },
      { kind: 're-check', name: 'relaxation', afterHours: 4 },
    ]).map(({ name }) => name);
    expect(names.slice(-2)).toEqual(['turn, 60°', 'relaxation, re-check after 4 h']);
  });

  it('may begin snug by hand, and ends in a re-check after a time', () => {
    const passes = plan([{ kind: 'snug' }, ...schedule, { kind: 're-check', afterHours: 4 }]);
    expect(passes[0]).toMatchObject({ kind: 'snug', name: 'snug', target: null, window: null });
    expect(passes.at(-1)).toMatchObject({ kind: 're-check', afterHours: 4, target: final.target, order: oneTo(8) });
  });
});

describe('a schedule in equal steps', () => {
  it('from 20 to 90 ft·lb by 10 is 8 rounds of 5: 40 readings (TM 10-4320-344-24)', () => {
    const passes = planPasses({
      pattern: ring(5),
      order: { kind: 'crosswise' },
      final: plusMinusPercent(torque(90, 'lbf·ft'), 5),
      passes: [{ kind: 'increments', from: torque(20, 'lbf·ft'), step: torque(10, 'lbf·ft') }],
    });
    expect(passes.map(({ target }) => target?.value)).toEqual([20, 30, 40, 50, 60, 70, 80, 90]);
    expect(passes.flatMap(({ order }) => order)).toHaveLength(40);
    expect(passes[0]?.order).toEqual([1, 3, 5, 2, 4]);
    expect(passes[2]?.name).toBe('round 3 of 8');
  });

  it('must land on the final target', () => {
    const from = newtonMetres(20);
    expect(refusal(() => plan([{ kind: 'increments', from, step: newtonMetres(30) }]))).toBe('bad-step');
    expect(refusal(() => plan([{ kind: 'increments', from, step: newtonMetres(0) }]))).toBe('bad-step');
    expect(refusal(() => plan([{ kind: 'increments', from, step: newtonMetres(1e-9) }]))).toBe('bad-step');
    expect(refusal(() => plan([{ kind: 'increments', from: newtonMetres(200), step: from }]))).toBe('bad-step');
  });

  it('lands in decimals, not in binary', () => {
    const passes = plan([{ kind: 'increments', from: newtonMetres(0.1), step: newtonMetres(0.1) }], {
      final: plusMinusPercent(newtonMetres(1), 5),
    });
    expect(passes.map(({ target }) => target?.value)).toEqual([0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
  });
});

describe('groups with values of their own', () => {
  const main = oneTo(10);
  const side = oneTo(20).slice(10);
  const to = (only: readonly number[], value: number): PassSpec => ({
    kind: 'torque',
    only,
    ...plusMinusPercent(newtonMetres(value), 5),
  });
  const turnOn = (only: readonly number[]): PassSpec => ({
    kind: 'angle',
    only,
    angle: angle(90),
    tolerance: angle(5),
  });

  it('come by turns: the V8 crankcase (passenger-car workshop data)', () => {
    const passes = planPasses({
      pattern: layOut({ shape: 'rectangle', columns: 10, rows: 2, fill: 'grid' }),
      order: { kind: 'circular' },
      passes: [to(main, 30), to(side, 20), to(main, 50), to(side, 30), turnOn(main), turnOn(side)],
    });
    expect(passes.map(({ target, order }) => [target?.value ?? null, order[0], order.length])).toEqual([
      [30, 1, 10],
      [20, 11, 10],
      [50, 1, 10],
      [30, 11, 10],
      [null, 1, 10],
      [null, 11, 10],
    ]);
    expect(passes[4]).toMatchObject({ kind: 'angle', angle: angle(90), angleWindow: limits(angle(85), angle(95)) });
  });

  it('keep the manual’s list where only some of it is worked', () => {
    const order = { kind: 'explicit', numbers: [8, 1, 7, 2, 6, 3, 5, 4] } as const;
    const passes = plan([to([1, 2, 3, 4], 30), to([5, 6, 7, 8], 30)], { order });
    expect(passes.map((pass) => pass.order)).toEqual([
      [1, 2, 3, 4],
      [8, 7, 6, 5],
    ]);
  });

  it('leave nobody out', () => {
    expect(refusal(() => plan([to([1, 5], 30)]))).toBe('missing-fastener');
    expect(refusal(() => plan([to([1, 99], 30)]))).toBe('unknown-fastener');
  });
});

describe('torque, then angle', () => {
  it('150 ± 20 N·m, then 120° ± 5° (truck engine specifications)', () => {
    const passes = plan([
      { kind: 'torque', ...plusMinus(newtonMetres(150), newtonMetres(20)) },
      { kind: 'angle', angle: angle(120), tolerance: angle(5) },
    ]);
    expect(passes[0]?.window).toEqual(limits(newtonMetres(130), newtonMetres(170)));
    expect(passes[1]).toMatchObject({ angleWindow: limits(angle(115), angle(125)), target: null });
  });
});

describe('a schedule that cannot be right', () => {
  it('goes down', () => {
    expect(
      refusal(() =>
        targets([
          { kind: 'percent', percent: 70 },
          { kind: 'percent', percent: 30 },
        ]),
      ),
    ).toBe('pass-goes-down');
    expect(() =>
      targets([
        { kind: 'percent', percent: 70 },
        { kind: 'percent', percent: 30 },
      ]),
    ).toThrow('Pass 2 goes down: fastener 1 would get 30 N·m after 70 N·m, expected no less than before.');
  });

  it.each([
    ['no-passes', []],
    ['bad-percent', [{ kind: 'percent', percent: 0 }]],
    ['bad-percent', [{ kind: 'percent', percent: 101 }]],
    ['bad-percent', [{ kind: 'percent', percent: NaN }]],
    ['bad-time', [{ kind: 're-check', afterHours: 0 }]],
    ['bad-time', [{ kind: 're-check', afterHours: -1 }]],
    ['bad-time', [{ kind: 're-check', afterHours: Infinity }]],
    ['bad-angle', [{ kind: 'angle', angle: angle(0), tolerance: angle(0) }]],
    ['bad-angle', [{ kind: 'angle', angle: angle(90), tolerance: angle(90) }]],
    ['bad-target', [{ kind: 'torque', target: newtonMetres(5), window: final.window }]],
  ] as const)('is refused with %s: %j', (code, passes) => {
    expect(refusal(() => plan(passes))).toBe(code);
  });

  it('speaks of a final target that is not there', () => {
    const schedule = { pattern: ring(4), order: { kind: 'crosswise' }, passes: [{ kind: 'circular check' }] } as const;
    expect(refusal(() => planPasses(schedule))).toBe('no-final-target');
  });
});

describe('loosening', () => {
  it('goes in reverse of the tightening order and in stages (common practice)', () => {
    const passes = planLoosening({ pattern: ring(8), tightening: { kind: 'crosswise' } });
    expect(passes.map(({ index, of, kind, target }) => [index, of, kind, target])).toEqual([
      [1, 2, 'loosen', null],
      [2, 2, 'loosen', null],
    ]);
    expect(passes[0]?.order).toEqual([8, 4, 6, 2, 7, 3, 5, 1]);
  });

  it('follows the manual’s own removal order where it gives one', () => {
    const order = { kind: 'explicit', numbers: [4, 2, 3, 1] } as const;
    const [pass] = planLoosening({ pattern: ring(4), tightening: { kind: 'crosswise' }, order, stages: ['remove'] });
    expect(pass).toMatchObject({ name: 'remove', order: [4, 2, 3, 1], of: 1 });
    expect(refusal(() => planLoosening({ pattern: ring(4), tightening: order, stages: [] }))).toBe('no-passes');
  });
});
