import { readProcedure, type Procedure } from '../procedure/procedure.ts';
import { canonical, seal, sha256, verify, type Entry, type Verification } from '../record/entry.ts';
import type { EventBody, People, SessionEvent } from '../session/event.ts';
import { begin, fold, type SessionState } from '../session/state.ts';
import type { RecordBook } from '../storage/record-book.ts';
import { now } from './clock.ts';

/** A session as its record tells it. */
export interface KeptSession {
  readonly id: string;
  readonly entries: readonly Entry[];
  readonly verification: Verification;
  readonly procedure: Procedure;
  readonly people: People;
}

/** Why a kept session cannot be shown. */
export class Unreadable extends Error {
  override readonly name = 'Unreadable';
}

/** Begins a session: its first entry carries the procedure itself. Settles when that entry is on disk. */
export async function startSession(book: RecordBook, procedureJson: unknown, people: People): Promise<string> {
  const at = now();
  const session = `${at.utc.replace(/[:.]/g, '-')}-${crypto.randomUUID().slice(0, 8)}`;
  const body: EventBody = {
    kind: 'opened',
    format: 1,
    app: `Bothhands ${__APP_VERSION__}`,
    people,
    procedureHash: await sha256(canonical(procedureJson)),
    procedure: procedureJson,
  };
  const event: SessionEvent = { seq: 0, at, source: 'touch', person: people.mechanic, heard: null, body };
  await book.append([await seal(session, event, null)]);
  return session;
}

/** Reads a session and verifies it. @throws Unreadable where there is no session or its first entry is no beginning */
export async function readSession(book: RecordBook, id: string): Promise<KeptSession> {
  const entries = await book.read(id);
  const first = entries[0]?.body;
  if (first?.kind !== 'opened') throw new Unreadable(`There is no session ${id} on this device.`);
  const loaded = readProcedure(first.procedure);
  if (loaded.kind === 'faulty') {
    const [fault] = loaded.faults;
    throw new Unreadable(`The procedure in this record cannot be read: ${fault?.path ?? ''}: ${fault?.message ?? ''}`);
  }
  return { id, entries, verification: await verify(entries), procedure: loaded.procedure, people: first.people };
}

/** The state after the first `count` entries: what the mechanic saw at that moment. */
export function stateAfter({ procedure, people, entries }: KeptSession, count: number): SessionState {
  return entries.slice(0, count).reduce<SessionState>(fold, begin(procedure, people));
}
