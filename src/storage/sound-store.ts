import { promisifyRequest, type UseStore } from 'idb-keyval';
import type { Sounds } from '../record/sounds.ts';
import { createStrictStore } from './strict-store.ts';

/** The sounds of sessions, beside their records: a record may outlive its sounds. */
export interface SoundStore {
  /** Writes a sound; when this settles it is on disk. */
  keep(session: string, sha256: string, sound: Uint8Array<ArrayBuffer>): Promise<void>;
  /** The sounds of a session, as found: hold them against their hashes before trusting them. */
  read(session: string): Promise<Sounds>;
  /** The names of the sounds of a session, without the sounds. */
  hashes(session: string): Promise<readonly string[]>;
  /** Deletes sounds of a session; those that are not there are no error. */
  remove(session: string, hashes: readonly string[]): Promise<void>;
}

/** Opens the sounds of this origin. */
export function openSoundStore(store: UseStore = createStrictStore('bothhands-sounds', 'sounds')): SoundStore {
  return {
    keep: (session, sha256, sound) =>
      store('readwrite', (kept) => {
        kept.put(sound, [session, sha256]);
        return promisifyRequest(kept.transaction);
      }),
    read: (session) =>
      store('readonly', async (kept) => {
        const [keys, found] = await Promise.all([
          promisifyRequest(kept.getAllKeys(allOf(session))),
          promisifyRequest(kept.getAll(allOf(session)) as IDBRequest<Uint8Array<ArrayBuffer>[]>),
        ]);
        return new Map(
          (keys as [string, string][]).flatMap(([, sha256], i) => (found[i] ? [[sha256, found[i]] as const] : [])),
        );
      }),
    hashes: (session) =>
      store('readonly', async (kept) => {
        const keys = await promisifyRequest(kept.getAllKeys(allOf(session)));
        return (keys as [string, string][]).map(([, sha256]) => sha256);
      }),
    remove: (session, hashes) =>
      store('readwrite', (kept) => {
        for (const sha256 of hashes) kept.delete([session, sha256]);
        return promisifyRequest(kept.transaction);
      }),
  };
}

/** An array key sorts after every text, so [session, []] closes the range over all hashes. */
const allOf = (session: string): IDBKeyRange => IDBKeyRange.bound([session, ''], [session, []]);
