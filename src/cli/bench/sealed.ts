/** Sealed files for measuring, of sessions that were worked through. */
import { canonical, seal, sha256, type Entry } from '../../record/entry.ts';
import { sealRecord, type SigningKey } from '../../record/seal.ts';
import { packSession } from '../../record/sealed-file.ts';
import { readSessionRecord } from '../../record/session-record.ts';
import type { SessionEvent } from '../../session/event.ts';
import { ring, workedThrough } from './ring.ts';

const APP = 'Bothhands bench';

export const makeKey = (): Promise<SigningKey> =>
  crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']);

/** The events of a session on a ring of so many studs, with its opening. */
export async function eventsOf(studs: number): Promise<readonly SessionEvent[]> {
  const procedure = ring(studs);
  const people = { mechanic: 'A', second: null };
  const procedureHash = await sha256(canonical(procedure));
  const at = { utc: '2026-03-01T00:00:00.000Z', monotonic: 0 };
  const body = { kind: 'opened', format: 1, app: APP, people, procedureHash, procedure } as const;
  const opened = { seq: 0, at, source: 'touch', person: 'A', heard: null, body } as const;
  const { events } = workedThrough(studs);
  // Each names the one that it is about by its number, and the opening comes before them all.
  const later = events.map((event) => ({ ...event, seq: event.seq + 1, body: shifted(event.body) }));
  return [opened, ...later];
}

const shifted = (body: SessionEvent['body']): SessionEvent['body'] =>
  'of' in body ? { ...body, of: body.of + 1 } : body;

/** Seals events into a record, and tells how long each took, in milliseconds. */
export async function entriesOf(
  events: readonly SessionEvent[],
  session: string,
): Promise<{ readonly entries: readonly Entry[]; readonly took: readonly number[] }> {
  const entries: Entry[] = [];
  const took: number[] = [];
  for (const event of events) {
    const from = performance.now();
    entries.push(await seal(session, event, entries.at(-1) ?? null));
    took.push(performance.now() - from);
  }
  return { entries, took };
}

/** A sealed file of entries. */
export async function fileOf(entries: readonly Entry[], session: string, key: SigningKey): Promise<Uint8Array> {
  const read = await readSessionRecord(session, entries);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  return packSession(read.record, await sealRecord(read.record, { app: APP, at: '2026-03-01T12:00:00.000Z' }, key));
}
