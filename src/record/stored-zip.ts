/** Zip archives whose parts are stored as they are (the zip specification, APPNOTE.TXT 6.3): written, and read in their order. */

const LOCAL = 0x0403_4b50;
const CENTRAL = 0x0201_4b50;
const END = 0x0605_4b50;

/** Bytes of a header without its name, where nothing but the name varies in length (4.3.7). */
export const LOCAL_LENGTH = 30;
const CENTRAL_LENGTH = 46;
const END_LENGTH = 22;

/** Version 2.0 is enough to read it (4.4.3). */
const VERSION = 20;
/** Times are local, and begin in 1980 (4.4.6): noon of its first day, in two bytes each. */
const NOON = 12 << 11;
const FIRST_DAY = (1 << 5) | 1;
/** The sizes stand behind the content, where nobody has them who reads it in order (4.4.4). */
const SIZES_BEHIND = 8;
/** The method of compression that is none (4.4.5). */
export const STORED = 0;

/** Packs parts in their order. The same parts always give the same bytes: neither time nor place goes in. */
export function packStored(parts: readonly (readonly [name: string, content: Uint8Array])[]): Uint8Array<ArrayBuffer> {
  const named = parts.map(([name, content]) => ({
    name: new TextEncoder().encode(name),
    content,
    sum: crc32(content),
  }));
  const headers = named.reduce((sum, { name, content }) => sum + LOCAL_LENGTH + name.length + content.length, 0);
  const list = named.reduce((sum, { name }) => sum + CENTRAL_LENGTH + name.length, 0);
  const bytes = new Uint8Array(headers + list + END_LENGTH);
  const view = new DataView(bytes.buffer);
  let at = 0;
  let listed = headers;
  for (const { name, content, sum } of named) {
    const describe = (from: number): void => {
      view.setUint16(from, VERSION, true);
      view.setUint16(from + 6, NOON, true);
      view.setUint16(from + 8, FIRST_DAY, true);
      view.setUint32(from + 10, sum, true);
      view.setUint32(from + 14, content.length, true);
      view.setUint32(from + 18, content.length, true);
      view.setUint16(from + 22, name.length, true);
    };
    view.setUint32(listed, CENTRAL, true);
    view.setUint16(listed + 4, VERSION, true);
    describe(listed + 6);
    view.setUint32(listed + 42, at, true);
    bytes.set(name, listed + CENTRAL_LENGTH);
    listed += CENTRAL_LENGTH + name.length;
    view.setUint32(at, LOCAL, true);
    describe(at + 4);
    bytes.set(name, at + LOCAL_LENGTH);
    bytes.set(content, at + LOCAL_LENGTH + name.length);
    at += LOCAL_LENGTH + name.length + content.length;
  }
  view.setUint32(listed, END, true);
  view.setUint16(listed + 8, named.length, true);
  view.setUint16(listed + 10, named.length, true);
  view.setUint32(listed + 12, list, true);
  view.setUint32(listed + 16, headers, true);
  return bytes;
}

/** A part as its header describes it. */
export interface StoredPart {
  readonly name: string;
  readonly method: number;
  /** Bytes that are there by its header; null where they stand behind it, or differ when they are unpacked. */
  readonly size: number | null;
  /** Shorter than `size` where the file ends before. */
  readonly content: Uint8Array;
}

/** The parts of an archive as they follow one another; whatever lies between or behind them is passed over. */
export function* storedParts(bytes: Uint8Array): Generator<StoredPart> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at + LOCAL_LENGTH <= bytes.length;) {
    if (view.getUint32(at, true) !== LOCAL) {
      at += 1;
      continue;
    }
    const packed = view.getUint32(at + 18, true);
    const nameEnd = at + LOCAL_LENGTH + view.getUint16(at + 26, true);
    const from = nameEnd + view.getUint16(at + 28, true);
    if (from > bytes.length) return;
    const isKnown = (view.getUint16(at + 6, true) & SIZES_BEHIND) === 0 && packed === view.getUint32(at + 22, true);
    yield {
      name: new TextDecoder().decode(bytes.subarray(at + LOCAL_LENGTH, nameEnd)),
      method: view.getUint16(at + 8, true),
      size: isKnown ? packed : null,
      content: bytes.subarray(from, from + packed),
    };
    at = from + packed;
  }
}

const SUMS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb8_8320 : sum >>> 1;
  return sum;
});

/** The checksum of bytes that zip has (4.4.7). */
const crc32 = (bytes: Uint8Array): number => {
  let sum = -1;
  for (const byte of bytes) sum = (SUMS[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8);
  return ~sum >>> 0;
};
