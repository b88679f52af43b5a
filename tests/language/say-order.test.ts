import { expect, test } from 'vitest';
import { sayOrder, sayPasses } from '../../src/language/say-order.ts';
import { layOut, planPasses, plusMinus } from '../../src/tightening/index.ts';
import { torque } from '../../src/units/index.ts';

test('an order is spoken number by number, so that it is checked against the manual by ear', () => {
  expect(sayOrder('the cover', [1, 7, 4, 10])).toBe('Order of the cover: one, seven, four, one zero.');
});

test('passes are spoken with the values they come to', () => {
  const passes = planPasses({
    pattern: layOut({ shape: 'ring', count: 4 }),
    order: { kind: 'crosswise' },
    final: plusMinus(torque(20, 'N·m'), torque(2, 'N·m')),
    passes: [{ kind: 'snug' }, { kind: 'percent', percent: 50 }, { kind: 'percent', percent: 100 }],
  });
  expect(sayPasses(passes)).toEqual([
    'Pass one of three, snug.',
    'Pass two of three, five zero per cent: one zero newton metres, from nine to one one.',
    'Pass three of three, final: two zero newton metres, from one eight to two two.',
  ]);
});
