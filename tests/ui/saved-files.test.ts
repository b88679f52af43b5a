import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sealRecord } from '../../src/record/seal.ts';
import { openSessionFile } from '../../src/record/sealed-file.ts';
import { openSealBook } from '../../src/storage/seal-book.ts';
import { openSoundStore } from '../../src/storage/sound-store.ts';
import { sealedFileOf } from '../../src/ui/saved-files.ts';
import { makeKey } from '../record/keys.ts';
import { SEALING } from '../record/sealed.ts';
import { all, deletion, EVENTS, hashes, recordWith } from '../record/sounded.ts';
import { eventOf } from '../session/play.ts';

beforeEach(() => {
  vi.stubGlobal('indexedDB', new IDBFactory());
  vi.stubGlobal('__APP_VERSION__', '9.9.9');
});
afterEach(() => vi.unstubAllGlobals());

const closed = eventOf({ kind: 'closed' }, EVENTS.length);
const sealedThen = async (): Promise<void> =>
  openSealBook().keep('session', await sealRecord(await recordWith(closed), SEALING, await makeKey()));

test('a closed record is sealed into a file, also with its sounds deleted since', async () => {
  await sealedThen();
  const record = await recordWith(closed, deletion(EVENTS.length + 1, hashes[0] ?? ''));
  expect(await sealedFileOf(record)).toMatchObject({ name: 'session.bhsession' });
});

test('a record that was written anew after its closing gets no new seal', async () => {
  await sealedThen();
  const rewritten = await recordWith({ ...closed, person: 'Somebody else' });
  await expect(sealedFileOf(rewritten)).rejects.toThrow(
    'It is not as it was sealed when it was closed: the entries are not those that were sealed',
  );
});

test('a record whose sounds make too large a file is saved without them, and that is said', async () => {
  for (const [hash, sound] of all) await openSoundStore().keep('session', hash, sound);
  await sealedThen();
  const record = await recordWith(closed);
  const soundsIn = async ({ content }: { readonly content: Blob }) => {
    const file = await openSessionFile(new Uint8Array(await content.arrayBuffer()), {
      now: '2026-03-02T00:00:00.000Z',
    });
    return file.kind === 'opened' ? [file.verdict.kind, file.sounds.sounds.size, file.sounds.missing.length] : [];
  };
  const whole = await sealedFileOf(record);
  expect([whole.lacksSounds, ...(await soundsIn(whole))]).toEqual([false, 'intact', 3, 0]);
  const small = await sealedFileOf(record, { most: whole.content.size - 1 });
  expect([small.lacksSounds, ...(await soundsIn(small))]).toEqual([true, 'intact', 0, 3]);
});
