import { describe, expect, test } from 'vitest';
import { packParts, PARTS } from '../../src/record/container.ts';
import type { Entry } from '../../src/record/entry.ts';
import { openSessionFile, packSession } from '../../src/record/sealed-file.ts';
import { stateAfter } from '../../src/record/session-record.ts';
import { eventOf } from '../session/play.ts';
import { packed, recordIn, recordOf, rehashed } from './sealed.ts';
import {
  bytes,
  entries,
  key,
  last,
  lines,
  NOW,
  open,
  parts,
  played,
  procedure,
  record,
  repacked,
  seal,
  textOf,
  verdictOn,
  withEntries,
  withLines,
} from './sealed-demo.ts';

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
    expect(JSON.parse(textOf('format.json'))).toEqual({ format: 'bothhands-session', version: 2, session: 'session' });
    expect(textOf('README.txt')).toContain('Format version 2.');
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
      why: 'the seal: the entries are not those that were sealed: they were rewritten',
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
      why: 'it has no seal: whether it was cut off or rewritten cannot be told',
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
      why: 'something was added after its end',
    }));
  test('a part that was changed in the packed file', async () => {
    const changed = Uint8Array.from(bytes);
    const place = Buffer.from(bytes).indexOf('approves nothing');
    changed[place] = 0x41;
    expect(await verdictOn(changed)).toMatchObject({
      at: null,
      why: '“README.txt” does not match its header: it was changed after it was packed',
    });
  });
});
