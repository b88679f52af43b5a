import { del, get, set, type UseStore } from 'idb-keyval';
import { createStrictStore } from './strict-store.ts';

/** The procedure that is being written on this device, as the text of its file, sound or not. There is one. */
export interface DraftBook {
  /** Keeps a text in place of the last one; when this settles it is on disk. @throws where the browser will not keep it */
  keep(text: string): Promise<void>;
  /** The text kept last; null where there is none. */
  read(): Promise<string | null>;
  forget(): Promise<void>;
}

const KEY = 'procedure';

/** Opens the drafts of this origin. */
export function openDraftBook(store: UseStore = createStrictStore('bothhands-drafts', 'drafts')): DraftBook {
  return {
    keep: (text) => set(KEY, text, store),
    async read() {
      const found = await get<unknown>(KEY, store);
      return typeof found === 'string' ? found : null;
    },
    forget: () => del(KEY, store),
  };
}
