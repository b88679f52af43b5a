/** A session as its record tells it: what can be trusted of it, and the state after any of its entries. */
import { readProcedure, type Procedure } from '../procedure/procedure.ts';
import type { People } from '../session/event.ts';
import { begin, fold } from '../session/fold.ts';
import { type SessionState } from '../session/state.ts';
import { recordFindings } from '../words/record-findings.ts';
import { canonical, sha256, verifyEntries, type Entry, type Verification } from './entry.ts';

export type Intact = Extract<Verification, { kind: 'intact' }>;
export type Broken = Extract<Verification, { kind: 'broken' }>;

/** A session that can be shown, as a whole or up to the entry where its record is broken. */
export interface SessionRecord {
  readonly id: string;
  /** The entries before the first fault: only these are ever folded. */
  readonly entries: readonly Entry[];
  /** How many entries were found, those after a fault among them. */
  readonly found: number;
  readonly verification: Verification;
  readonly procedure: Procedure;
  readonly people: People;
}

/** What came of reading a session. Where not even its beginning can be trusted, nothing of it can be shown. */
export type SessionRead =
  | { readonly kind: 'readable'; readonly record: SessionRecord }
  | { readonly kind: 'unreadable'; readonly id: string; readonly found: number; readonly verification: Broken };

/**
 * Reads a session from entries as they were found, on a disk or in a file. It never throws: what is wrong is named with
 * its place.
 */
export async function readSessionRecord(id: string, found: readonly unknown[]): Promise<SessionRead> {
  const unreadable = (why: string): SessionRead => ({
    kind: 'unreadable',
    id,
    found: found.length,
    verification: { kind: 'broken', at: 0, why },
  });
  const { verification, intact } = verifyEntries(found, id);
  const [first, ...rest] = intact;
  if (first === undefined)
    return unreadable(verification.kind === 'broken' ? verification.why : recordFindings.noEntries);
  const { body } = first;
  if (body.kind !== 'opened') return unreadable(recordFindings.notOpened);
  if ((await sha256(canonical(body.procedure))) !== body.procedureHash)
    return unreadable(recordFindings.otherProcedure);
  const loaded = readProcedure(body.procedure);
  if (loaded.kind === 'faulty') {
    const [fault] = loaded.faults;
    return unreadable(recordFindings.procedureUnreadable(fault?.path ?? '', fault?.message ?? ''));
  }
  const misplaced = firstMisplaced(rest);
  const record = { id, found: found.length, procedure: loaded.procedure, people: body.people };
  return {
    kind: 'readable',
    record:
      misplaced === null
        ? { ...record, entries: intact, verification }
        : { ...record, entries: intact.slice(0, misplaced.at), verification: { kind: 'broken', ...misplaced } },
  };
}

/** The first entry behind the opening that may not stand where it does, though it is bound as it should be. */
function firstMisplaced(rest: readonly Entry[]): { readonly at: number; readonly why: string } | null {
  let isClosed = false;
  let isBegun = false;
  for (const { seq, body } of rest) {
    if (body.kind === 'opened') return { at: seq, why: recordFindings.openedTwice };
    if (isClosed && isOfWork({ body })) return { at: seq, why: recordFindings.afterClosing };
    if (isBegun && body.kind === 'prepared') return { at: seq, why: recordFindings.preparedTooLate };
    isClosed ||= body.kind === 'closed';
    isBegun ||= body.kind !== 'prepared';
  }
  return null;
}

/** Whether an entry is of the work. Deleting sounds is none: the record of the work stays as it was closed. */
export const isOfWork = ({ body }: Pick<Entry, 'body'>): boolean => body.kind !== 'sounds deleted';

/**
 * The state after the first `count` entries: what the mechanic saw at that moment. Some states on the way are kept, so
 * that going forth folds each entry once, and going back folds a few again; keeping all of a long record would take
 * hundreds of megabytes.
 */
export function stateAfter(record: SessionRecord, count: number): SessionState {
  const walk = walks.get(record) ?? walkOf(record);
  walks.set(record, walk);
  const wanted = Math.max(0, Math.min(count, record.entries.length));
  const kept = Math.min(Math.floor(wanted / KEPT_EVERY), walk.kept.length - 1);
  let at = walk.last.count <= wanted ? Math.max(walk.last.count, kept * KEPT_EVERY) : kept * KEPT_EVERY;
  let state = at === walk.last.count ? walk.last.state : (walk.kept[kept] ?? walk.start);
  for (const entry of record.entries.slice(at, wanted)) {
    state = fold(state, entry);
    at += 1;
    if (at === walk.kept.length * KEPT_EVERY) walk.kept.push(state);
  }
  walk.last = { count: wanted, state };
  return state;
}

/** A state is kept after each so many entries. */
const KEPT_EVERY = 100;

interface Walk {
  readonly start: SessionState;
  /** The states after 0, `KEPT_EVERY`, twice as many entries and so on, as far as anybody went. */
  readonly kept: SessionState[];
  /** The one that was asked for last. */
  last: { readonly count: number; readonly state: SessionState };
}

const walks = new WeakMap<SessionRecord, Walk>();

function walkOf({ procedure, people }: SessionRecord): Walk {
  const start = begin(procedure, people);
  return { start, kept: [start], last: { count: 0, state: start } };
}
