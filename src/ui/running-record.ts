import { batch, createSignal, type Accessor } from 'solid-js';
import { seal, type Entry } from '../record/entry.ts';
import type { EventBody, SessionEvent } from '../session/event.ts';
import { fold } from '../session/fold.ts';
import type { SessionState } from '../session/state.ts';
import type { RecordBook } from '../storage/record-book.ts';
import { now } from './clock.ts';
import { stateAfter, type KeptSession } from './session-file.ts';

/** The record of a session that is being worked, and where the work stands by it. */
export interface RunningRecord {
  readonly entries: Accessor<readonly Entry[]>;
  readonly state: Accessor<SessionState>;
  /**
   * Seals and writes all that follows from one input: together, or not at all. It is not shown yet.
   * @throws Error when it cannot be written
   */
  write(bodies: readonly EventBody[], of: Pick<SessionEvent, 'source' | 'person' | 'heard'>): Promise<readonly Entry[]>;
  /** Shows what is on disk: list and state at once. */
  show(written: readonly Entry[]): void;
}

/** @param device thumbprint of its key, as it goes into each entry; undefined where it keeps none */
export function createRunningRecord(
  kept: KeptSession,
  book: Pick<RecordBook, 'append'>,
  device: string | undefined,
): RunningRecord {
  const [entries, setEntries] = createSignal(kept.entries);
  const [state, setState] = createSignal(stateAfter(kept, kept.entries.length));
  return {
    entries,
    state,
    async write(bodies, { source, person, heard }) {
      const sealed: Entry[] = [];
      for (const body of bodies) {
        const last = sealed.at(-1) ?? entries().at(-1) ?? null;
        const event = { seq: (last?.seq ?? -1) + 1, at: now(), source, person, heard, body };
        sealed.push(await seal(kept.id, device === undefined ? event : { ...event, device }, last));
      }
      await book.append(sealed);
      return sealed;
    },
    show: (written) =>
      batch(() => {
        setEntries([...entries(), ...written]);
        setState(written.reduce<SessionState>(fold, state()));
      }),
  };
}
