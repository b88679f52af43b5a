/** The seal that this device makes of a record as soon as it is closed, and keeps beside it. */
import type { Entry } from '../record/entry.ts';
import { checkClosingSeal, sealRecord, thumbprintOf, type SealFinding } from '../record/seal.ts';
import { readSessionRecord, type SessionRecord } from '../record/session-record.ts';
import { openSealBook, type SealBook } from '../storage/seal-book.ts';
import { signingKey } from '../storage/signing-key.ts';
import { now } from './clock.ts';
import { appName } from './session-file.ts';

/** The thumbprint of this device's key; null where the browser keeps none. */
export const deviceThumbprint = (): Promise<string | null> =>
  signingKey()
    .then(({ publicKey }) => thumbprintOf(publicKey))
    .catch(() => null);

/** Seals a record by the key of this device, and keeps the seal. @throws where it is broken, or the browser keeps nothing */
export async function sealOnDevice(
  id: string,
  entries: readonly Entry[],
  seals: SealBook = openSealBook(),
): Promise<void> {
  const read = await readSessionRecord(id, entries);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  await seals.keep(id, await sealRecord(read.record, { app: appName(), at: now().utc }, await signingKey()));
}

/** What the seal beside a record says of it. */
export const findDeviceSeal = async (record: SessionRecord, seals: SealBook = openSealBook()): Promise<SealFinding> =>
  checkClosingSeal(await seals.read(record.id), record);
