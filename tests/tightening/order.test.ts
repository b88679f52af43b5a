import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Layout, layOut, type Order, orderGroups, orderLabels, orderOf } from '../../src/tightening/index.ts';
import { refusal } from '../units/refusal.ts';

const ring = (count: number) => layOut({ shape: 'ring', count });
const crosswise = (count: number) => orderOf(ring(count), { kind: 'crosswise' });
const oneTo = (count: number) => Array.from({ length: count }, (_, i) => i + 1);
const sorted = (numbers: readonly number[]) => [...numbers].sort((a, b) => a - b);

describe('the crosswise order of a ring', () => {
  it.each([
    [4, '1-3-2-4'],
    [8, '1-5-3-7-2-6-4-8'],
    [12, '1-7-4-10-2-8-5-11-3-9-6-12'],
    [16, '1-9-5-13-3-11-7-15-2-10-6-14-4-12-8-16'],
    [20, '1-11-6-16-3-13-8-18-5-15-10-20-2-12-7-17-4-14-9-19'],
    [24, '1-13-7-19-4-16-10-22-2-14-8-20-5-17-11-23-3-15-9-21-6-18-12-24'],
  ])('of %i is %s (ASME PCC-1 legacy pattern, from memory)', (count, order) => {
    expect(crosswise(count).join('-')).toBe(order);
  });

  it.each([
    [8, '1,5,3,7,2,6,4,8'],
    [12, '1,5,9,3,7,11,2,6,10,4,8,12'],
    [16, '1,9,5,13,3,11,7,15,2,10,6,14,4,12,8,16'],
    [20, '1,13,5,17,9,3,15,7,19,11,2,14,6,18,10,4,16,8,20,12'],
    [24, '1,9,17,5,13,21,3,11,19,7,15,23,2,10,18,6,14,22,4,12,20,8,16,24'],
  ])('of %i labels the positions %s (sketches of a gasket installation worksheet, GRI)', (count, labels) => {
    expect(orderLabels(ring(count), crosswise(count)).join(',')).toBe(labels);
  });

  it('of 4 labels the positions 1,3,2,4 (computed)', () => {
    expect(orderLabels(ring(4), crosswise(4))).toEqual([1, 3, 2, 4]);
  });

  it('of 5 is every other one (TM 10-4320-344-24, 2.23.1.2)', () => {
    expect(crosswise(5)).toEqual([1, 3, 5, 2, 4]);
  });

  it.each([
    [6, '1-4-2-5-3-6'],
    [10, '1-6-3-8-5-10-7-2-9-4'],
  ])('of %i is %s (from memory)', (count, order) => {
    expect(crosswise(count).join('-')).toBe(order);
  });

  it('runs 12, 6, 3 and 9 o’clock first where the count allows (gasket maker’s pairs by halving the angle)', () => {
    expect(crosswise(16).slice(0, 4)).toEqual([1, 9, 5, 13]);
  });

  const counts = fc.integer({ min: 1, max: 1000 });

  it('names every fastener once', () => {
    fc.assert(
      fc.property(counts, (count) => {
        expect(sorted(crosswise(count))).toEqual(oneTo(count));
      }),
    );
  });

  it('puts opposite after opposite for every even count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), (half) => {
        const order = crosswise(2 * half);
        for (let i = 0; i < order.length; i += 2) {
          expect(Math.abs((order[i + 1] ?? NaN) - (order[i] ?? NaN))).toBe(half);
        }
      }),
    );
  });

  it('never lets neighbours follow each other, from five up', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 1000 }), (count) => {
        const order = crosswise(count);
        for (const [i, number] of order.slice(1).entries()) {
          const apart = Math.abs(number - (order[i] ?? NaN));
          expect(Math.min(apart, count - apart)).toBeGreaterThan(1);
        }
      }),
    );
  });

  it('starts at position 1, and every cross of four starts in the first quarter, running the same way', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 250 }), (quarter) => {
        for (const cross of orderGroups(ring(4 * quarter), { kind: 'crosswise' })) {
          const [a = NaN] = cross;
          expect(a).toBeLessThanOrEqual(quarter);
          expect(cross).toEqual([a, a + 2 * quarter, a + quarter, a + 3 * quarter]);
        }
        expect(crosswise(4 * quarter)[0]).toBe(1);
      }),
    );
  });

  it('speaks the numbers marked on the part, not the positions', () => {
    const pattern = layOut({ shape: 'ring', count: 4, numbers: [11, 12, 13, 14] });
    expect(orderOf(pattern, { kind: 'crosswise' })).toEqual([11, 13, 12, 14]);
  });

  it('works the inner ring of a double ring before the outer one', () => {
    const pattern = layOut({ shape: 'double ring', outer: 8, inner: 4 });
    expect(orderOf(pattern, { kind: 'crosswise' })).toEqual([9, 11, 10, 12, 1, 5, 3, 7, 2, 6, 4, 8]);
  });

  it('crosses a rectangle right through its middle', () => {
    const pattern = layOut({ shape: 'rectangle', columns: 4, rows: 4, fill: 'edge' });
    const at = new Map(pattern.positions.map((position) => [position.number, position]));
    const order = orderOf(pattern, { kind: 'crosswise' });
    for (let i = 0; i < order.length; i += 2) {
      const [one, other] = [at.get(order[i] ?? 0), at.get(order[i + 1] ?? 0)];
      expect((one?.x ?? NaN) + (other?.x ?? NaN)).toBeCloseTo(0, 12);
      expect((one?.y ?? NaN) + (other?.y ?? NaN)).toBeCloseTo(0, 12);
    }
  });

  it('has no meaning for a grid: the mend is named', () => {
    const grid = layOut({ shape: 'rectangle', columns: 3, rows: 3, fill: 'grid' });
    expect(refusal(() => orderOf(grid, { kind: 'crosswise' }))).toBe('order-does-not-fit');
    expect(() => orderOf(grid, { kind: 'crosswise' })).toThrow('use spiral, or the explicit order of the manual');
  });
});

describe('the other orders', () => {
  const anyLayout: fc.Arbitrary<Layout> = fc.oneof(
    fc.record({ shape: fc.constant('ring' as const), count: fc.integer({ min: 1, max: 60 }) }),
    fc.record({
      shape: fc.constant('double ring' as const),
      outer: fc.integer({ min: 1, max: 40 }),
      inner: fc.integer({ min: 1, max: 40 }),
    }),
    fc.record({
      shape: fc.constant('rectangle' as const),
      columns: fc.integer({ min: 2, max: 12 }),
      rows: fc.integer({ min: 2, max: 12 }),
      fill: fc.constantFrom('edge' as const, 'grid' as const),
    }),
  );

  it.each(['circular', 'spiral'] as const)('%s names every fastener once, whatever the layout', (kind) => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        const pattern = layOut(layout);
        expect(sorted(orderOf(pattern, { kind }))).toEqual(oneTo(pattern.positions.length));
      }),
    );
  });

  it('spiral never comes nearer to the middle again', () => {
    fc.assert(
      fc.property(anyLayout, (layout) => {
        const pattern = layOut(layout);
        const away = new Map(pattern.positions.map(({ number, x, y }) => [number, Math.hypot(x, y)]));
        const distances = orderOf(pattern, { kind: 'spiral' }).map((number) => away.get(number) ?? NaN);
        for (const [i, distance] of distances.slice(1).entries()) {
          expect(distance).toBeGreaterThanOrEqual((distances[i] ?? NaN) - 1e-5);
        }
      }),
    );
  });

  it('spiral begins at 12 o’clock of a shell and goes on clockwise, opposite after opposite', () => {
    expect(orderOf(ring(8), { kind: 'spiral' })).toEqual([1, 5, 2, 6, 3, 7, 4, 8]);
    const turned = layOut({ shape: 'ring', count: 8, startAngle: 315 });
    expect(orderOf(turned, { kind: 'spiral' })).toEqual([2, 6, 3, 7, 4, 8, 5, 1]);
  });

  it('spiral changes sides at every other fastener of a cover', () => {
    const cover = layOut({ shape: 'rectangle', columns: 5, rows: 3, fill: 'edge' });
    expect(orderOf(cover, { kind: 'spiral' })).toEqual([3, 9, 4, 10, 8, 2, 6, 12, 5, 11, 7, 1]);
  });

  it('treats four neighbours as one: 48 fasteners become 12 groups (bolting practice for very many)', () => {
    const groups = orderGroups(ring(48), { kind: 'grouped', size: 4 });
    expect(groups.map(([first = NaN]) => (first + 3) / 4)).toEqual(crosswise(12));
    expect(groups[1]).toEqual([25, 26, 27, 28]);
    for (const size of [4, 2.5, 0, -5, NaN]) {
      expect(refusal(() => orderOf(ring(10), { kind: 'grouped', size }))).toBe('bad-count');
    }
  });

  it('works some fasteners first and others last', () => {
    const order: Order = {
      kind: 'in turn',
      parts: [
        { numbers: oneTo(8), order: { kind: 'explicit', numbers: [8, 7, 6, 5, 4, 3, 2, 1] } },
        { numbers: [9, 10, 11, 12], order: { kind: 'explicit', numbers: [9, 11, 10, 12] } },
      ],
    };
    expect(orderOf(ring(12), order)).toEqual([8, 7, 6, 5, 4, 3, 2, 1, 9, 11, 10, 12]);
  });

  it('crosses a part that is evenly spaced in its ring', () => {
    const crosswiseParts = [
      [1, 3, 5, 7],
      [2, 4, 6, 8],
    ].map((numbers) => ({ numbers, order: { kind: 'crosswise' } as const }));
    expect(orderOf(ring(8), { kind: 'in turn', parts: crosswiseParts })).toEqual([1, 5, 3, 7, 2, 6, 4, 8]);
  });

  it.each(['crosswise', 'grouped'] as const)('does not call half a ring %s: its neighbours would follow', (kind) => {
    const order = kind === 'grouped' ? { kind, size: 2 } : { kind };
    const parts = [
      [1, 2, 3, 4],
      [5, 6, 7, 8],
    ].map((numbers) => ({ numbers, order }));
    expect(refusal(() => orderOf(ring(8), { kind: 'in turn', parts }))).toBe('order-does-not-fit');
  });

  it('works a part of a single fastener like any other', () => {
    const parts = [[1, 2, 3, 4], [5]].map((numbers, i) => ({
      numbers,
      order: i === 0 ? ({ kind: 'circular' } as const) : ({ kind: 'crosswise' } as const),
    }));
    expect(orderOf(ring(5), { kind: 'in turn', parts })).toEqual([1, 2, 3, 4, 5]);
  });

  it('reverses for loosening, and twice reversed is the order itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), (count) => {
        const reverse: Order = { kind: 'reverse', of: { kind: 'crosswise' } };
        expect(orderOf(ring(count), reverse)).toEqual(crosswise(count).reverse());
        expect(orderOf(ring(count), { kind: 'reverse', of: reverse })).toEqual(crosswise(count));
      }),
    );
  });

  it('gives labels that lead back to the order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }).chain((n) => fc.shuffledSubarray(oneTo(n), { minLength: n })),
        (numbers) => {
          const pattern = ring(numbers.length);
          const labels = orderLabels(pattern, orderOf(pattern, { kind: 'explicit', numbers }));
          expect(numbers.map((number) => labels[number - 1])).toEqual(oneTo(numbers.length));
        },
      ),
    );
  });
});

describe('the manual’s own order', () => {
  it('is taken as it stands', () => {
    expect(orderOf(ring(6), { kind: 'explicit', numbers: [1, 4, 6, 3, 5, 2] })).toEqual([1, 4, 6, 3, 5, 2]);
  });

  it.each([
    ['duplicate-fastener', [1, 2, 2, 4]],
    ['missing-fastener', [1, 2, 4]],
    ['unknown-fastener', [1, 2, 3, 5]],
    ['unknown-fastener', [1, 2, 3, NaN]],
  ])('is refused with %s for %j', (code, numbers) => {
    expect(refusal(() => orderOf(ring(4), { kind: 'explicit', numbers }))).toBe(code);
  });

  it('names the fastener that is wrong', () => {
    expect(() => orderOf(ring(4), { kind: 'explicit', numbers: [1, 2, 4] })).toThrow(
      'The order leaves out fastener 3, expected each fastener once.',
    );
  });
});
