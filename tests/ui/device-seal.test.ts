import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { openSessionFile } from '../../src/record/sealed-file.ts';
import { openSealBook } from '../../src/storage/seal-book.ts';
import { expectSeal, findDeviceSeal, madeLater, sealOnDevice } from '../../src/ui/device-seal.ts';
import { ClosingSealMissing, sealedFileOf } from '../../src/ui/saved-files.ts';
import { EVENTS, recordWith } from '../record/sounded.ts';
import { eventOf } from '../session/play.ts';

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('__APP_VERSION__', '9.9.9');
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

/** Closed on a day that is long past by the clock of whoever runs this. */
const closed = eventOf({ kind: 'closed' }, EVENTS.length);
const [underWay, record] = [await recordWith(), await recordWith(closed)];

const isNow = (utc: string | null): boolean => Math.abs(Date.parse(utc ?? '') - Date.now()) < 60_000;

/** A browser that gives no key, as where its storage is full or forbidden. */
const withoutKey = (): void =>
  void vi.spyOn(crypto.subtle, 'generateKey').mockRejectedValue(new Error('No key is kept here.'));

describe('the seal of a closing', () => {
  test('is not asked for while the session is under way', async () =>
    expect(await findDeviceSeal(underWay)).toEqual({ kind: 'not closed' }));

  test('that was removed is missing, and is not made anew', async () => {
    await expectSeal(underWay);
    await sealOnDevice(record.id, record.entries);
    expect(await findDeviceSeal(record)).toMatchObject({ kind: 'good' });
    indexedDB.deleteDatabase('bothhands-seals');
    for (let look = 0; look < 2; look++) expect(await findDeviceSeal(record)).toEqual({ kind: 'missing' });
    await expectSeal(record);
    expect(await findDeviceSeal(record)).toEqual({ kind: 'missing' });
  });

  test('that could not be made is tried again on the next look, and says when it was made', async () => {
    await expectSeal(underWay);
    withoutKey();
    await expect(sealOnDevice(record.id, record.entries)).rejects.toThrow('No key is kept here.');
    expect(await findDeviceSeal(record)).toEqual({ kind: 'not made', why: 'No key is kept here.' });
    vi.restoreAllMocks();
    const found = await findDeviceSeal(record);
    if (found.kind !== 'good') throw new Error(`It is ${found.kind}.`);
    expect(isNow(madeLater(found.statement))).toBe(true);
    expect(found.statement.closedAt).toBe(closed.at.utc);
    expect(await findDeviceSeal(record)).toEqual(found);
  });

  test('that was made with the closing is no later one', async () => {
    const at = { utc: new Date().toISOString(), monotonic: 0 };
    const justNow = await recordWith({ ...closed, at });
    await expectSeal(underWay);
    await sealOnDevice(justNow.id, justNow.entries);
    const found = await findDeviceSeal(justNow);
    expect(found.kind === 'good' && madeLater(found.statement)).toBeNull();
  });
});

describe('a closed record whose seal is missing', () => {
  test('is not sealed into a file as if nothing were wrong', async () => {
    await expect(sealedFileOf(record)).rejects.toBeInstanceOf(ClosingSealMissing);
    expect(await openSealBook().read(record.id)).toEqual({ kind: 'none' });
  });
  test('is sealed into one where a person wants that, and the seal says that it was made now', async () => {
    const { content } = await sealedFileOf(record, { acceptsMissingSeal: true });
    const file = await openSessionFile(new Uint8Array(await content.arrayBuffer()), { now: new Date().toISOString() });
    if (file.kind === 'refused' || file.seal.kind !== 'good') throw new Error('It is not sealed.');
    expect(isNow(madeLater(file.seal.statement))).toBe(true);
    expect(await findDeviceSeal(record)).toEqual({ kind: 'missing' });
  });
});
