/** Sessions for a fleet, made by the real session room: who works in them says what a test wants, when it wants. */
import { readProcedure } from '../../../src/procedure/procedure.ts';
import { canonical, seal, sha256, type Entry } from '../../../src/record/entry.ts';
import { sealRecord } from '../../../src/record/seal.ts';
import { packSession } from '../../../src/record/sealed-file.ts';
import { readSessionRecord } from '../../../src/record/session-record.ts';
import { decide } from '../../../src/session/decide.ts';
import type { EventBody } from '../../../src/session/event.ts';
import { begin, fold } from '../../../src/session/fold.ts';
import type { Instant, Meaning } from '../../../src/session/intent.ts';
import { currentCall, pendingReading, type SessionState } from '../../../src/session/state.ts';
import { makeKey } from '../../record/keys.ts';
import { SEALING } from '../../record/sealed.ts';
import { openly } from '../../session/anything.ts';
import { people } from '../../session/play.ts';

/** What is said, and how many seconds after what was said before. */
export interface Said {
  readonly meaning: Meaning;
  readonly after: number;
}

export interface Script {
  readonly session: string;
  /** A procedure file. */
  readonly procedure: unknown;
  readonly begins: Date;
  /** What is said out of the ordinary at a fastener that is called, first to last; everything else is as the job wants it. */
  readonly at: (pass: number, fastener: number) => readonly Said[];
}

const USUALLY_AFTER = 20;

/** Plays a session to its end. */
export async function madeSession({ session, procedure, begins, at }: Script): Promise<readonly Entry[]> {
  const loaded = readProcedure(procedure);
  if (loaded.kind === 'faulty') throw new Error(JSON.stringify(loaded.faults));
  const entries: Entry[] = [];
  let state = begin(loaded.procedure, people);
  let seconds = 0;
  const moment = (): Instant => ({
    utc: new Date(begins.getTime() + seconds * 1000).toISOString(),
    monotonic: seconds * 1000,
  });
  const write = async (body: EventBody): Promise<void> => {
    const event = {
      source: 'voice',
      person: people.mechanic,
      heard: null,
      body,
      seq: entries.length,
      at: moment(),
    } as const;
    entries.push(await seal(session, event, entries.at(-1) ?? null));
    state = fold(state, event);
  };
  const procedureHash = await sha256(canonical(procedure));
  await write({ kind: 'opened', format: 1, app: 'Bothhands', people, procedureHash, procedure });
  const seen = new Set<string>();
  let next: readonly Said[] = [];
  while (state.phase !== 'closed') {
    if (next.length === 0) next = newlyCalled(state, seen, at);
    const [said = { meaning: openly(state), after: USUALLY_AFTER }, ...rest] = next;
    next = rest;
    seconds += said.after;
    const decision = decide(state, { meaning: said.meaning, at: moment() });
    const bodies: readonly EventBody[] =
      decision.kind === 'accepted'
        ? decision.events
        : [{ kind: 'refused', meaning: said.meaning, reason: decision.reason }];
    for (const body of bodies) await write(body);
  }
  return entries;
}

function newlyCalled(state: SessionState, seen: Set<string>, at: Script['at']): readonly Said[] {
  const call = currentCall(state);
  if (!call || pendingReading(state) || state.phase !== 'working' || state.breakOf !== null) return [];
  const key = `${state.at}/${call.pass.index}/${call.fastener}`;
  if (seen.has(key)) return [];
  seen.add(key);
  return at(call.pass.index, call.fastener);
}

export const key = await makeKey();

/** A sealed file of entries. */
export async function sealedFile(entries: readonly Entry[]): Promise<Uint8Array> {
  const read = await readSessionRecord(entries[0]?.session ?? '', entries);
  if (read.kind === 'unreadable') throw new Error(read.verification.why);
  return packSession(read.record, await sealRecord(read.record, SEALING, key));
}

export const value = (text: string, after = USUALLY_AFTER): Said => ({
  meaning: { kind: 'reading', reading: { fastener: null, value: text } },
  after,
});
export const says = (
  kind: 'affirm' | 'negative' | 'silence' | 'stand by' | 'continue' | 'reopen',
  after = 4,
): Said => ({
  meaning: { kind },
  after,
});
