import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fromHex, toHex } from '../../src/record/hash.ts';
import { merkleRoot, rootOf } from '../../src/record/merkle.ts';

/** The leaves that the public test suites of RFC 6962 share. */
const leaves = ['', '00', '10', '2021', '3031', '40414243', '5051525354555657', '606162636465666768696a6b6c6d6e6f'].map(
  fromHex,
);
const roots = [
  '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
  'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
  'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
  'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
  '4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
  '76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
  'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
  '5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328',
];
/** Inclusion proofs of leaves in the tree of eight (public test suites), and on which side of the way up each stands. */
const proofs = [
  {
    leaf: 0,
    path: [
      ['right', '96a296d224f285c67bee93c30f8a309157f0daa35dc5b87e410b78630a09cfc7'],
      ['right', '5f083f0a1a33ca076a95279832580db3e0ef4584bdff1f54c8a360f50de3031e'],
      ['right', '6b47aaf29ee3c2af9af889bc1fb9254dabd31177f16232dd6aab035ca39bf6e4'],
    ],
  },
  {
    leaf: 5,
    path: [
      ['left', 'bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b'],
      ['right', 'ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0'],
      ['left', 'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7'],
    ],
  },
] as const;

const hash = (...parts: readonly Uint8Array[]): Uint8Array =>
  parts.reduce((sum, part) => sum.update(part), createHash('sha256')).digest();
const leafHash = (leaf: Uint8Array): Uint8Array => hash(Uint8Array.of(0), leaf);
const nodeHash = (left: Uint8Array, right: Uint8Array): Uint8Array => hash(Uint8Array.of(1), left, right);

/** The definition of RFC 6962, section 2.1, word by word. */
function byDefinition(list: readonly Uint8Array[]): Uint8Array {
  const [first] = list;
  if (first === undefined) return hash();
  if (list.length === 1) return leafHash(first);
  let split = 1;
  while (split * 2 < list.length) split *= 2;
  return nodeHash(byDefinition(list.slice(0, split)), byDefinition(list.slice(split)));
}

describe('the Merkle root (RFC 6962, section 2.1)', () => {
  test.each(roots.map((root, i) => [i + 1, root] as const))('of the first %i test leaves is %s', (count, root) =>
    expect(toHex(merkleRoot(leaves.slice(0, count)))).toBe(root),
  );
  test('of nothing is the hash of nothing', () =>
    expect(toHex(merkleRoot([]))).toBe('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'));
  test.each(proofs)('of eight leaves is reached from leaf $leaf by its published proof', ({ leaf, path }) => {
    const start = leafHash(leaves[leaf] ?? new Uint8Array());
    const reached = path.reduce<Uint8Array>(
      (node, [side, sibling]) =>
        side === 'right' ? nodeHash(node, fromHex(sibling)) : nodeHash(fromHex(sibling), node),
      start,
    );
    expect(toHex(reached)).toBe(toHex(merkleRoot(leaves)));
  });
  test('is that of the definition, for any list', () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 8 }), { maxLength: 70 }), (list) => {
        expect(toHex(merkleRoot(list))).toBe(toHex(byDefinition(list)));
      }),
      { numRuns: 200 },
    );
  });
  test('of entries takes the bytes of their hashes as leaves', () => {
    const hashes = roots.slice(0, 3);
    expect(rootOf(hashes.map((each) => ({ hash: each })))).toBe(toHex(byDefinition(hashes.map(fromHex))));
  });
});

describe('hexadecimal digits', () => {
  test('name any bytes and are read back', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect([...fromHex(toHex(bytes))]).toEqual([...bytes]);
      }),
    );
  });
  test.each(['a', 'zz', '0 ', '12 3'])('are not “%s”', (text) => expect(() => fromHex(text)).toThrow(RangeError));
});
