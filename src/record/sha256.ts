/**
 * SHA-256 (FIPS 180-4) without waiting. The browser's own (`hash.ts`) hands each message to another thread and back, which
 * takes longer than hashing an entry, and to open a long record is to hash tens of thousands of short messages. Entries are
 * written with the browser's own and checked with this one: each record that verifies says that the two agree.
 */
import { sha256 } from '@noble/hashes/sha2.js';

/** SHA-256 of bytes: 32 bytes. For messages of a few kilobytes; `digest` is quicker with more. */
export const hashNow = (message: Uint8Array): Uint8Array<ArrayBuffer> => Uint8Array.from(sha256(message));
