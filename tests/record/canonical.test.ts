import { describe, expect, test } from 'vitest';
import { canonical, sha256 } from '../../src/record/entry.ts';

/** The number whose IEEE 754 double has these 16 hexadecimal digits. */
function double(hexadecimal: string): number {
  const view = new DataView(new ArrayBuffer(8));
  view.setBigUint64(0, BigInt(`0x${hexadecimal}`));
  return view.getFloat64(0);
}

describe('canonical JSON (RFC 8785)', () => {
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['7fefffffffffffff', '1.7976931348623157e+308'],
    ['4340000000000000', '9007199254740992'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['44b52d02c7e14af7', '1.0000000000000001e+23'],
    ['444b1ae4d6e2ef4e', '999999999999999700000'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['41b3de4355555553', '333333333.3333332'],
    ['41b3de4355555557', '333333333.33333343'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('writes the number %s as %s (RFC 8785, appendix B)', (hexadecimal, text) =>
    expect(canonical(double(hexadecimal))).toBe(text),
  );

  test('writes the sample object of RFC 8785, section 3.2, byte for byte', async () => {
    const sample: unknown = JSON.parse(
      String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
    );
    const text = canonical(sample);
    expect(text).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    );
    expect(new TextEncoder().encode(text).length).toBe(118);
    // Computed apart from this program.
    expect(await sha256(text)).toBe('2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb');
  });

  test("sorts keys by UTF-16 code units, the emoji before U+FB33 (test data 'weird' of the RFC's author)", () => {
    const keys = ['\u20ac', '\ufb33', '1', '\u{1f602}', '\u0080', '\u00f6', '</script>'];
    const text = canonical(Object.fromEntries(keys.map((key) => [key, 0])));
    expect(Object.keys(JSON.parse(text) as object)).toEqual([
      '1',
      '</script>',
      '\u0080',
      '\u00f6',
      '\u20ac',
      '\u{1f602}',
      '\ufb33',
    ]);
  });

  test.each([[Number.NaN], [Number.POSITIVE_INFINITY], ['\ud800'], [{ text: 'a\udc00' }], [undefined], [() => 0]])(
    'has no form for %s',
    (value) => expect(() => canonical(value)).toThrow(),
  );
});

describe('SHA-256 (FIPS 180-4)', () => {
  test.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    ],
  ])('of "%s" (the published example)', async (text, hash) => expect(await sha256(text)).toBe(hash));
  test('of a million times "a" (the published example)', async () =>
    expect(await sha256('a'.repeat(1_000_000))).toBe(
      'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0',
    ));
});
