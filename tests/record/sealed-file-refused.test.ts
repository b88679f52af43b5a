import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { LARGEST_FILE, type PartName } from '../../src/record/container.ts';
import { MOST_ENTRIES } from '../../src/record/sealed-file.ts';
import { eventOf } from '../session/play.ts';
import { sealAll } from './sealed.ts';
import { bytes, lines, open, parts, procedure, repacked, verdictOn, withEntries, withLines } from './sealed-demo.ts';

async function whyRefused(found: Uint8Array): Promise<string> {
  const opened = await open(found);
  if (opened.kind === 'opened') throw new Error(`It was opened: ${JSON.stringify(opened.verdict)}`);
  return opened.why;
}

describe('what is no sealed file is refused with the reason, and nothing of it is read', () => {
  const stored = { level: 0 } as const;
  const raw = (name: PartName): Uint8Array => parts.get(name) ?? new Uint8Array();
  test.each<[string, Uint8Array, RegExp]>([
    ['nothing', new Uint8Array(), /does not begin as a zip archive/],
    ['a procedure file', strToU8(JSON.stringify(procedure)), /does not begin as a zip archive/],
    ['a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a), /does not begin as a zip archive/],
    ['the beginning of a zip archive', bytes.slice(0, 20), /does not begin with “format.json”/],
    ['a zip archive of something else', zipSync({ 'letter.txt': [strToU8('Dear all'), stored] }), /“format.json”/],
    ['a zip archive of nothing', zipSync({}), /does not begin as a zip archive/],
    [
      'a file packed anew and compressed',
      zipSync({ 'format.json': [raw('format.json'), stored], 'README.txt': raw('README.txt') }),
      /“README.txt” is compressed/,
    ],
  ])('%s', async (_, found, why) => expect(await whyRefused(found)).toMatch(why));

  test('a bomb: 100 MB of zeros in 100 kB, not inflated', async () => {
    const bomb = zipSync({ 'format.json': [raw('format.json'), stored], 'README.txt': new Uint8Array(100 * 2 ** 20) });
    expect(bomb.length).toBeLessThan(200_000);
    expect(await whyRefused(bomb)).toContain('“README.txt” is compressed');
  });
  test('a part that claims more bytes than the file has', async () => {
    const claims = Uint8Array.from(bytes);
    new DataView(claims.buffer).setUint32(18, 0xffff_fff0, true);
    new DataView(claims.buffer).setUint32(22, 0xffff_fff0, true);
    expect(await whyRefused(claims)).toContain('does not begin with “format.json”');
  });
  test.each(['../format.json', '/etc/passwd', 'C:\\autorun.inf', 'entries.jsonl/../../x', 'more.txt', 'Format.json'])(
    'a part called %s',
    async (name) => {
      const found = zipSync({ 'format.json': [raw('format.json'), stored], [name]: [strToU8('x'), stored] });
      expect(await whyRefused(found)).toContain(`it holds ${JSON.stringify(name)}, which no sealed file has`);
    },
  );
  test('a thousand parts', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 1000 }, (_, i) => [`part-${i}`, [strToU8('x'), stored] as const]),
    );
    expect(await whyRefused(zipSync({ 'format.json': [raw('format.json'), stored], ...(many as object) }))).toContain(
      'part-0',
    );
  });
  test('a part twice', async () => {
    const one = zipSync({ 'format.json': [raw('format.json'), stored] });
    const header = one.slice(0, 30 + 'format.json'.length + raw('format.json').length);
    expect(await whyRefused(Buffer.concat([header, one]))).toContain('“format.json” is in it twice');
  });
  test('parts out of their order', async () =>
    expect(
      await whyRefused(
        zipSync({
          'format.json': [raw('format.json'), stored],
          'seal.jws': [raw('seal.jws'), stored],
          'entries.jsonl': [raw('entries.jsonl'), stored],
        }),
      ),
    ).toContain('“entries.jsonl” is in it twice or out of its place'));
  test('a file larger than may be', async () => {
    const large = new Uint8Array(LARGEST_FILE + 1);
    large.set(bytes);
    expect(await whyRefused(large)).toContain('larger than 256 MiB');
  });
  test('more entries than a session has', async () =>
    expect(await whyRefused(repacked({ 'entries.jsonl': '1\n'.repeat(MOST_ENTRIES + 1) }))).toContain(
      `more than ${MOST_ENTRIES} entries`,
    ));
  test.each<[string, RegExp]>([
    [
      '{"format":"bothhands-session","session":"session","version":3}',
      /^Its format is version 3; .* newer program is needed/,
    ],
    ['{"format":"bothhands-session","session":"session","version":0}', /does not say/],
    ['{"format":"bothhands-session","session":"session","version":1e300}', /does not say/],
    ['{"format":"bothhands-session","session":"session","version":"1"}', /does not say/],
    ['{"format":"bothhands-session","version":1}', /not as expected: session/],
    ['{"format":"bothhands-session","session":7,"version":1}', /not as expected: session/],
    ['{"format":"bothhands-procedure","version":1}', /does not say/],
    ['[]', /does not say/],
    ['null', /does not say/],
    ['{', /does not say/],
    ['', /“format.json”/],
  ])('a format.json of %s', async (text, why) =>
    expect(await whyRefused(repacked({ 'format.json': text }))).toMatch(why),
  );
  test('a later version that has other parts', async () => {
    const format = strToU8('{"format":"bothhands-session","session":"session","version":3}');
    const later = zipSync({ 'format.json': [format, stored], 'pictures.bin': [strToU8('x'), stored] });
    expect(await whyRefused(later)).toMatch(/^Its format is version 3/);
  });
  test('JSON nested without end in the place of an entry is an entry that cannot be read', async () =>
    expect(await verdictOn(withLines(lines.with(2, '['.repeat(200_000) + ']'.repeat(200_000))))).toMatchObject({
      at: 2,
    }));
  test('entries of a session that was never opened are named, not shown', async () => {
    const opened = await open(withEntries(await sealAll([eventOf({ kind: 'closed' }, 0)])));
    expect(opened).toMatchObject({
      session: { kind: 'unreadable' },
      verdict: { at: 0, why: 'a session begins by being opened' },
    });
  });
});

describe('whatever is found in a file', () => {
  test('opening it ends with a reason, and only the file as it was packed is intact', async () => {
    const splice = fc.record({ at: fc.nat(bytes.length), drop: fc.nat(4000), add: fc.uint8Array({ maxLength: 200 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(splice, { minLength: 1, maxLength: 4 }), async (splices) => {
        const found = splices.reduce<Buffer>(
          (all, { at, drop, add }) => Buffer.concat([all.subarray(0, at), add, all.subarray(at + drop)]),
          Buffer.from(bytes),
        );
        fc.pre(!found.equals(bytes));
        const opened = await open(found);
        if (opened.kind === 'opened') expect(opened.verdict.kind).toBe('not intact');
        else expect(opened.why).not.toBe('');
      }),
      { numRuns: 300 },
    );
  });
  test('bytes that begin as a zip archive does are refused', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (rest) => {
        expect(await open(Buffer.concat([Uint8Array.of(0x50, 0x4b, 0x03, 0x04), rest]))).toMatchObject({
          kind: 'refused',
        });
      }),
      { numRuns: 500 },
    );
  });
});
