import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { verify } from '../../src/record/entry.ts';
import { checkClosingSeal, sealRecord } from '../../src/record/seal.ts';
import { openRecordBook } from '../../src/storage/record-book.ts';
import { openSoundStore } from '../../src/storage/sound-store.ts';
import { deleteSounds, removeStrays } from '../../src/ui/delete-sounds.ts';
import { makeKey } from '../record/keys.ts';
import { recordIn, recordOf, SEALING } from '../record/sealed.ts';
import { all, deletion, EVENTS, hashes, recordWith } from '../record/sounded.ts';
import { eventOf } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';

beforeEach(() => vi.stubGlobal('indexedDB', new IDBFactory()));
afterEach(() => vi.unstubAllGlobals());

const closed = eventOf({ kind: 'closed' }, EVENTS.length);

/** A device that keeps a closed session with its sounds, and whose pen is free or held elsewhere. */
async function device(options: { readonly penIsTaken?: true } = {}) {
  const [book, sounds, release] = [openRecordBook(), openSoundStore(), vi.fn()];
  await book.append(await recordOf(smallProcedure, [...EVENTS, closed]));
  for (const [hash, sound] of all) await sounds.keep('session', hash, sound);
  const pen = () => Promise.resolve(options.penIsTaken ? null : { release });
  return { book, sounds, release, pen };
}

describe('deleting the sounds of a closed session', () => {
  test('takes them away, and leaves their hashes and an entry with the name', async () => {
    const { release, ...rest } = await device();
    expect(await deleteSounds('session', 'A. Invented', rest)).toBe(3);
    const entries = await rest.book.read('session');
    expect(entries.at(-1)).toMatchObject({ person: 'A. Invented', body: { kind: 'sounds deleted', sounds: hashes } });
    expect(verify(entries)).toMatchObject({ kind: 'intact' });
    expect((await recordIn(entries)).verification.kind).toBe('intact');
    expect(await rest.sounds.hashes('session')).toEqual([]);
    expect(release).toHaveBeenCalled();
  });
  test('writes nothing where there is nothing left to delete', async () => {
    const { book, ...rest } = await device();
    await deleteSounds('session', 'A. Invented', { book, ...rest });
    const before = await book.read('session');
    expect(await deleteSounds('session', 'A. Invented', { book, ...rest })).toBe(0);
    expect(await book.read('session')).toEqual(before);
  });
  test('is refused while another window writes the session', async () => {
    const { book, sounds, ...rest } = await device({ penIsTaken: true });
    await expect(deleteSounds('session', 'A. Invented', { book, sounds, ...rest })).rejects.toThrow('Another window');
    expect((await sounds.hashes('session')).length).toBe(3);
  });
  test('keeps the sounds where the entry cannot be written', async () => {
    const { book, sounds, release, ...rest } = await device();
    const full = { ...book, append: () => Promise.reject(new Error('The disk is full.')) };
    await expect(deleteSounds('session', 'A. Invented', { book: full, sounds, ...rest })).rejects.toThrow('full');
    expect((await sounds.hashes('session')).length).toBe(3);
    expect(release).toHaveBeenCalled();
  });
});

describe('sounds that the record does not have', () => {
  const never = 'f'.repeat(64);
  /** One sound was deleted by the record and is still there; one was kept, and its entry never written. */
  async function left(options: Parameters<typeof device>[0] = {}) {
    const { book, sounds, ...rest } = await device(options);
    const entries = await recordOf(smallProcedure, [...EVENTS, closed, deletion(EVENTS.length + 1, hashes[0] ?? '')]);
    await book.append(entries.slice(-1));
    await sounds.keep('session', never, Uint8Array.of(1));
    return { book, sounds, ...rest };
  }
  const stored = async ({ sounds }: Awaited<ReturnType<typeof left>>) => [...(await sounds.hashes('session'))].sort();

  test('are taken away, and the others stay', async () => {
    const there = await left();
    await removeStrays('session', there);
    expect(await stored(there)).toEqual(hashes.slice(1).sort());
    expect(there.release).toHaveBeenCalled();
  });
  test('stay while another window writes the session: their entry may be under way', async () => {
    const there = await left({ penIsTaken: true });
    await removeStrays('session', there);
    expect(await stored(there)).toEqual([...hashes, never].sort());
  });
  test('stay where the record is broken: their entry may have been lost', async () => {
    const there = await left();
    const book = { ...there.book, read: async () => (await there.book.read('session')).toSpliced(2, 1) };
    await removeStrays('session', { ...there, book });
    expect(await stored(there)).toEqual([...hashes, never].sort());
  });
  test('go with the others when those are deleted', async () => {
    const there = await left();
    expect(await deleteSounds('session', 'A. Invented', there)).toBe(2);
    expect(await stored(there)).toEqual([]);
  });
});

describe('the seal that was made when the record was closed', () => {
  test('stays good when sounds are deleted later, and not when anything else changes', async () => {
    const record = await recordWith(closed);
    const seal = await sealRecord(record, SEALING, await makeKey());
    expect(await checkClosingSeal(seal, record)).toMatchObject({ kind: 'good' });
    const after = await recordWith(closed, deletion(EVENTS.length + 1, hashes[0] ?? ''));
    expect(await checkClosingSeal(seal, after)).toMatchObject({ kind: 'good' });
    const rewritten = await recordWith({ ...closed, person: 'Somebody else' });
    expect(await checkClosingSeal(seal, rewritten)).toMatchObject({ kind: 'bad' });
    const cut = await recordWith();
    expect(await checkClosingSeal(seal, cut)).toMatchObject({ kind: 'bad', at: EVENTS.length + 1 });
    expect(await checkClosingSeal(null, record)).toEqual({ kind: 'none' });
    expect(await checkClosingSeal('seal', record)).toMatchObject({ kind: 'bad' });
  });
});
