import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoEntries } from '../../src/cli/demo-session.ts';
import { ENTRY_SCHEMA_FILE, entrySchemaText } from '../../src/cli/entry-schema.ts';
import type { Entry } from '../../src/record/entry.ts';
import { fits, type Node } from '../support/json-schema.ts';

const published = JSON.parse(readFileSync(ENTRY_SCHEMA_FILE, 'utf8')) as Node;

it('the published form of an entry is what the program lets in; if not: npm run schema', async () =>
  expect(readFileSync(ENTRY_SCHEMA_FILE, 'utf8')).toBe(await entrySchemaText()));

describe('by the published schema alone', () => {
  let entries: readonly Entry[];
  let reading: Entry;
  beforeAll(async () => {
    entries = await demoEntries();
    const found = entries.find(({ body }) => body.kind === 'reading captured');
    if (!found) throw new Error('The demonstration has no reading.');
    reading = found;
  });

  it('every entry of the demonstration is one', () => {
    expect(new Set(entries.map(({ body }) => body.kind)).size).toBeGreaterThan(12);
    expect(entries.filter((entry) => !fits(entry, published))).toEqual([]);
  });

  it.each([
    ['a field that is not known', (entry: Entry) => ({ ...entry, note: '' })],
    ['a body of an unknown kind', (entry: Entry) => ({ ...entry, body: { ...entry.body, kind: 'reading guessed' } })],
    [
      'a value that is a number',
      (entry: Entry) => ({ ...entry, body: { ...entry.body, reading: newtonMetres(24.5) } }),
    ],
    ['a value with a comma', (entry: Entry) => ({ ...entry, body: { ...entry.body, reading: newtonMetres('24,5') } })],
    [
      'a unit that is none',
      (entry: Entry) => ({ ...entry, body: { ...entry.body, reading: { value: '1', unit: 'Nm' } } }),
    ],
    ['a hash that is cut off', (entry: Entry) => ({ ...entry, hash: entry.hash.slice(1) })],
    ['no time', ({ at: _at, ...entry }: Entry) => entry],
  ])('%s is none', (_, change) => expect(fits(change(reading), published)).toBe(false));
});

const newtonMetres = (value: unknown) => ({ value, unit: 'N·m' });
