import 'fake-indexeddb/auto';
import { get, set } from 'idb-keyval';
import { beforeEach, describe, expect, test } from 'vitest';
import { habitOf, openHabitBook } from '../../src/storage/habits.ts';

const book = openHabitBook('habits', (raw) => (typeof raw === 'number' ? raw : null));
beforeEach(() => set('habits', undefined));

describe('habits', () => {
  test('are none at first', async () => expect(await book.load()).toEqual([]));
  test('are kept by person, in place of the last, whatever the capitals', async () => {
    await book.keep({ name: 'A. Invented', value: 1 });
    await book.keep({ name: 'B. Invented', value: 2 });
    await book.keep({ name: 'a. invented', value: 3 });
    expect(habitOf(await book.load(), 'A. Invented')).toBe(3);
    expect(habitOf(await book.load(), 'B. Invented')).toBe(2);
  });
  test('of anybody hold for whom has none of their own', async () => {
    await book.keep({ name: '', value: 7 });
    expect(habitOf(await book.load(), 'A. Invented')).toBe(7);
    await book.keep({ name: 'A. Invented', value: 1 });
    expect(habitOf(await book.load(), 'A. Invented')).toBe(1);
    expect(habitOf([], 'A. Invented')).toBeNull();
  });
  test('are deleted from the device', async () => {
    await book.keep({ name: 'A. Invented', value: 1 });
    expect(await book.forget('A. Invented')).toEqual([]);
    expect(JSON.stringify(await get('habits'))).not.toContain('Invented');
  });
  test('that cannot be read are left out, and the others stay', async () => {
    await set('habits', [{ name: 'A', value: 'x' }, 5, { name: 'B', value: 2 }]);
    expect(await book.load()).toEqual([{ name: 'B', value: 2 }]);
  });
});
