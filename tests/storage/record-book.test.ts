import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { seal, type Entry } from '../../src/record/entry.ts';
import { EntryExists, openRecordBook, type RecordBook } from '../../src/storage/record-book.ts';
import { createStrictStore } from '../../src/storage/strict-store.ts';

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

const entryOf = (session: string, seq: number, person = 'Mechanic'): Promise<Entry> =>
  seal(
    session,
    {
      seq,
      at: { utc: '2026-03-01T00:00:00.000Z', monotonic: seq },
      source: 'voice',
      person,
      heard: null,
      body: { kind: 'repeat asked' },
    },
    null,
  );
const entriesOf = (session: string, seqs: readonly number[], person?: string): Promise<readonly Entry[]> =>
  Promise.all(seqs.map((seq) => entryOf(session, seq, person)));
const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, seq) => seq);
const numbers = async (book: RecordBook, session: string): Promise<readonly number[]> =>
  (await book.read(session)).map(({ seq }) => seq);

describe('a record book', () => {
  test('gives back what was written, as it was written', async () => {
    const book = openRecordBook();
    const entries = await entriesOf('a', [0, 1, 2]);
    await book.append(entries.slice(0, 1));
    await book.append(entries.slice(1));
    expect(await book.read('a')).toEqual(entries);
  });
  test('is still there for the next one who opens it', async () => {
    await openRecordBook().append(await entriesOf('a', [0]));
    expect(await numbers(openRecordBook(), 'a')).toEqual([0]);
  });
  test('keeps sessions apart, also those whose names begin alike', async () => {
    const book = openRecordBook();
    for (const session of ['a', 'a-1', 'aa', '']) await book.append(await entriesOf(session, [0, 1]));
    for (const session of ['a', 'a-1', 'aa', '']) {
      expect((await book.read(session)).map((entry) => entry.session)).toEqual([session, session]);
    }
    expect(await book.read('b')).toEqual([]);
  });
  test.each([10, 100, 1000])('reads in the order of the numbers, beyond %i as well', async (count) => {
    const book = openRecordBook();
    const seqs = upTo(count + 2);
    await book.append(await entriesOf('a', [...seqs].reverse()));
    expect(await numbers(book, 'a')).toEqual(seqs);
  });
  test('names its sessions, newest first', async () => {
    const book = openRecordBook();
    expect(await book.sessions()).toEqual([]);
    for (const session of ['2026-03-01T08', '2026-11-01T08', '2025-12-31T23'])
      await book.append(await entriesOf(session, [0, 1]));
    expect(await book.sessions()).toEqual(['2026-11-01T08', '2026-03-01T08', '2025-12-31T23']);
  });
});

describe('writing', () => {
  test('never overwrites an entry: the first writer wins and the other is told', async () => {
    const [one, other] = [openRecordBook(), openRecordBook()];
    const first = await entriesOf('a', [0, 1]);
    await one.append(first);
    await expect(other.append(await entriesOf('a', [1], 'Another'))).rejects.toThrow(EntryExists);
    expect(await one.read('a')).toEqual(first);
  });
  test('is all or none where one entry exists', async () => {
    const book = openRecordBook();
    await book.append(await entriesOf('a', [1]));
    await expect(book.append(await entriesOf('a', [0, 1, 2]))).rejects.toThrow(EntryExists);
    await expect(book.append(await entriesOf('a', [2, 3, 1]))).rejects.toThrow(EntryExists);
    expect(await numbers(book, 'a')).toEqual([1]);
  });
  test('is all or none where one entry cannot be stored at all', async () => {
    const book = openRecordBook();
    const entries = await entriesOf('a', [0, 1]);
    const unstorable = { ...(await entryOf('a', 2)), person: (() => '') as unknown as string };
    await expect(book.append([...entries, unstorable])).rejects.toThrow(/clone/i);
    const numberless = { ...(await entryOf('a', 2)), seq: Number.NaN };
    await expect(book.append([...entries, numberless])).rejects.toMatchObject({ name: 'DataError' });
    expect(await numbers(book, 'a')).toEqual([]);
  });
  test('goes on after a failure', async () => {
    const book = openRecordBook();
    await book.append(await entriesOf('a', [0]));
    await expect(book.append(await entriesOf('a', [0]))).rejects.toThrow(EntryExists);
    await book.append(await entriesOf('a', [1]));
    expect(await numbers(book, 'a')).toEqual([0, 1]);
  });
  test('tells of a browser that gave up, such as for want of space', async () => {
    const book = openRecordBook(async (mode, callback) => {
      const store = createStrictStore('full', 'entries');
      return store(mode, (kept) => {
        const result = callback(kept);
        // What a browser does when the disk is full: the requests succeed, the commit does not.
        kept.transaction.abort();
        return result;
      });
    });
    await expect(book.append(await entriesOf('a', [0]))).rejects.toThrow('gave up');
    expect(await numbers(openRecordBook(createStrictStore('full', 'entries')), 'a')).toEqual([]);
  });
  test('asks for strict durability, so that it is on disk when it settles', async () => {
    const asked = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await openRecordBook().append(await entriesOf('a', [0]));
    const writing = asked.mock.calls.filter(([, mode]) => mode === 'readwrite');
    expect(writing).toEqual([['entries', 'readwrite', { durability: 'strict' }]]);
  });
});

describe('the store', () => {
  test('opens its database once', async () => {
    const opened = vi.spyOn(indexedDB, 'open');
    const book = openRecordBook();
    await Promise.all([book.append(await entriesOf('a', [0])), book.append(await entriesOf('a', [1]))]);
    await book.read('a');
    expect(opened).toHaveBeenCalledTimes(1);
  });
  test('opens it again after it could not', async () => {
    const book = openRecordBook();
    const open = indexedDB.open.bind(indexedDB);
    vi.spyOn(indexedDB, 'open').mockImplementationOnce((name) => {
      const request = open(name);
      request.addEventListener('upgradeneeded', () => request.transaction?.abort());
      return request;
    });
    await expect(book.sessions()).rejects.toMatchObject({ name: 'AbortError' });
    await book.append(await entriesOf('a', [0]));
    expect(await numbers(book, 'a')).toEqual([0]);
  });
  test('gives way to a newer version of the database', async () => {
    await openRecordBook(createStrictStore('versioned', 'entries')).append(await entriesOf('a', [0]));
    const upgrade = indexedDB.open('versioned', 2);
    await new Promise((resolve, reject) => {
      upgrade.onsuccess = resolve;
      upgrade.onblocked = () => reject(new Error('An open window blocks the upgrade.'));
    });
    expect(upgrade.result.version).toBe(2);
  });
});
