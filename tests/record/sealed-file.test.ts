import { readFileSync } from 'node:fs';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { LARGEST_FILE, packParts, PARTS, type PartName, type Parts } from '../../src/record/container.ts';
import { canonical, type Entry } from '../../src/record/entry.ts';
import { MOST_ENTRIES, openSessionFile, packSession, type SessionFile } from '../../src/record/sealed-file.ts';
import { stateAfter } from '../../src/record/session-record.ts';
import { affirm, demo, eventOf, next, start, tell } from '../session/play.ts';
import { makeKey } from './keys.ts';
import { packed, recordIn, recordOf, rehashed, sealAll } from './sealed.ts';

const file = new URL('../../demo-data/ropeway-oil-cooler.json', import.meta.url);
const procedure = JSON.parse(readFileSync(file, 'utf8')) as object;
const played = tell(start(demo()), affirm, affirm, next, next, affirm, affirm, next);
const key = await makeKey();
const { bytes, entries, record, seal } = await packed(await recordOf(procedure, played.events), key);
const last = entries.length - 1;

const NOW = '2026-03-02T00:00:00.000Z';
const open = (found: Uint8Array, now = NOW): Promise<SessionFile> => openSessionFile(found, { now });
async function verdictOn(found: Uint8Array, now = NOW) {
  const opened = await open(found, now);
  if (opened.kind === 'refused') throw new Error(opened.why);
  return opened.verdict;
}
async function whyRefused(found: Uint8Array): Promise<string> {
  const opened = await open(found);
  if (opened.kind === 'opened') throw new Error(`It was opened: ${JSON.stringify(opened.verdict)}`);
  return opened.why;
}

const parts: Parts = new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name as PartName, content]));
const textOf = (name: PartName): string => new TextDecoder().decode(parts.get(name));
/** The file packed anew with some parts changed or left out, as a forger with this program would. */
const repacked = (changes: Readonly<Partial<Record<PartName, string | null>>>): Uint8Array => {
  const changed = new Map(parts);
  for (const name of PARTS) {
    const text = changes[name];
    if (text === null) changed.delete(name);
    else if (text !== undefined) changed.set(name, strToU8(text));
  }
  return packParts(changed);
};
const lines = textOf('entries.jsonl').trimEnd().split('\n');
const withLines = (changed: readonly string[]): Uint8Array =>
  repacked({ 'entries.jsonl': changed.map((line) => `${line}\n`).join('') });
const withEntries = (changed: readonly Entry[]): Uint8Array => withLines(changed.map((entry) => canonical(entry)));

describe('a sealed file', () => {
  test('is intact as it was packed', async () =>
    expect(await verdictOn(bytes)).toEqual({
      kind: 'intact',
      entries: entries.length,
      head: entries[last]?.hash,
      thumbprint: expect.stringMatching(/^[A-Za-z0-9_-]{43}$/) as string,
      closedAt: null,
    }));
  test('gives back the session: entries, people, procedure, and the state after each entry', async () => {
    const opened = await open(bytes);
    if (opened.kind === 'refused' || opened.session.kind === 'unreadable') throw new Error('It was not opened.');
    expect(opened.session.record).toEqual(record);
    for (let count = 0; count <= entries.length; count++)
      expect(stateAfter(opened.session.record, count)).toEqual(stateAfter(record, count));
  });
  test('is the same to the byte from the same record and seal, wherever and whenever it is packed', async () => {
    expect(packSession(await recordIn(JSON.parse(JSON.stringify(entries)) as Entry[]), seal)).toEqual(bytes);
    expect(Buffer.from(bytes).includes(Buffer.from(textOf('entries.jsonl')))).toBe(true);
  });
  test('holds its parts in order, readable with any zip tool', () => {
    expect([...parts.keys()]).toEqual([...PARTS]);
    expect(JSON.parse(textOf('format.json'))).toEqual({ format: 'bothhands-session', version: 1, session: 'session' });
    expect(textOf('README.txt')).toContain('Format version 1.');
    expect(lines.map((line) => JSON.parse(line) as unknown)).toEqual(entries);
    expect(JSON.parse(textOf('procedure.json'))).toEqual(procedure);
    expect(textOf('seal.jws')).toBe(seal);
  });
  test('is not made of a record that is broken', async () => {
    const broken = await recordIn(entries.with(4, { ...(entries[4] as Entry), person: 'Somebody else' }));
    expect(() => packSession(broken, null)).toThrow('Only a record that is whole can be packed.');
  });
  test('can be held to keys that are known', async () => {
    const own = await verdictOn(bytes);
    if (own.kind !== 'intact') throw new Error(own.why);
    const held = (keys: readonly string[]) => openSessionFile(bytes, { now: NOW, keys });
    expect(await held(['other', own.thumbprint])).toMatchObject({ verdict: { kind: 'intact' } });
    expect(await held(['other'])).toMatchObject({
      verdict: { kind: 'not intact', at: null, why: `it is sealed by another key, ${own.thumbprint}` },
    });
  });
});

describe('a file that is not as it was sealed names the first bad entry', () => {
  const at = async (found: Uint8Array): Promise<number | null> => {
    const verdict = await verdictOn(found);
    if (verdict.kind === 'intact') throw new Error('It was taken as intact.');
    return verdict.at;
  };
  test('a changed value', async () => {
    const changed = withLines(lines.with(5, (lines[5] ?? '').replace('"Mechanic"', '"Somebody"')));
    expect(await verdictOn(changed)).toEqual({
      kind: 'not intact',
      at: 5,
      why: 'its content was changed after it was written',
    });
  });
  test('a line that is written in another way, though it says the same', async () =>
    expect(await verdictOn(withLines(lines.with(5, (lines[5] ?? '').replace(':', ': '))))).toEqual({
      kind: 'not intact',
      at: 5,
      why: 'its line is not as it was written',
    }));
  test.each<[string, (all: readonly string[]) => readonly string[], number]>([
    ['dropped', (all) => all.toSpliced(3, 1), 3],
    ['repeated', (all) => all.toSpliced(3, 0, all[3] ?? ''), 4],
    ['swapped', (all) => all.with(3, all[4] ?? '').with(4, all[3] ?? ''), 3],
    ['no JSON', (all) => all.with(3, '{"v":1'), 3],
    ['empty', (all) => all.toSpliced(3, 0, ''), 3],
    ['cut off the end', (all) => all.slice(0, -1), last],
    ['a number that no JSON reader holds', (all) => all.with(3, (all[3] ?? '').replace('"seq":3', '"seq":3e999')), 3],
  ])('a line that is %s', async (_, change, expected) => expect(await at(withLines(change(lines)))).toBe(expected));
  test('bytes that are no text', async () => {
    const changed = new Map(parts);
    const raw = Uint8Array.from(parts.get('entries.jsonl') ?? []);
    raw[raw.indexOf(0x0a) + 5] = 0xff;
    changed.set('entries.jsonl', raw);
    expect(await verdictOn(packParts(changed))).toEqual({ kind: 'not intact', at: 1, why: 'its line cannot be read' });
  });
  test('an end that was written anew, each hash right', async () => {
    const forged = played.events.map((event) => (event.seq < 3 ? event : { ...event, person: 'Somebody else' }));
    expect(await verdictOn(withEntries(await recordOf(procedure, forged)))).toEqual({
      kind: 'not intact',
      at: null,
      why: 'the seal: the entries are not those that were sealed: they were written anew',
    });
  });
  test('an entry that was added behind the seal', async () => {
    const longer = await recordOf(procedure, [...played.events, eventOf({ kind: 'closed' }, played.events.length)]);
    expect(await verdictOn(withEntries(longer))).toEqual({
      kind: 'not intact',
      at: entries.length,
      why: 'it was added after the record was sealed',
    });
  });
  test('and what was added is not shown', async () => {
    const longer = await recordOf(procedure, [...played.events, eventOf({ kind: 'closed' }, played.events.length)]);
    const opened = await open(withEntries(longer));
    if (opened.kind === 'refused' || opened.session.kind === 'unreadable') throw new Error('It was not opened.');
    expect(opened.session.record.entries).toEqual(entries);
  });
  test('a seal that was taken off: what it guards is no longer shown', async () =>
    expect(await verdictOn(repacked({ 'seal.jws': null }))).toEqual({
      kind: 'not intact',
      at: null,
      why: 'it has no seal: whether it was cut off or written anew cannot be told',
    }));
  test('a copy of the procedure that says something else', async () =>
    expect(await verdictOn(repacked({ 'procedure.json': '{"title":"Another"}\n' }))).toMatchObject({
      at: null,
      why: '“procedure.json” is not the procedure that is in the record',
    }));
  test('a session under another name', async () =>
    expect(
      await at(repacked({ 'format.json': '{"format":"bothhands-session","session":"other","version":1}\n' })),
    ).toBe(0));
  test('an event of a kind that this program does not know', async () => {
    const [first, second] = entries;
    if (!first || !second) throw new Error('The record is too short.');
    const unknown = await rehashed(second, { body: { kind: 'teleported' } });
    expect(await verdictOn(withEntries([first, unknown]))).toMatchObject({
      at: 1,
      why: expect.stringMatching(/^what it says cannot be read: body.kind /) as string,
    });
  });
  test('an event that has not come yet', async () => {
    expect(await verdictOn(bytes, '2026-02-28T12:00:00.000Z')).toMatchObject({ kind: 'intact' });
    expect(await verdictOn(bytes, '2026-02-27T12:00:00.000Z')).toMatchObject({ at: 0 });
    const events = played.events.map((event) =>
      event.seq < 4 ? event : { ...event, at: { ...event.at, utc: '2031-01-01T00:00:00.000Z' } },
    );
    const ahead = await packed(await recordOf(procedure, events), key);
    const opened = await open(ahead.bytes);
    expect(opened).toMatchObject({
      session: { record: { entries: { length: 5 }, verification: { kind: 'broken', at: 5 } } },
      verdict: {
        at: 5,
        why: 'it is dated 2031-01-01T00:00:00.000Z, which has not come yet: it is 2026-03-02T00:00:00.000Z here',
      },
    });
  });
  test.each([
    ['inside its entries', Buffer.from(bytes).indexOf(`${lines[6]}`) + 40, 6],
    ['between two entries', Buffer.from(bytes).indexOf(`${lines[6]}`), 6],
    ['before its entries', Buffer.from(bytes).indexOf('entries.jsonl') - 30, 0],
    ['inside what stands before its entries', Buffer.from(bytes).indexOf('README.txt') + 20, 0],
    ['behind its entries', Buffer.from(bytes).indexOf(`${lines[last]}`) + 2000, null],
    ['at its very end', bytes.length - 1, null],
  ])('a file that is cut off %s', async (_, length, expected) => {
    const verdict = await verdictOn(bytes.slice(0, length));
    expect(verdict).toMatchObject({ kind: 'not intact', at: expected });
    if (verdict.kind === 'not intact') expect(verdict.why).toContain('cut off');
  });
  test('bytes behind its end', async () =>
    expect(await verdictOn(Buffer.concat([bytes, Buffer.from('more')]))).toMatchObject({
      at: null,
      why: 'something was added behind its end',
    }));
  test('a part that was changed in the packed file', async () => {
    const changed = Uint8Array.from(bytes);
    const place = Buffer.from(bytes).indexOf('approves nothing');
    changed[place] = 0x41;
    expect(await verdictOn(changed)).toMatchObject({
      at: null,
      why: '“README.txt” does not fit its header: it was changed after it was packed',
    });
  });
});

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
    expect(await whyRefused(large)).toContain('larger than 64 MiB');
  });
  test('more entries than a session has', async () =>
    expect(await whyRefused(repacked({ 'entries.jsonl': '1\n'.repeat(MOST_ENTRIES + 1) }))).toContain(
      `more than ${MOST_ENTRIES} entries`,
    ));
  test.each<[string, RegExp]>([
    [
      '{"format":"bothhands-session","session":"session","version":2}',
      /^Its format is version 2; .* newer program is needed/,
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
