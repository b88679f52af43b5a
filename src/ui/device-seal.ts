/**
 * The seal that this device makes of a record as soon as it is closed, and keeps beside it. That one is due is noted before:
 * so one that could not be made is told from one that was removed. Who can write to the storage of this page can do
 * anything a page can; against that only the sealed file, or the head, somewhere else helps.
 */
import type { Entry } from '../record/entry.ts';
import {
  checkClosingSeal,
  sealedAt,
  sealRecord,
  thumbprintOf,
  type SealFinding,
  type Statement,
} from '../record/seal.ts';
import { readSessionRecord, type SessionRecord } from '../record/session-record.ts';
import { openSealBook, type SealBook } from '../storage/seal-book.ts';
import { signingKey } from '../storage/signing-key.ts';
import { now } from './clock.ts';
import { messageOf } from './message.ts';
import { appName } from './session-file.ts';

/** What there is of the seal of a closing. */
export type ClosingSeal =
  | Exclude<SealFinding, { kind: 'none' }>
  /** The session is under way. */
  | { readonly kind: 'not closed' }
  /** It could not be made when the session was closed, nor now. */
  | { readonly kind: 'not made'; readonly why: string }
  /** It was removed, or never made by the program that closed the session. */
  | { readonly kind: 'missing' };

/** The thumbprint of this device's key; null where the browser keeps none. */
export const deviceThumbprint = (): Promise<string | null> =>
  signingKey()
    .then(({ publicKey }) => thumbprintOf(publicKey))
    .catch(() => null);

const isClosed = ({ entries }: Pick<SessionRecord, 'entries'>): boolean =>
  entries.some(({ body }) => body.kind === 'closed');

/** Notes that a session which is under way is to be sealed when it is closed. A closed one is left as it is. */
export async function expectSeal(record: SessionRecord, seals: SealBook = openSealBook()): Promise<void> {
  if (!isClosed(record)) await seals.expect(record.id);
}

/** Seals a record by the key of this device, and keeps the seal. @throws where it is broken, or the browser keeps nothing */
export async function sealOnDevice(
  id: string,
  entries: readonly Entry[],
  seals: SealBook = openSealBook(),
): Promise<void> {
  const read = await readSessionRecord(id, entries);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  await keepSeal(read.record, seals);
}

const keepSeal = async (record: SessionRecord, seals: SealBook): Promise<void> =>
  seals.keep(record.id, await sealRecord(record, { app: appName(), at: now().utc }, await signingKey()));

/**
 * What the seal beside a record says of it. One that is still due is made now, and states that it was made now.
 * @throws where the browser keeps no seals
 */
export async function findDeviceSeal(record: SessionRecord, seals: SealBook = openSealBook()): Promise<ClosingSeal> {
  if (!isClosed(record)) return { kind: 'not closed' };
  if ((await seals.read(record.id)).kind === 'due') {
    try {
      await keepSeal(record, seals);
    } catch (error) {
      return { kind: 'not made', why: messageOf(error) };
    }
  }
  const kept = await seals.read(record.id);
  const found = await checkClosingSeal(kept.kind === 'sealed' ? kept.seal : null, record);
  return found.kind === 'none' ? { kind: 'missing' } : found;
}

/** Sealing takes a moment: a seal that was made later than this after the closing was not made with it. In milliseconds. */
const WITH_THE_CLOSING = 60_000;

/** When a seal was made (RFC 3339) that was not made when the session was closed; null where it was, or does not say. */
export function madeLater(statement: Statement): string | null {
  const [made, { closedAt }] = [sealedAt(statement), statement];
  if (made === null || closedAt === null) return null;
  return Math.abs(Date.parse(made) - Date.parse(closedAt)) > WITH_THE_CLOSING ? made : null;
}
