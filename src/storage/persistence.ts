/** Whether the browser keeps what is written here, and how much room it leaves. */

/** What the browser answered when it was asked to keep this origin's data. `unknown`: it cannot be asked. */
export type Persistence = 'kept' | 'may be cleared' | 'unknown';

type Storage = Pick<StorageManager, 'persist' | 'persisted' | 'estimate'>;
const ofBrowser = (): Partial<Storage> => (navigator as Partial<Navigator>).storage ?? {};

/** Asks the browser to keep the data of this origin until a person clears them. It never throws. */
export const askToPersist = (storage: Partial<Storage> = ofBrowser()): Promise<Persistence> =>
  answered(storage.persist?.());

/** What it answered before, without asking again. It never throws. */
export const isPersisted = (storage: Partial<Storage> = ofBrowser()): Promise<Persistence> =>
  answered(storage.persisted?.());

async function answered(answer: Promise<boolean> | undefined): Promise<Persistence> {
  try {
    if (answer === undefined) return 'unknown';
    return (await answer) ? 'kept' : 'may be cleared';
  } catch {
    return 'unknown';
  }
}

/** Room that this origin may still use, in bytes, as the browser estimates it; null where it does not say. */
export async function roomLeft(storage: Partial<Storage> = ofBrowser()): Promise<number | null> {
  try {
    const { quota, usage } = (await storage.estimate?.()) ?? {};
    return quota === undefined || usage === undefined ? null : Math.max(0, quota - usage);
  } catch {
    return null;
  }
}

/**
 * Of the sound of one reading and of its answer there are at most some 13 seconds, of 32 000 bytes each (16 kHz, 16 bits):
 * four tenths of a megabyte, beside which its entries are nothing. A job of a hundred readings takes up to 42 megabytes.
 */
const LARGE_JOB = 100 * 13 * 32_000;

/** With less room than this, in bytes, the next job may not fit: two large ones, since an estimate may be off. */
export const LITTLE_ROOM = 2 * LARGE_JOB;
