import { unzipSync, zipSync } from 'fflate';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { packStored, storedParts } from '../../src/record/stored-zip.ts';

const name = fc.stringMatching(/^[a-z]{1,9}(\/[a-z]{1,9})?\.[a-z]{1,4}$/);
const parts = fc.uniqueArray(fc.tuple(name, fc.uint8Array({ maxLength: 300 })), {
  selector: ([each]) => each,
  maxLength: 8,
});

test('an archive is to the byte that of another implementation (fflate), which reads it', () =>
  fc.assert(
    fc.property(parts, (all) => {
      const packed = packStored(all);
      const options = { level: 0, mtime: new Date(1980, 0, 1, 12) } as const;
      const theirs = zipSync(Object.fromEntries(all.map(([each, content]) => [each, [content, options] as const])));
      expect(Buffer.from(packed).equals(theirs)).toBe(true);
      expect(Object.entries(unzipSync(packed))).toEqual(all.map(([each, content]) => [each, content]));
    }),
  ));

test('its parts are read in their order, as far as they go', () =>
  fc.assert(
    fc.property(parts, fc.nat(), (all, cut) => {
      const packed = packStored(all);
      const whole = [...storedParts(packed)];
      expect(whole.map((part) => [part.name, part.content])).toEqual(all.map(([each, content]) => [each, content]));
      expect(whole.every(({ method, size, content }) => method === 0 && size === content.length)).toBe(true);
      const some = [...storedParts(packed.subarray(0, cut % (packed.length + 1)))];
      expect(some.map((part) => part.name)).toEqual(all.slice(0, some.length).map(([each]) => each));
      expect(some.slice(0, -1)).toEqual(whole.slice(0, Math.max(0, some.length - 1)));
    }),
  ));

test('parts that are compressed, or whose sizes stand behind them, are told', () => {
  const text = new TextEncoder().encode('a'.repeat(99));
  const [squeezed] = storedParts(zipSync({ 'a.txt': [text, { level: 9 }] }));
  expect(squeezed).toMatchObject({ name: 'a.txt', method: 8, size: null });
  const packed = packStored([['a.txt', text]]);
  packed[6] = 8;
  expect([...storedParts(packed)][0]).toMatchObject({ name: 'a.txt', size: null });
});
