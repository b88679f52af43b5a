import { describe, expect, it } from 'vitest';
import { type Layout, layOut } from '../../src/tightening/index.ts';
import { refusal } from '../units/refusal.ts';

const at = (layout: Layout, number: number) => {
  const found = layOut(layout).positions.find((position) => position.number === number);
  return [found?.x ?? NaN, found?.y ?? NaN].map((value) => Math.round(value * 1000) / 1000 + 0);
};

describe('a ring', () => {
  it('counts clockwise from 12 o’clock, x to the right and y down', () => {
    const ring: Layout = { shape: 'ring', count: 4 };
    expect(at(ring, 1)).toEqual([0, -1]);
    expect(at(ring, 2)).toEqual([1, 0]);
    expect(at(ring, 3)).toEqual([0, 1]);
  });

  it('may count the other way and start elsewhere', () => {
    const ring: Layout = { shape: 'ring', count: 4, startAngle: 90, direction: 'counter-clockwise' };
    expect(at(ring, 1)).toEqual([1, 0]);
    expect(at(ring, 2)).toEqual([0, -1]);
  });

  it('carries the numbers marked on the part', () => {
    expect(at({ shape: 'ring', count: 4, numbers: [7, 5, 9, 2] }, 5)).toEqual([1, 0]);
  });

  it.each([
    ['bad-count', { shape: 'ring', count: 0 }],
    ['bad-count', { shape: 'ring', count: 2.5 }],
    ['bad-count', { shape: 'ring', count: Infinity }],
    ['bad-place', { shape: 'ring', count: 4, startAngle: NaN }],
    ['duplicate-fastener', { shape: 'ring', count: 3, numbers: [1, 2, 2] }],
    ['missing-fastener', { shape: 'ring', count: 3, numbers: [1, 2] }],
    ['unknown-fastener', { shape: 'ring', count: 3, numbers: [1, 2, 3, 4] }],
    ['bad-number', { shape: 'ring', count: 3, numbers: [0, 1, 2] }],
    ['bad-number', { shape: 'ring', count: 3, numbers: [1, 2, 3.5] }],
    ['bad-count', { shape: 'rectangle', columns: 1, rows: 4, fill: 'edge' }],
    ['bad-count', { shape: 'rectangle', columns: 100, rows: 100, fill: 'grid' }],
    ['bad-count', { shape: 'free', places: [] }],
    ['bad-place', { shape: 'free', places: [{ x: 0, y: NaN }] }],
    [
      'bad-place',
      {
        shape: 'free',
        places: [
          { x: 1, y: 2 },
          { x: 1, y: 2 },
        ],
      },
    ],
  ] as const)('is refused with %s: %j', (code, layout) => {
    expect(refusal(() => layOut(layout))).toBe(code);
  });
});

describe('the other layouts', () => {
  it('draws the inner ring of a double ring inside and counts it after the outer', () => {
    const [, y] = at({ shape: 'double ring', outer: 6, inner: 4 }, 7);
    expect(y).toBeGreaterThan(-1);
    expect(y).toBeLessThan(0);
  });

  it('counts a rectangle round its edge from the top left corner, in its true proportions', () => {
    const cover: Layout = { shape: 'rectangle', columns: 5, rows: 3, fill: 'edge' };
    expect(layOut(cover).positions).toHaveLength(12);
    expect([at(cover, 1), at(cover, 5), at(cover, 7), at(cover, 11), at(cover, 12)]).toEqual([
      [-1, -0.5],
      [1, -0.5],
      [1, 0.5],
      [-1, 0.5],
      [-1, 0],
    ]);
    expect(at({ ...cover, direction: 'counter-clockwise' }, 2)).toEqual([-1, 0]);
  });

  it('counts a grid row by row', () => {
    expect(at({ shape: 'rectangle', columns: 3, rows: 2, fill: 'grid' }, 4)).toEqual([-1, 0.5]);
    expect(at({ shape: 'rectangle', columns: 1, rows: 1, fill: 'grid' }, 1)).toEqual([0, 0]);
  });

  it('fits the longer side of free places, whichever it is', () => {
    const places = [
      { x: 10, y: 100 },
      { x: 20, y: 300 },
    ];
    expect(at({ shape: 'free', places }, 1)).toEqual([-0.05, -1]);
    expect(at({ shape: 'free', places }, 2)).toEqual([0.05, 1]);
  });

  it('fits free places of any scale into the plan', () => {
    const free: Layout = {
      shape: 'free',
      places: [
        { x: 100, y: 40 },
        { x: 300, y: 40 },
        { x: 200, y: 100 },
      ],
    };
    expect([at(free, 1), at(free, 2), at(free, 3)]).toEqual([
      [-1, -0.3],
      [1, -0.3],
      [0, 0.3],
    ]);
  });
});
