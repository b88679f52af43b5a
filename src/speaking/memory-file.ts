/** A file that lives in memory and grows as it is written. */
export interface MemoryFile {
  /** Writes `bytes` at `position`; a gap before it reads as zeros. */
  write(position: number, bytes: Uint8Array): void;
  length(): number;
  /** A copy of the contents. */
  bytes(): Uint8Array<ArrayBuffer>;
}

const FIRST_CAPACITY = 2 ** 16;

export function createMemoryFile(): MemoryFile {
  let store = new Uint8Array(FIRST_CAPACITY);
  let length = 0;

  function reserve(capacity: number): void {
    if (capacity <= store.length) return;
    const larger = new Uint8Array(Math.max(capacity, store.length * 2));
    larger.set(store);
    store = larger;
  }

  return {
    write(position, bytes) {
      reserve(position + bytes.length);
      store.set(bytes, position);
      length = Math.max(length, position + bytes.length);
    },
    length: () => length,
    bytes: () => store.slice(0, length),
  };
}
