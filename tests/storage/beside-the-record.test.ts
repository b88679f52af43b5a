/** What this browser keeps beside the records of sessions: their sounds, their seals, and what has left the device. */
import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { set } from 'idb-keyval';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { askToPersist, isPersisted, roomLeft } from '../../src/storage/persistence.ts';
import { openSavedMarks } from '../../src/storage/saved-marks.ts';
import { createStrictStore } from '../../src/storage/strict-store.ts';
import { openSealBook } from '../../src/storage/seal-book.ts';
import { openSoundStore } from '../../src/storage/sound-store.ts';

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => vi.unstubAllGlobals());

const [A, B] = ['a'.repeat(64), 'b'.repeat(64)];

describe('sounds', () => {
  test('are kept by session and hash, and are there for the next one who opens the store', async () => {
    await openSoundStore().keep('one', A, Uint8Array.of(1, 2));
    await openSoundStore().keep('one', B, Uint8Array.of(3));
    await openSoundStore().keep('one-more', A, Uint8Array.of(4));
    const found = await openSoundStore().read('one');
    expect([...found].map(([hash, sound]) => [hash, ...sound])).toEqual([
      [A, 1, 2],
      [B, 3],
    ]);
    expect((await openSoundStore().read('none')).size).toBe(0);
  });
  test('are removed one by one; the rest stays', async () => {
    const store = openSoundStore();
    for (const hash of [A, B]) await store.keep('one', hash, Uint8Array.of(1));
    await store.remove('one', [A, 'c'.repeat(64)]);
    expect([...(await store.read('one')).keys()]).toEqual([B]);
  });
  test('that do not fit are an error, and none is half kept', async () => {
    const full = openSoundStore(() => Promise.reject(new DOMException('The disk is full.', 'QuotaExceededError')));
    await expect(full.keep('one', A, Uint8Array.of(1))).rejects.toThrow('The disk is full.');
  });
});

test('a seal is kept for each session; where there is none, none is found', async () => {
  await openSealBook().keep('one', 'seal');
  expect(await openSealBook().read('one')).toEqual({ kind: 'sealed', seal: 'seal' });
  expect(await openSealBook().read('two')).toEqual({ kind: 'none' });
});

test('a seal that is due is noted until it is made; the first one stays', async () => {
  const seals = openSealBook();
  await seals.expect('one');
  expect(await seals.read('one')).toEqual({ kind: 'due' });
  await seals.keep('one', 'seal');
  await seals.keep('one', 'another');
  await seals.expect('one');
  expect(await seals.read('one')).toEqual({ kind: 'sealed', seal: 'seal' });
});

test('what has left the device is counted in entries, and whether its sounds stayed behind is noted', async () => {
  const marks = openSavedMarks();
  expect(await marks.saved('one')).toEqual({ entries: 0, lacksSounds: false });
  await marks.note('one', { entries: 12, lacksSounds: true });
  expect(await openSavedMarks().saved('one')).toEqual({ entries: 12, lacksSounds: true });
  expect(await marks.saved('two')).toEqual({ entries: 0, lacksSounds: false });
});

test('a mark of the time when it was the number of entries alone is read as that', async () => {
  const store = createStrictStore('bothhands-saved', 'saved');
  await set('one', 12, store);
  expect(await openSavedMarks(store).saved('one')).toEqual({ entries: 12, lacksSounds: false });
});

describe('the browser is asked to keep the data', () => {
  test.each([
    [true, 'kept'],
    [false, 'may be cleared'],
  ])('and its answer %s is taken: %s', async (answer, expected) => {
    expect(await askToPersist({ persist: () => Promise.resolve(answer) })).toBe(expected);
    expect(await isPersisted({ persisted: () => Promise.resolve(answer) })).toBe(expected);
  });
  test('and one that cannot be asked, or fails, is not known', async () => {
    expect(await askToPersist({})).toBe('unknown');
    expect(await askToPersist({ persist: () => Promise.reject(new Error('Not now.')) })).toBe('unknown');
  });
});

describe('the room that is left', () => {
  const estimate = (found: StorageEstimate) => ({ estimate: () => Promise.resolve(found) });
  test('is what the browser grants less what is used', async () => {
    expect(await roomLeft(estimate({ quota: 100, usage: 40 }))).toBe(60);
    expect(await roomLeft(estimate({ quota: 100, usage: 140 }))).toBe(0);
  });
  test('is not known where the browser does not say', async () => {
    expect([await roomLeft({}), await roomLeft(estimate({}))]).toEqual([null, null]);
    expect(await roomLeft({ estimate: () => Promise.reject(new Error('Not now.')) })).toBe(null);
  });
});
