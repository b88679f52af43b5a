import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { demoEntries, DEMO_SESSION_FILE } from '../../src/cli/demo-session.ts';
import { verify } from '../../src/record/entry.ts';
import { readingMatrices } from '../../src/record/reading-matrix.ts';
import { openSessionFile } from '../../src/record/sealed-file.ts';
import { stateAfter } from '../../src/record/session-record.ts';

const opened = await openSessionFile(new Uint8Array(readFileSync(DEMO_SESSION_FILE)), {
  now: '2026-04-01T00:00:00.000Z',
});
if (opened.kind === 'refused' || opened.session.kind === 'unreadable')
  throw new Error('The demonstration was not opened.');
const { record } = opened.session;

describe('the demonstration session', () => {
  test('is intact, and its work is closed', () => {
    expect(opened.verdict).toMatchObject({ kind: 'intact', closedAt: record.entries.at(-1)?.at.utc });
    expect(stateAfter(record, record.entries.length).phase).toBe('closed');
  });
  test('is of invented people on an invented procedure', () => {
    expect(record.procedure.invented).toBe(true);
    for (const person of [record.people.mechanic, record.people.second]) expect(person).toMatch(/\(invented\)$/);
  });
  test('has every fastener settled in every pass', () => {
    const cells = readingMatrices(stateAfter(record, record.entries.length)).flatMap(({ rows }) =>
      rows.flatMap((row) => row.cells),
    );
    expect(cells.length).toBe(20 + 3 + 12);
    for (const cell of cells)
      expect(cell?.kind === 'read' ? cell.reading.verdict : cell?.kind).toMatch(/^(in|by hand)$/);
  });
  test('has what an auditor looks for: a rejection, a correction, a refusal, a deviation, a pause', () => {
    const kinds = new Set(record.entries.map(({ body }) => body.kind));
    for (const kind of ['reading rejected', 'refused', 'deviation reported', 'stood by', 'step witnessed'] as const)
      expect(kinds).toContain(kind);
  });
  test('is what its script still plays: whole and to the end', async () => {
    const entries = await demoEntries();
    expect(verify(entries)).toMatchObject({ kind: 'intact' });
    expect(entries.at(-1)?.body.kind).toBe('closed');
  });
});
