/** Records made in a test. */
import { readProcedure } from '../../src/procedure/procedure.ts';
import { canonical, seal, sha256, type Entry } from '../../src/record/entry.ts';
import { sealRecord, type Sealing, type SigningKey } from '../../src/record/seal.ts';
import { packSession } from '../../src/record/sealed-file.ts';
import { readSessionRecord, type SessionRecord } from '../../src/record/session-record.ts';
import type { EventBody, SessionEvent } from '../../src/session/event.ts';
import { fold } from '../../src/session/fold.ts';
import { eventOf, people, start, type Play } from '../session/play.ts';

export const sealAll = (events: readonly SessionEvent[], session = 'session'): Promise<readonly Entry[]> =>
  events.reduce<Promise<readonly Entry[]>>(async (sealed, event) => {
    const before = await sealed;
    return [...before, await seal(session, event, before.at(-1) ?? null)];
  }, Promise.resolve([]));

/** By whom and when records are sealed in tests. */
export const SEALING: Sealing = { app: 'Bothhands 9.9.9', at: '2026-03-01T12:00:00.000Z' };

/** An entry whose own hash fits its changed content, as someone would forge it. */
export async function rehashed(entry: Entry, change: object): Promise<Entry> {
  const { hash: _hash, ...open } = { ...entry, ...change };
  return { ...open, hash: await sha256(canonical(open)) };
}

/** The first event of a session that works by a procedure file. */
export const openedBy = async (procedure: unknown): Promise<Extract<EventBody, { kind: 'opened' }>> => ({
  kind: 'opened',
  format: 1,
  app: 'Bothhands',
  people,
  procedureHash: await sha256(canonical(procedure)),
  procedure,
});

/** A session of a procedure file from its opening on, so that entries point at one another by their own numbers. */
export async function opening(procedure: unknown): Promise<Play> {
  const loaded = readProcedure(procedure);
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults));
  const event = eventOf(await openedBy(procedure), 0);
  const begun = start(loaded.procedure);
  return { ...begun, state: fold(begun.state, event), events: [event] };
}

/** A session of its opening and of events that point at no other. */
export async function recordOf(procedure: unknown, events: readonly SessionEvent[]): Promise<readonly Entry[]> {
  const opening = eventOf(await openedBy(procedure), 0);
  return sealAll([opening, ...events.map((event) => ({ ...event, seq: event.seq + 1 }))]);
}

/** The session of a record that can be read. */
export async function recordIn(found: readonly unknown[], id = 'session'): Promise<SessionRecord> {
  const read = await readSessionRecord(id, found);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  return read.record;
}

/** A sealed file, and what went into it. */
export interface Packed {
  readonly entries: readonly Entry[];
  readonly record: SessionRecord;
  readonly seal: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A record sealed by a key and packed. */
export async function packed(entries: readonly Entry[], key: SigningKey): Promise<Packed> {
  const record = await recordIn(entries);
  const seal = await sealRecord(record, SEALING, key);
  return { entries, record, seal, bytes: packSession(record, seal) };
}
