/**
 * The Merkle tree of RFC 6962, section 2.1: one hash over a list. Unlike the head of the chain it lets a single entry be
 * shown to belong to the record, by a few hashes and without the other entries.
 */
import type { Entry } from './entry.ts';
import { fromHex, toHex } from './hash.ts';
import { hashNow } from './sha256.ts';

/** What goes before the bytes of a leaf and of a node, so that neither can pass for the other. */
const LEAF = 0x00;
const NODE = 0x01;

/** The root over leaves of any bytes; of no leaves, the hash of nothing. */
export function merkleRoot(leaves: readonly Uint8Array[]): Uint8Array {
  let level: readonly Uint8Array[] = leaves.map((leaf) => hashNow(joined(LEAF, leaf)));
  // Pairing level by level, an odd one going up as it is, is the RFC's split at the largest power of two.
  while (level.length > 1) level = levelAbove(level);
  return level[0] ?? hashNow(new Uint8Array());
}

const levelAbove = (level: readonly Uint8Array[]): readonly Uint8Array[] =>
  level.flatMap((left, i) => {
    if (i % 2 === 1) return [];
    const right = level[i + 1];
    return [right === undefined ? left : hashNow(joined(NODE, left, right))];
  });

function joined(prefix: number, ...parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(1 + parts.reduce((sum, { length }) => sum + length, 0));
  bytes[0] = prefix;
  let at = 1;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** The root over the entries of a record, as 64 hexadecimal digits. The data of a leaf are the 32 bytes of an entry's hash. */
export const rootOf = (entries: readonly Pick<Entry, 'hash'>[]): string =>
  toHex(merkleRoot(entries.map(({ hash }) => fromHex(hash))));
