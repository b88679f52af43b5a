import { get, set, type UseStore } from 'idb-keyval';
import { createStrictStore } from './strict-store.ts';

/** Which sessions have left this device as a file, and how much of each. */
export interface SavedMarks {
  /** Notes that a file with so many entries was given out. */
  note(session: string, entries: number): Promise<void>;
  /** How many entries were given out last; 0 where none ever were. */
  saved(session: string): Promise<number>;
}

/** Opens the marks of this origin. */
export function openSavedMarks(store: UseStore = createStrictStore('bothhands-saved', 'saved')): SavedMarks {
  return {
    note: (session, entries) => set(session, entries, store),
    async saved(session) {
      const found = await get<unknown>(session, store);
      return typeof found === 'number' ? found : 0;
    },
  };
}
