/**
 * The Merkle tree of RFC 6962, section 2.1: one hash over a list. Unlike the head of the chain it lets a single entry be
 * shown to belong to the record, by a few hashes and without the other entries.
 */
import { digest, fromHex, toHex } from './hash.ts';
import type { Entry } from './entry.ts';

/** What goes before the bytes of a leaf and of a node, so that neither can pass for the other. */
const LEAF = 0x00;
const NODE = 0x01;

/** The root over leaves of any bytes; of no leaves, the hash of nothing. */
export async function merkleRoot(leaves: readonly Uint8Array[]): Promise<Uint8Array> {
  let level = await Promise.all(leaves.map((leaf) => digest(joined(LEAF, leaf))));
  // Pairing level by level, an odd one going up as it is, is the RFC's split at the largest power of two.
  while (level.length > 1) level = await Promise.all(pairsOf(level).map(above));
  return level[0] ?? digest(new Uint8Array());
}

type Bytes = Uint8Array<ArrayBuffer>;
type Pair = readonly [left: Bytes, right?: Bytes];

const pairsOf = (level: readonly Bytes[]): readonly Pair[] =>
  level.flatMap((left, i): readonly Pair[] => {
    if (i % 2 === 1) return [];
    const right = level[i + 1];
    return [right === undefined ? [left] : [left, right]];
  });

const above = async ([left, right]: Pair): Promise<Bytes> =>
  right === undefined ? left : digest(joined(NODE, left, right));

function joined(prefix: number, ...parts: readonly Uint8Array[]): Bytes {
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
export const rootOf = async (entries: readonly Pick<Entry, 'hash'>[]): Promise<string> =>
  toHex(await merkleRoot(entries.map(({ hash }) => fromHex(hash))));
