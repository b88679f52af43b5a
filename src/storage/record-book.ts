import { promisifyRequest, type UseStore } from 'idb-keyval';
import type { Entry } from '../record/entry.ts';
import { sessionStopped } from '../words/session-stopped.ts';
import { createStrictStore } from './strict-store.ts';

/** Sessions kept on this device. Entries are only ever added: there is no call that changes or removes one. */
export interface RecordBook {
  /**
   * Writes entries, all or none; when this settles they are on disk.
   * @throws EntryExists when another window wrote one of those numbers first
   */
  append(entries: readonly Entry[]): Promise<void>;
  /** All entries of a session, in order, as found: verify before trusting them. */
  read(session: string): Promise<readonly Entry[]>;
  /** The sessions kept here, newest first. */
  sessions(): Promise<readonly string[]>;
}

export class EntryExists extends Error {
  override readonly name = 'EntryExists';
}

/** Opens the book of this origin. */
export function openRecordBook(store: UseStore = createStrictStore('bothhands-record', 'entries')): RecordBook {
  return {
    append: (entries) => store('readwrite', (kept) => addAll(kept, entries)),
    read: (session) =>
      store('readonly', (entries) =>
        // An array key sorts after every number, so [session, []] closes the range over all sequence numbers.
        promisifyRequest(entries.getAll(IDBKeyRange.bound([session, 0], [session, []])) as IDBRequest<Entry[]>),
      ),
    sessions: () =>
      store('readonly', async (entries) => {
        const keys = (await promisifyRequest(entries.getAllKeys())) as [string, number][];
        return [...new Set(keys.map(([session]) => session))].sort().reverse();
      }),
  };
}

async function addAll(kept: IDBObjectStore, entries: readonly Entry[]): Promise<void> {
  const { transaction } = kept;
  const committed = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error(sessionStopped.gaveUpWriting));
  });
  try {
    // `add` and never `put`: an entry that exists is never overwritten.
    for (const entry of entries) kept.add(entry, [entry.session, entry.seq]);
  } catch (error) {
    // What cannot be stored at all throws at once, with the entries before it under way: none of them may be kept.
    transaction.abort();
    await committed.catch(() => undefined);
    throw error;
  }
  await committed.catch((error: Error) => {
    throw error.name === 'ConstraintError' ? new EntryExists(sessionStopped.writtenElsewhere) : error;
  });
}
