import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openSessionFile } from '../../src/record/sealed-file.ts';
import { stateAfter } from '../../src/record/session-record.ts';
import type { SessionState } from '../../src/session/state.ts';
import { begin, fold } from '../../src/session/fold.ts';
import { makeKey } from './keys.ts';
import { anySession } from './random-sessions.ts';
import { packed, sealAll } from './sealed.ts';

const key = await makeKey();

describe('any session, sealed and opened again', () => {
  test('is intact, and its replay is the fold that ran live: after each entry the same state', async () => {
    await fc.assert(
      fc.asyncProperty(anySession, async ({ events, state }) => {
        const entries = await sealAll(events);
        const { bytes } = await packed(entries, key);
        const opened = await openSessionFile(bytes, { now: '2026-03-02T00:00:00.000Z' });
        if (opened.kind === 'refused' || opened.session.kind === 'unreadable') throw new Error('It was not opened.');
        const { record } = opened.session;
        expect(opened.verdict).toMatchObject({ kind: 'intact', entries: events.length });
        expect(record.entries).toEqual(entries);
        let live: SessionState = begin(record.procedure, record.people);
        for (const [i, event] of events.entries()) {
          live = fold(live, event);
          expect(stateAfter(record, i + 1)).toEqual(live);
        }
        expect(live).toEqual(state);
      }),
      { numRuns: 60 },
    );
  });
});
