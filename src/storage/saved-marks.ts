import { get, set, type UseStore } from 'idb-keyval';
import * as v from 'valibot';
import { createStrictStore } from './strict-store.ts';

const Mark = v.object({
  /** How many entries were given out; 0 where none ever were. */
  entries: v.number(),
  /** The sounds were too large for a file and stayed behind. */
  lacksSounds: v.boolean(),
});

/** What of a session has left this device as a file. */
export type SavedMark = Readonly<v.InferOutput<typeof Mark>>;

/** Which sessions have left this device as a file, and how much of each. */
export interface SavedMarks {
  /** Notes that a file was given out. */
  note(session: string, mark: SavedMark): Promise<void>;
  /** What was given out last. */
  saved(session: string): Promise<SavedMark>;
}

/** Opens the marks of this origin. */
export function openSavedMarks(store: UseStore = createStrictStore('bothhands-saved', 'saved')): SavedMarks {
  return {
    note: (session, mark) => set(session, mark, store),
    async saved(session) {
      const found = await get<unknown>(session, store);
      const mark = v.safeParse(Mark, found);
      if (mark.success) return mark.output;
      // Marks were once the number of entries alone.
      return { entries: typeof found === 'number' ? found : 0, lacksSounds: false };
    },
  };
}
