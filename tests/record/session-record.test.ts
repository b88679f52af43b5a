import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSessionRecord, stateAfter, type SessionRecord } from '../../src/record/session-record.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { type SessionState } from '../../src/session/state.ts';
import { affirm, demo, eventOf, next, people, start, tell } from '../session/play.ts';
import { openedBy, recordOf, rehashed, sealAll } from './sealed.ts';

const file = new URL('../../demo-data/ropeway-oil-cooler.json', import.meta.url);
const procedure = JSON.parse(readFileSync(file, 'utf8')) as { readonly title: string };
const played = tell(start(demo()), affirm, affirm, next, next, affirm, affirm, next);
const found = await recordOf(procedure, played.events);
const read = (entries: readonly unknown[], id = 'session') => readSessionRecord(id, entries);

async function readable(entries: readonly unknown[]): Promise<SessionRecord> {
  const session = await read(entries);
  if (session.kind !== 'readable') throw new Error(session.verification.why);
  return session.record;
}

describe('a session that is intact', () => {
  test('is read whole, with its procedure and its people', async () => {
    const record = await readable(found);
    expect(record.verification).toMatchObject({ kind: 'intact', entries: found.length });
    expect(record.entries).toEqual(found);
    expect(record.people).toEqual(people);
    expect(record.procedure.title).toBe(procedure.title);
  });
  test('stands where it stood while it was worked', async () => {
    const record = await readable(found);
    expect(stateAfter(record, found.length)).toEqual({ ...played.state, day: '2026-03-01' });
  });
  test('is replayed by the fold, stopped anywhere and asked for in any order', async () => {
    const counts = fc.array(fc.integer({ min: 0, max: found.length }), { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(counts, async (order) => {
        const record = await readable(found);
        for (const count of order) {
          const start = begin(record.procedure, record.people);
          const folded = found.slice(0, count).reduce<SessionState>(fold, start);
          expect(stateAfter(record, count)).toEqual(folded);
        }
      }),
      { numRuns: 30 },
    );
  });
  test('folds each entry once', async () => {
    const record = await readable(found);
    expect(stateAfter(record, 4)).toBe(stateAfter(record, 4));
  });
});

describe('a session that is broken', () => {
  test('can be shown up to the break, and no further', async () => {
    const forged = found.map((entry) => (entry.seq === 4 ? { ...entry, person: 'Somebody else' } : entry));
    const record = await readable(forged);
    expect(record.verification).toMatchObject({ kind: 'broken', at: 4 });
    expect(record.entries).toEqual(found.slice(0, 4));
    expect(record.found).toBe(found.length);
    expect(stateAfter(record, found.length)).toEqual(stateAfter(record, 4));
  });
  test('where it says in the middle of the work what was found before it: settings would change unseen', async () => {
    const fact = { of: 'tool', tool: 'wrench-60', calibrationDue: '2099-12-31', from: 'label' } as const;
    const bodies = [await openedBy(procedure), { kind: 'prepared', fact } as const, { kind: 'stood by' } as const];
    const events = [...bodies, { kind: 'prepared', fact } as const].map(eventOf);
    expect((await readable(await sealAll(events.slice(0, -1)))).verification.kind).toBe('intact');
    expect((await readable(await sealAll(events))).verification).toEqual({
      kind: 'broken',
      at: 3,
      why: 'it says what was found before the work, and the work had begun',
    });
  });
  test('where it is opened a second time', async () => {
    const opening = await openedBy(procedure);
    const record = await readable(
      await sealAll([eventOf(opening, 0), eventOf(opening, 1), eventOf({ kind: 'closed' }, 2)]),
    );
    expect(record.verification).toEqual({ kind: 'broken', at: 1, why: 'the session is opened a second time' });
    expect(record.entries.length).toBe(1);
  });
});

describe('a session of which nothing can be shown says why', async () => {
  const why = async (entries: readonly unknown[], id = 'session'): Promise<string> => {
    const session = await read(entries, id);
    if (session.kind === 'readable') throw new Error('It was read.');
    expect(session).toMatchObject({ found: entries.length, verification: { kind: 'broken', at: 0 } });
    return session.verification.why;
  };
  const [first] = found;
  if (!first) throw new Error('The record is too short.');
  const opened = await openedBy(procedure);

  test('it is empty', async () => expect(await why([])).toBe('it has no entries'));
  test.each([null, 7, 'entry', [], {}, { kind: 'opened' }])('its first entry is %j', async (entry) =>
    expect(await why([entry, ...found.slice(1)])).toMatch(/^not an entry of a record/),
  );
  test('it lies under the name of another session', async () =>
    expect(await why(found, 'another')).toBe('it belongs to another session'));
  test('it begins with something else', async () =>
    expect(await why(await sealAll([eventOf({ kind: 'closed' }, 0)]))).toBe('a session begins by being opened'));
  test('it has no people', async () => {
    const { people: _people, ...body } = opened;
    expect(await why([await rehashed(first, { body })])).toMatch(/^what it says cannot be read: body\.people /);
  });
  test('its procedure is not the one whose hash it states', async () => {
    const body = { ...opened, procedure: { ...procedure, title: 'Another title' } };
    expect(await why([await rehashed(first, { body })])).toBe(
      'the procedure in it is not the one whose hash it states',
    );
  });
  test('its procedure cannot be read', async () => {
    const body = await openedBy({ ...procedure, title: '' });
    expect(await why([await rehashed(first, { body })])).toMatch(/^the procedure in it cannot be read: title: /);
  });
});
