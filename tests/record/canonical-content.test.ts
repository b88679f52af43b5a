import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical, canonicalContent } from '../../src/record/canonical.ts';

const HASH = 'a'.repeat(64);

describe('the canonical text of an entry without its hash', () => {
  test('is that of the entry from which the hash was taken, whatever else it holds', () => {
    const member = `"hash":"${HASH}",`;
    const anything = fc.oneof(fc.jsonValue(), fc.constantFrom(member, HASH, { hash: HASH }, { hash: HASH, z: 1 }));
    fc.assert(
      fc.property(
        fc.dictionary(fc.oneof(fc.string(), fc.constantFrom('at', 'body', 'seq', 'v')), anything),
        fc.oneof(fc.constant(HASH), fc.jsonValue()),
        (content, hash) => {
          const { hash: _none, ...open } = content;
          expect(canonicalContent({ ...open, hash })).toBe(canonical(open));
        },
      ),
      { numRuns: 2000 },
    );
  });
  test('is found where the same hash also stands inside the entry', () => {
    const open = { body: { hash: HASH, kind: 'x' }, seq: 1 };
    expect(canonicalContent({ ...open, hash: HASH })).toBe(canonical(open));
    expect(canonicalContent({ body: { hash: HASH, kind: 'x' }, hash: HASH })).toBe(
      '{"body":{"hash":"' + HASH + '","kind":"x"}}',
    );
  });
  test('has no form where the entry has none', () =>
    expect(() => canonicalContent({ hash: HASH, seq: NaN })).toThrow());
});
