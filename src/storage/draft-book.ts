import { get, set, type UseStore } from 'idb-keyval';
import * as v from 'valibot';
import { createStrictStore } from './strict-store.ts';

const KeptDraft = v.object({
  /** The text of the procedure's file, sound or not. */
  text: v.string(),
  /** What an import left out and the person has not looked up yet, and from which file; null where there is nothing. */
  leftOut: v.nullable(
    v.object({ file: v.string(), items: v.array(v.object({ place: v.string(), what: v.string() })) }),
  ),
});

/** The procedure that is being written on this device. */
export type KeptDraft = v.InferOutput<typeof KeptDraft>;

/** Where it is kept. There is one. */
export interface DraftBook {
  /** Keeps a draft in place of the last one; when this settles it is on disk. @throws where the browser will not keep it */
  keep(draft: KeptDraft): Promise<void>;
  /** The draft kept last; null where there is none that can be read. */
  read(): Promise<KeptDraft | null>;
}

const KEY = 'procedure';

/** Opens the drafts of this origin. */
export function openDraftBook(store: UseStore = createStrictStore('bothhands-drafts', 'drafts')): DraftBook {
  return {
    keep: (draft) => set(KEY, draft, store),
    async read() {
      const found = v.safeParse(KeptDraft, await get<unknown>(KEY, store));
      return found.success ? found.output : null;
    },
  };
}
