import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readNumber } from '../../src/language/numbers/index.ts';
import { sayOrder, sayPasses } from '../../src/language/say-order.ts';
import { count, sayPlain } from '../../src/language/say.ts';
import { separateDigits } from '../../src/speaking/digits.ts';
import { answers } from '../../src/words/answers.ts';
import { passes } from '../../src/words/passes.ts';
import { points } from '../../src/words/points.ts';
import { layOut, planPasses, plusMinus } from '../../src/tightening/index.ts';
import { torque } from '../../src/units/index.ts';

test('an order is spoken number by number, so that it is checked against the manual by ear', () => {
  expect(sayOrder('the cover', 'stud', [1, 7, 4, 10])).toBe(
    'Order of the cover: stud one, stud seven, stud four, stud one zero.',
  );
});

/**
 * The numbers that a listener makes of a list. The voice pauses no longer between two numbers than within one, whatever
 * mark stands there: what tells them apart are words.
 */
const heardIn = (said: string): readonly string[] =>
  separateDigits(said.slice(said.indexOf(': ') + 1))
    .replaceAll(/[.,:;]/g, '')
    .split(/(?:^| )(?:and|studs?) /)
    .flatMap((words) => readNumber(words.split(' ').filter(Boolean)).map(({ digits }) => digits));

test('each number of a list of fasteners is heard as it is', () => {
  const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 140 }), { minLength: 1, maxLength: 12 });
  fc.assert(
    fc.property(numbers, (order) => {
      const lists = [
        sayOrder('the cover', 'stud', order),
        answers.doneNamed('two', 'stud', order.map(count)),
        sayPlain(`: ${points.name.fasteners('stud', order)}`),
        sayPlain(passes.onFasteners(':', order).replace('on', 'studs')),
      ];
      for (const list of lists) expect(heardIn(list), list).toEqual(order.map(String));
    }),
  );
});

test('a fastener and its value are no list', () => {
  expect(sayPlain('stud 3, 24 N·m')).toBe('Stud three, two four newton metres');
  expect(sayPlain('stud 3, 24.5 N·m')).toBe('Stud three, two four point five newton metres');
  expect(sayPlain('studs 3, 10, 2 are started')).toBe('Studs three and one zero and two are started');
});

test('passes are spoken with the values they come to', () => {
  const planned = planPasses({
    pattern: layOut({ shape: 'ring', count: 4 }),
    order: { kind: 'crosswise' },
    final: plusMinus(torque(20, 'N·m'), torque(2, 'N·m')),
    passes: [{ kind: 'snug' }, { kind: 'percent', percent: 50 }, { kind: 'percent', percent: 100 }],
  });
  expect(sayPasses(planned)).toEqual([
    'Pass one of three, snug.',
    'Pass two of three, five zero per cent: one zero newton metres, from nine to one one.',
    'Pass three of three, final: two zero newton metres, from one eight to two two.',
  ]);
});
