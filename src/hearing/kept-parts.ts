// What has arrived of a model that has not arrived whole, so that a broken line goes on where it was, also after a reload.
import { clear, createStore, entries, set } from 'idb-keyval';

/** Pieces of one download, in this browser. A browser that keeps nothing is no fault: then it begins anew. */
export interface KeptParts {
  /** What is kept of this archive from its first byte on, without a gap. It never rejects. */
  read(sha256: string): Promise<readonly Uint8Array[]>;
  /** Keeps a piece that begins at that byte. It never rejects. */
  add(sha256: string, at: number, piece: Uint8Array): Promise<void>;
  /** Lets go of every piece, of whatever archive. It never rejects. */
  clear(): Promise<void>;
}

export function openKeptParts(): KeptParts {
  let opened: ReturnType<typeof createStore> | null = null;
  const store = (): ReturnType<typeof createStore> => (opened ??= createStore('bothhands-model-parts', 'parts'));
  return {
    async read(sha256) {
      try {
        return gapless(await entries<IDBValidKey, unknown>(store()), sha256);
      } catch {
        return [];
      }
    },
    async add(sha256, at, piece) {
      await quietly(() => set([sha256, at], piece, store()));
    },
    async clear() {
      await quietly(() => clear(store()));
    },
  };
}

async function quietly(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch {
    // The model itself says so, if there is no room for that either.
  }
}

function gapless(all: readonly (readonly [IDBValidKey, unknown])[], sha256: string): Uint8Array[] {
  const pieces = new Map<number, Uint8Array>();
  for (const [key, piece] of all) {
    const [of, at] = Array.isArray(key) ? key : [];
    if (of === sha256 && typeof at === 'number' && piece instanceof Uint8Array) pieces.set(at, piece);
  }
  const found: Uint8Array[] = [];
  for (let at = 0; ;) {
    const piece = pieces.get(at);
    if (piece === undefined || piece.length === 0) return found;
    found.push(piece);
    at += piece.length;
  }
}
