import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical, GENESIS, verify, verifyEntries, type Entry } from '../../src/record/entry.ts';
import { affirm, correction, newtonMetres, procedureOf, reading, start, step, tell, tighten } from '../session/play.ts';
import { rehashed, sealAll } from './sealed.ts';

const played = tell(
  start(procedureOf([tighten('ring'), step('clean', 'do')])),
  ...[reading('24'), affirm, reading('24', 9), reading('30', 3), correction('25'), affirm],
);
const record = await sealAll(played.events);
const last = record.length - 1;
const basis = record[0]?.body.kind === 'reading captured' ? record[0].body.basis : null;

/** The record with one entry changed. */
const changed = (at: number, change: (entry: Entry) => unknown): readonly unknown[] =>
  record.map((entry, i) => (i === at ? change(entry) : entry));
describe('a record as it was written', () => {
  test('is intact, and names its last hash', () =>
    expect(verify(record)).toEqual({ kind: 'intact', entries: record.length, head: record[last]?.hash }));
  test('is intact after it went through a file', () =>
    expect(verify(JSON.parse(JSON.stringify(record)) as unknown[])).toMatchObject({ kind: 'intact' }));
  test('is intact in whatever order a file writes the keys of an entry', () => {
    const turned = record.map((entry) => Object.fromEntries(Object.entries(entry).reverse()));
    expect(verify(turned)).toMatchObject({ kind: 'intact' });
  });
  test('may be empty', () => expect(verify([])).toEqual({ kind: 'intact', entries: 0, head: GENESIS }));
  test('binds each entry to the one before it', () => {
    expect(record[0]?.prev).toBe(GENESIS);
    for (const [i, entry] of record.entries()) if (i > 0) expect(entry.prev).toBe(record[i - 1]?.hash);
  });
});

describe('a record that was tampered with is broken, and the entry is named', () => {
  const CONTENT = 'its content was changed after it was written';
  const FOLLOWS = 'it does not follow from the entry before it';
  const numbered = (seq: number) => `its number is ${seq}: an entry is missing, doubled or out of its place`;

  test('a changed value', () => {
    const forged = changed(3, (entry) => ({
      ...entry,
      body: { ...entry.body, reading: { value: '24.5', unit: 'N·m' } },
    }));
    expect(verify(forged)).toEqual({ kind: 'broken', at: 3, why: CONTENT });
  });
  test.each<[string, (entry: Entry) => unknown]>([
    ['person', (entry) => ({ ...entry, person: 'Somebody else' })],
    ['time', (entry) => ({ ...entry, at: { ...entry.at, utc: '2026-03-02T00:00:00.000Z' } })],
    ['source', (entry) => ({ ...entry, source: 'key' })],
    ['words', (entry) => ({ ...entry, heard: { text: 'affirm', words: [] } })],
    ['hash', (entry) => ({ ...entry, hash: GENESIS })],
  ])('a changed %s', (_, change) =>
    expect(verify(changed(2, change))).toEqual({ kind: 'broken', at: 2, why: CONTENT }),
  );
  test('a field that was added', () =>
    expect(verify(changed(2, (entry) => ({ ...entry, note: 'all well' })))).toMatchObject({
      at: 2,
      why: CONTENT,
    }));
  test.each(['constructor', 'toString', '__proto__'])('a field that was added under the name %s', (name) => {
    const forged = JSON.parse(
      JSON.stringify(record[2]).replace('"body":{', `"body":{"${name}":"all well",`),
    ) as unknown;
    expect(verify(record.with(2, forged as Entry))).toMatchObject({ at: 2, why: CONTENT });
  });
  test('text that no JSON can hold', () =>
    expect(verify(changed(2, (entry) => ({ ...entry, person: '\ud800' })))).toMatchObject({
      at: 2,
      why: CONTENT,
    }));
  test('an entry that was dropped', () =>
    expect(verify(record.toSpliced(2, 1))).toEqual({ kind: 'broken', at: 2, why: numbered(3) }));
  test('an entry that was doubled', () =>
    expect(verify([...record.slice(0, 3), ...record.slice(2)])).toEqual({
      kind: 'broken',
      at: 3,
      why: numbered(2),
    }));
  test('entries that were put in another order', () => {
    const [first, second, third, ...rest] = record;
    expect(verify([first, third, second, ...rest])).toEqual({ kind: 'broken', at: 1, why: numbered(2) });
  });
  test('an entry that was dropped and the rest numbered anew', () => {
    const renumbered = record.toSpliced(2, 1).map((entry, seq) => ({ ...entry, seq }));
    expect(verify(renumbered)).toEqual({ kind: 'broken', at: 2, why: FOLLOWS });
  });
  test('an entry that was written anew with its own hash', async () => {
    const [, , entry] = record;
    if (!entry) throw new Error('The record is too short.');
    const forged = record.with(2, await rehashed(entry, { person: 'Somebody else' }));
    expect(verify(forged)).toEqual({ kind: 'broken', at: 3, why: FOLLOWS });
  });
  test('a beginning that was cut off', () =>
    expect(verify(record.slice(1))).toEqual({ kind: 'broken', at: 0, why: numbered(1) }));
  test('an entry of another session', async () => {
    const other = await sealAll(played.events, 'other session');
    expect(verify([...record.slice(0, 3), ...other.slice(3)])).toEqual({
      kind: 'broken',
      at: 3,
      why: 'it belongs to another session',
    });
  });
  test.each<[string, unknown, string]>([
    ['nothing', null, ''],
    ['text', 'entry', ''],
    ['a list', [], 'v'],
    ['an empty entry', {}, 'v'],
    ['another version', { ...record[2], v: 99 }, 'v'],
    ['no time', { ...record[2], at: undefined }, 'at'],
    ['half a time', { ...record[2], at: { utc: '2026-03-01T00:00:00.000Z' } }, 'at.monotonic'],
    ['a time that is none', { ...record[2], at: { utc: 'yesterday', monotonic: 1 } }, 'at.utc'],
    ['a number that is none', { ...record[2], seq: '2' }, 'seq'],
    ['a source that is none', { ...record[2], source: 'telepathy' }, 'source'],
    ['no body', { ...record[2], body: null }, 'body'],
    ['half a hash', { ...record[2], hash: 'abc' }, 'hash'],
  ])('%s in place of an entry', (_, found, path) => {
    const verification = verify(record.with(2, found as Entry));
    expect(verification).toMatchObject({ kind: 'broken', at: 2 });
    if (verification.kind === 'broken')
      expect(verification.why).toMatch(new RegExp(`^not an entry of a record: ${path} (Expected .+, f|F)ound `));
  });

  test.each<[string, object, string]>([
    ['a kind that is none', { kind: 'approved' }, 'body.kind'],
    ['a verdict that is none', { ...record[0]?.body, verdict: 'good enough' }, 'body.verdict'],
    ['a value that is none', { ...record[0]?.body, reading: { value: '24,5', unit: 'N·m' } }, 'body.reading.value'],
    ['a unit that is none', { ...record[0]?.body, reading: { value: '24.5', unit: 'Nm' } }, 'body.reading.unit'],
    ['no basis', { ...record[0]?.body, basis: undefined }, 'body.basis'],
    [
      'a window of what is no value',
      { ...record[0]?.body, basis: { ...basis, window: { min: newtonMetres('low'), max: newtonMetres('23') } } },
      'body.basis.window.min.value',
    ],
    [
      'a window that is crossed',
      { ...record[0]?.body, basis: { ...basis, window: { min: newtonMetres('26'), max: newtonMetres('23') } } },
      'body.basis.window',
    ],
    ['a field too many', { ...record[0]?.body, note: 'all well' }, 'body.note'],
  ])('an event with %s, whose hash fits', async (_, body, path) => {
    const [first, ...rest] = record;
    if (!first) throw new Error('The record is too short.');
    // As JSON: a field that is undefined is a field that is missing.
    const forged = await rehashed(first, JSON.parse(JSON.stringify({ body })) as object);
    const verification = verify([forged, ...rest]);
    expect(verification).toMatchObject({ kind: 'broken', at: 0 });
    if (verification.kind === 'broken') expect(verification.why).toMatch(`what it says cannot be read: ${path} `);
  });

  test('and only the entries before it are given', () => {
    const { intact } = verifyEntries(changed(3, (entry) => ({ ...entry, person: 'Somebody else' })));
    expect(intact).toEqual(record.slice(0, 3));
  });
  test('any one change of any entry', () => {
    fc.assert(
      fc.property(
        fc.nat(last),
        fc.nat(),
        fc.jsonValue(),
        fc.constantFrom('replace', 'remove', 'add'),
        (at, place, value, how) => {
          const forged = record.map((entry): unknown => structuredClone(entry));
          fc.pre(tamper(forged[at], place, value, how));
          fc.pre(canonical(forged[at]) !== canonical(record[at]));
          expect(verify(forged)).toMatchObject({ kind: 'broken', at });
        },
      ),
      { numRuns: 1000 },
    );
  });
});

describe('what a chain on one device cannot prove', () => {
  // Stated as tests, so that nobody believes more of it: these want a copy of a later hash in another place.
  test('that its end was not cut off', () =>
    expect(verify(record.slice(0, -1))).toMatchObject({ kind: 'intact', entries: last }));
  test('that it was not written anew from some entry to its end', async () => {
    const forged = played.events.map((event) => (event.seq < 3 ? event : { ...event, person: 'Somebody else' }));
    const verification = verify(await sealAll(forged));
    expect(verification).toMatchObject({ kind: 'intact' });
    if (verification.kind === 'intact') expect(verification.head).not.toBe(record[last]?.hash);
  });
});

/** Changes one place somewhere inside a value; false where there is nothing to change. */
function tamper(inside: unknown, place: number, value: unknown, how: 'replace' | 'remove' | 'add'): boolean {
  const objects = objectsIn(inside);
  const target = objects[place % objects.length];
  if (!target) return false;
  const keys = Object.keys(target);
  const key = keys[Math.floor(place / objects.length) % keys.length];
  if (how === 'add') target['added'] = value;
  else if (key === undefined) return false;
  else if (how === 'remove') delete target[key];
  else target[key] = value;
  return true;
}

function objectsIn(value: unknown): readonly Record<string, unknown>[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value as Record<string, unknown>, ...Object.values(value).flatMap(objectsIn)];
}
