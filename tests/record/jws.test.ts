import fc from 'fast-check';
import { calculateJwkThumbprint, compactVerify, CompactSign, importJWK } from 'jose';
import { describe, expect, test } from 'vitest';
import {
  fromBase64url,
  isSignedBy,
  partsOf,
  signText,
  thumbprintOfJwk,
  toBase64url,
  type PublicJwk,
} from '../../src/record/jws.ts';
import { makeKey } from './keys.ts';

/** RFC 7515, appendix A.3 [M]: a key, and a text that was signed with it. */
const EXAMPLE_KEY: PublicJwk = {
  kty: 'EC',
  crv: 'P-256',
  x: 'f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU',
  y: 'x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0',
};
const EXAMPLE =
  'eyJhbGciOiJFUzI1NiJ9.eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ' +
  '.DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q';

const key = await makeKey();
const { x = '', y = '' } = await crypto.subtle.exportKey('jwk', key.publicKey);
const jwk: PublicJwk = { kty: 'EC', crv: 'P-256', x, y };

describe('a signed text', () => {
  test('of RFC 7515, A.3 (from memory) is signed by its key, and by no other', async () => {
    const jws = partsOf(EXAMPLE);
    expect(jws.header).toEqual({ alg: 'ES256' });
    expect(new TextDecoder().decode(jws.payload)).toContain('"iss":"joe"');
    expect(await isSignedBy(jws, EXAMPLE_KEY)).toBe(true);
    expect(await isSignedBy(jws, jwk)).toBe(false);
  });
  test('is one to another implementation (jose), and the reverse', async () => {
    const text = 'äöü “24.5 N·m” 🔧';
    const theirs = await new CompactSign(new TextEncoder().encode(text))
      .setProtectedHeader({ alg: 'ES256' })
      .sign(key.privateKey);
    expect(await isSignedBy(partsOf(theirs), jwk)).toBe(true);
    const ours = await signText(text, { alg: 'ES256' }, key.privateKey);
    const { payload } = await compactVerify(ours, await importJWK({ ...jwk }, 'ES256'), { algorithms: ['ES256'] });
    expect(new TextDecoder().decode(payload)).toBe(text);
  });
  test('has three parts in base64url and a header in JSON, or is none', () => {
    for (const none of [
      '',
      'a',
      'e30.e30',
      'e30.e30.e30.e30',
      'e30.e+0.e30',
      'e30=.e30.e30',
      'e3.e30.e30',
      'e30.e.e30',
    ])
      expect(() => partsOf(none), none).toThrow();
    expect(partsOf('e30..').header).toEqual({});
  });
  test('is not signed by a point that is none of the curve', async () =>
    expect(isSignedBy(partsOf(EXAMPLE), { ...EXAMPLE_KEY, y: EXAMPLE_KEY.x })).rejects.toThrow());
});

test('a thumbprint is that of another implementation (RFC 7638, by jose)', async () => {
  for (const each of [EXAMPLE_KEY, jwk])
    expect(await thumbprintOfJwk(each)).toBe(await calculateJwkThumbprint({ ...each }));
});

test('base64url is that of Node, both ways', () =>
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      const text = toBase64url(bytes);
      expect(text).toBe(Buffer.from(bytes).toString('base64url'));
      expect([...fromBase64url(text)]).toEqual([...bytes]);
    }),
  ));
