import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toHex } from '../../src/record/hash.ts';
import { hashNow } from '../../src/record/sha256.ts';

const utf8 = new TextEncoder();

describe('SHA-256 without waiting', () => {
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
    ['a'.repeat(1_000_000), 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
  ])('gives the hash of the standard for %.60s (FIPS 180-4 examples)', (text, hash) =>
    expect(toHex(hashNow(utf8.encode(text)))).toBe(hash),
  );

  test('gives what another implementation gives, at every length around the ends of blocks', () => {
    for (let length = 0; length <= 4 * 64; length++) {
      const bytes = Uint8Array.from({ length }, (_, i) => i * 37 + length);
      expect(toHex(hashNow(bytes))).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });

  test('gives what another implementation gives, for any bytes, also inside others', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 2000 }), fc.nat(200), (bytes, from) => {
        const part = bytes.subarray(Math.min(from, bytes.length));
        expect(toHex(hashNow(part))).toBe(createHash('sha256').update(part).digest('hex'));
      }),
      { numRuns: 500 },
    );
  });
});
