import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toHex } from '../../src/record/hash.ts';
import { imprintOf, NONCE_BYTES, readAnswer, readRequest, timeStampRequest } from '../../src/record/time-stamp.ts';

const bytes = (length: number) => fc.uint8Array({ minLength: length, maxLength: length });

/** TimeStampReq by RFC 3161, section 2.4.1, in DER (ITU-T X.690), byte by byte. */
const derOf = (imprint: Uint8Array, nonce: Uint8Array): string =>
  [
    '304b', // SEQUENCE of 75 bytes
    '020101', // version INTEGER v1(1)
    '3031', // messageImprint SEQUENCE of 49
    '300d', //   hashAlgorithm SEQUENCE of 13
    '0609608648016503040201', // OBJECT IDENTIFIER 2.16.840.1.101.3.4.2.1, SHA-256
    '0500', //   parameters NULL
    '0420' + toHex(imprint), // hashedMessage OCTET STRING of 32
    '0210' + toHex(nonce), // nonce INTEGER of 16 bytes
    '0101ff', // certReq BOOLEAN TRUE: in DER it is 255
  ].join('');

describe('a request for a time-stamp', () => {
  it('is, byte for byte, what the RFC lays down', () =>
    fc.assert(
      fc.property(bytes(32), bytes(NONCE_BYTES), (imprint, chance) => {
        const request = timeStampRequest(new Uint8Array(imprint), chance);
        const nonce = request.subarray(-19, -3);
        expect(toHex(request)).toBe(derOf(imprint, nonce));
        // Positive, and without a zero in front: the only way that DER has.
        expect(nonce[0]).toBeGreaterThanOrEqual(0x40);
        expect(nonce[0]).toBeLessThanOrEqual(0x7f);
        expect(toHex(nonce.subarray(1))).toBe(toHex(chance.subarray(1)));
        expect(readRequest(request)).toEqual({ imprint: toHex(imprint), nonce: toHex(nonce) });
      }),
    ));

  it('is over the SHA-256 of the seal as it stands in the file', async () =>
    expect(toHex(await imprintOf('a.b.c'))).toBe(createHash('sha256').update('a.b.c').digest('hex')));

  it('is not made of a hash or of chance of another length', () => {
    expect(() => timeStampRequest(new Uint8Array(20), new Uint8Array(NONCE_BYTES))).toThrow(RangeError);
    expect(() => timeStampRequest(new Uint8Array(32), new Uint8Array(8))).toThrow(RangeError);
  });
});

it('reading anything at all as a request or an answer never throws', () =>
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (found) => {
      expect(readRequest(new Uint8Array(found))).toBe(null);
      expect(readAnswer(new Uint8Array(found)).kind).toBe('unreadable');
    }),
  ));
