import { describe, expect, it } from 'vitest';
import { explainPasses, layOut, planLoosening, planPasses, plusMinus } from '../../src/tightening/index.ts';
import { angle, torque } from '../../src/units/index.ts';

const newtonMetres = (value: number) => torque(value, 'N·m');
const pattern = layOut({ shape: 'ring', count: 10 });
const final = plusMinus(newtonMetres(60), newtonMetres(3));

describe('a plan in words', () => {
  it('is one sentence that says each order once', () => {
    const plan = planPasses({
      pattern,
      order: { kind: 'crosswise' },
      final,
      passes: [
        { kind: 'snug' },
        { kind: 'percent', percent: 30 },
        { kind: 'percent', percent: 100 },
        { kind: 'circular check' },
        { kind: 're-check', afterHours: 4 },
      ],
    });
    expect(explainPasses(plan)).toBe(
      '10 fasteners in 5 passes: snug by hand, 18 N·m, 60 N·m crosswise, a check at 60 N·m until no nut turns, ' +
        'then a re-check at 60 N·m after 4 hours round the pattern.',
    );
  });

  it('names the fasteners where a pass is not for all', () => {
    const plan = planPasses({
      pattern: layOut({ shape: 'ring', count: 4 }),
      order: { kind: 'explicit', numbers: [1, 3, 2, 4] },
      passes: [
        { kind: 'torque', only: [1, 3], ...final },
        { kind: 'angle', only: [2, 4], angle: angle(90), tolerance: angle(5) },
      ],
    });
    expect(explainPasses(plan)).toBe(
      '4 fasteners in 2 passes: 60 N·m on 1, 3, then 90° further on 2, 4 in the order of the manual.',
    );
  });

  it('covers loosening and the smallest plan', () => {
    const plan = planLoosening({
      pattern: layOut({ shape: 'ring', count: 1 }),
      tightening: { kind: 'circular' },
      stages: ['remove'],
    });
    expect(explainPasses(plan)).toBe('1 fastener in 1 pass: remove in reverse order.');
  });
});
