import { get, set, type UseStore } from 'idb-keyval';
import { createStrictStore } from './strict-store.ts';

/** The seals that were made when sessions were closed, beside their records. */
export interface SealBook {
  /** Keeps the seal of a session in place of an earlier one; when this settles it is on disk. */
  keep(session: string, seal: string): Promise<void>;
  /** The seal of a session (JWS), as found; null where there is none. */
  read(session: string): Promise<string | null>;
}

/** Opens the seals of this origin. */
export function openSealBook(store: UseStore = createStrictStore('bothhands-seals', 'seals')): SealBook {
  return {
    keep: (session, seal) => set(session, seal, store),
    async read(session) {
      const found = await get<unknown>(session, store);
      return typeof found === 'string' ? found : null;
    },
  };
}
