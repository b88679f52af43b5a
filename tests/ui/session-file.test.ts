import 'fake-indexeddb/auto';
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { openRecordBook } from '../../src/storage/record-book.ts';
import type { EventBody } from '../../src/session/event.ts';
import { isFresh, readSession, startSession } from '../../src/ui/session-file.ts';
import { smallProcedure } from '../support/small-procedure.ts';

beforeAll(() => vi.stubGlobal('__APP_VERSION__', '9.9.9'));

const prepared: readonly EventBody[] = [
  { kind: 'prepared', fact: { of: 'helper', name: 'Helper' } },
  { kind: 'prepared', fact: { of: 'tool', tool: 'wrench', calibrationDue: '2027-01-31', from: 'label' } },
];
const begin = async () => {
  const book = openRecordBook();
  const people = { mechanic: 'Mechanic', second: null };
  const beginning = { people, sound: 'not agreed', model: null, device: null, prepared } as const;
  const id = await startSession(book, smallProcedure, beginning);
  return readSession(book, id);
};

describe('a session that begins', () => {
  test('has what was found before the work behind its opening, bound to it, by the mechanic', async () => {
    const record = await begin();
    expect(record.verification.kind).toBe('intact');
    expect(record.entries.map(({ body }) => body.kind)).toEqual(['opened', 'prepared', 'prepared']);
    expect(new Set(record.entries.map(({ person, source }) => `${person} by ${source}`))).toEqual(
      new Set(['Mechanic by touch']),
    );
  });
  test('is fresh as long as nothing else is in it: only then it is announced as new', async () => {
    const record = await begin();
    expect(isFresh(record)).toBe(true);
    const [last] = record.entries.slice(-1);
    if (!last) throw new Error('It is empty.');
    const later = {
      ...last,
      at: { ...last.at, monotonic: last.at.monotonic + 1 },
      body: { kind: 'stood by' },
    } as const;
    expect(isFresh({ ...record, entries: [...record.entries, later] })).toBe(false);
  });
});
