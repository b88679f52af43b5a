/**
 * SHA-256 (FIPS 180-4) without waiting. The browser's own (`hash.ts`) hands each message to another thread and back, which
 * takes longer than hashing an entry, and to open a long record is to hash tens of thousands of short messages. Entries are
 * written with the browser's own and checked with this one: each record that verifies says that the two agree.
 */

/** Bytes of a block, and of the length that ends the last one. */
const [BLOCK, LENGTH] = [64, 8];

/** Section 4.2.2: the first 32 bits of the fractions of the cube roots of the first 64 primes. */
const ROUNDS = Int32Array.of(
  ...[0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5],
  ...[0xd807aa98, 0x12835b01, 0x243185be, 0x550c7dc3, 0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174],
  ...[0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc, 0x76f988da],
  ...[0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967],
  ...[0x27b70a85, 0x2e1b2138, 0x4d2c6dfc, 0x53380d13, 0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85],
  ...[0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585, 0x106aa070],
  ...[0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3],
  ...[0x748f82ee, 0x78a5636f, 0x84c87814, 0x8cc70208, 0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2],
);
/** Section 5.3.3: those of the square roots of the first eight. */
const START = Int32Array.of(
  ...[0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19],
);

/** SHA-256 of bytes: 32 bytes. For messages of a few kilobytes; `digest` is quicker with more. */
export function hashNow(message: Uint8Array): Uint8Array<ArrayBuffer> {
  const state = START.slice();
  const whole = message.length - (message.length % BLOCK);
  const view = new DataView(message.buffer, message.byteOffset, message.byteLength);
  for (let at = 0; at < whole; at += BLOCK) compress(state, view, at);
  const end = ending(message, whole);
  for (let at = 0; at < end.byteLength; at += BLOCK) compress(state, end, at);
  const hash = new DataView(new ArrayBuffer(4 * state.length));
  for (let i = 0; i < state.length; i++) hash.setInt32(4 * i, at(state, i));
  return new Uint8Array(hash.buffer);
}

/** Section 5.1.1: what is left behind the whole blocks, a bit that is set, zeros, and the length of the message in bits. */
function ending(message: Uint8Array, whole: number): DataView<ArrayBuffer> {
  const left = message.length - whole;
  const bytes = new Uint8Array(left + 1 + LENGTH <= BLOCK ? BLOCK : 2 * BLOCK);
  bytes.set(message.subarray(whole));
  bytes[left] = 0x80;
  const view = new DataView(bytes.buffer);
  view.setBigUint64(bytes.length - LENGTH, 8n * BigInt(message.length));
  return view;
}

/** Written over for each block, so that hashing leaves nothing to collect. */
const schedule = new Int32Array(ROUNDS.length);

const turned = (word: number, bits: number): number => (word >>> bits) | (word << (32 - bits));
/** A word of the schedule or of the state: the bounds of the loops keep within them. */
const at = (words: Int32Array, i: number): number => words[i] ?? 0;

/** Section 6.2.2: takes one block into the state. */
function compress(state: Int32Array, block: DataView, from: number): void {
  for (let t = 0; t < 16; t++) schedule[t] = block.getInt32(from + 4 * t);
  for (let t = 16; t < schedule.length; t++) {
    const early = at(schedule, t - 15);
    const late = at(schedule, t - 2);
    const sigma0 = turned(early, 7) ^ turned(early, 18) ^ (early >>> 3);
    const sigma1 = turned(late, 17) ^ turned(late, 19) ^ (late >>> 10);
    schedule[t] = at(schedule, t - 16) + sigma0 + at(schedule, t - 7) + sigma1;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < schedule.length; t++) {
    const choice = (e & f) ^ (~e & g);
    const majority = (a & b) ^ (a & c) ^ (b & c);
    const first = h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + choice + at(ROUNDS, t) + at(schedule, t);
    const second = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + majority;
    h = g;
    g = f;
    f = e;
    e = (d + first) | 0;
    d = c;
    c = b;
    b = a;
    a = (first + second) | 0;
  }
  const words = [a, b, c, d, e, f, g, h];
  for (let i = 0; i < state.length; i++) state[i] = at(state, i) + (words[i] ?? 0);
}
