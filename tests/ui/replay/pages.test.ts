import { describe, expect, test } from 'vitest';
import { PAGE, pageAround, pageOf } from '../../../src/ui/replay/pages.ts';

const many = Array.from({ length: 2 * PAGE + 5 }, (_, i) => 3 * i);

describe('a page of a long list', () => {
  test('is full but for the last one', () => {
    expect(pageOf(many, 0)).toMatchObject({ from: 0, to: PAGE, pages: 3 });
    expect(pageOf(many, 2)).toMatchObject({ from: 2 * PAGE, to: many.length, pages: 3 });
  });
  test('that there is not is the nearest that there is', () => {
    expect(pageOf(many, 9).from).toBe(2 * PAGE);
    expect(pageOf(many, -1).from).toBe(0);
  });
  test('of nothing is empty', () => expect(pageOf([], 0)).toEqual({ items: [], from: 0, to: 0, pages: 1 }));
});

describe('the page around a number', () => {
  test('is where it stands', () => {
    expect(pageAround(many, 0)).toBe(0);
    expect(pageAround(many, 3 * PAGE)).toBe(1);
  });
  test('is where it would stand', () => {
    expect(pageAround(many, 3 * PAGE - 1)).toBe(1);
    expect(pageAround(many, 1_000_000)).toBe(2);
    expect(pageAround([], 7)).toBe(0);
  });
});
