import { describe, expect, test } from 'vitest';
import { sha256 } from '../../../src/record/entry.ts';
import type { Sounds } from '../../../src/record/sounds.ts';
import { soundBy } from '../../../src/ui/replay/evidence.ts';

const bytes = new TextEncoder().encode('sound');
const hash = await sha256('sound');

describe('a sound of a record', () => {
  test('is good where its hash is the one in the record', async () =>
    expect(await soundBy(hash, new Map([[hash, bytes]]), [])).toEqual({ kind: 'good', bytes }));
  test('is another one where a single bit differs', async () => {
    const other = Uint8Array.from(bytes, (byte, i) => (i === 2 ? byte ^ 1 : byte));
    expect(await soundBy(hash, new Map([[hash, other]]), [])).toEqual({ kind: 'changed' });
  });
  test('is absent where it did not come with the record', async () => {
    const none: Sounds = new Map();
    expect(await soundBy(hash, none, [])).toEqual({ kind: 'absent' });
  });
  test('was deleted where an entry says so', async () =>
    expect(await soundBy(hash, new Map(), [{ body: { kind: 'sounds deleted', sounds: [hash] } }])).toEqual({
      kind: 'deleted',
    }));
});
