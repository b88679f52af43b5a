import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  beginScan,
  inRows,
  litChoices,
  litNow,
  MOST_IN_A_ROW,
  moveOn,
  ROUNDS,
  takeLit,
  type Scan,
} from '../../src/gesture/scan.ts';

const items = (count: number) => Array.from({ length: count }, (_, value) => ({ label: `choice ${value}`, value }));
const scanOf = (count: number): Scan<number> => beginScan(inRows(items(count)));
/** Moves the light so many times. */
function after<Value>(scan: Scan<Value>, moves: number): Scan<Value> {
  let now = scan;
  for (let move = 0; move < moves; move++) {
    const next = moveOn(now);
    if (!next) throw new Error('The rounds are over.');
    now = next;
  }
  return now;
}
const entered = (scan: Scan<number>): Scan<number> => {
  const taken = takeLit(scan);
  if (taken.kind !== 'moved') throw new Error('A choice was taken.');
  return taken.scan;
};

describe('up to six choices', () => {
  test('are lit one by one, and a press takes the lit one', () => {
    expect(takeLit(scanOf(6))).toEqual({ kind: 'taken', value: 0 });
    expect(takeLit(after(scanOf(6), 4))).toEqual({ kind: 'taken', value: 4 });
  });
  test('are lit round and round, until nobody can be choosing', () => {
    expect(litNow(after(scanOf(3), 3))?.label).toBe('choice 0');
    expect(moveOn(after(scanOf(3), 3 * ROUNDS - 1))).toBeNull();
  });
});

describe('more than six', () => {
  test('are lit by rows first, then one by one', () => {
    const row = entered(after(scanOf(9), 1));
    expect(litChoices(row).map(({ label }) => label)).toEqual([
      'choice 5',
      'choice 6',
      'choice 7',
      'choice 8',
      'other rows',
    ]);
    expect(takeLit(after(row, 1))).toEqual({ kind: 'taken', value: 6 });
  });
  test('lead out of a row again, and the light goes on behind it', () => {
    const row = entered(scanOf(9));
    expect(litNow(entered(after(row, 5)))).toMatchObject({ kind: 'row', row: 1 });
  });
});

test('every choice can be taken, in as many presses as there are levels, and no row is longer than six', () =>
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40 }).chain((count) => fc.tuple(fc.constant(count), fc.nat(count - 1))),
      ([count, wanted]) => {
        let scan = scanOf(count);
        for (const { items: own } of scan.rows) expect(own.length).toBeLessThanOrEqual(MOST_IN_A_ROW);
        if (scan.rows.length > 1)
          scan = entered(
            after(
              scan,
              scan.rows.findIndex((row) => row.items.some(({ value }) => value === wanted)),
            ),
          );
        const place = litChoices(scan).findIndex((lit) => lit.kind === 'item' && lit.value === wanted);
        expect(takeLit(after(scan, place))).toEqual({ kind: 'taken', value: wanted });
      },
    ),
  ));
test('where there is nothing to choose from, it cannot begin', () => {
  expect(() => beginScan([])).toThrow(RangeError);
  expect(() => beginScan([{ label: 'none', items: [] }])).toThrow(RangeError);
});
