/** Deletes the sounds of a session for good. Their hashes stay in the record, and so does the entry that says who did it. */
import { seal } from '../record/entry.ts';
import { deletedSounds, namedSounds } from '../record/sounds.ts';
import { readSessionRecord, type SessionRecord } from '../record/session-record.ts';
import { takePen, type Pen } from '../storage/pen.ts';
import type { RecordBook } from '../storage/record-book.ts';
import type { SoundStore } from '../storage/sound-store.ts';
import { now } from './clock.ts';
import { sealOnDevice } from './device-seal.ts';

export interface Deletion {
  readonly book: Pick<RecordBook, 'read' | 'append'>;
  readonly sounds: Pick<SoundStore, 'hashes' | 'remove'>;
  readonly pen?: (session: string) => Promise<Pen | null>;
  /** Makes the seal of a closed record anew, so that it covers the deletion as well. */
  readonly reseal?: typeof sealOnDevice;
}

/**
 * The entry comes first: after it a power cut leaves sounds that are deleted by the record, and `finishDeletion` takes
 * them away.
 * @param person who deletes them
 * @returns how many were deleted
 * @throws where another window writes this session, or its record is broken: a broken record is left as it is
 */
export async function deleteSounds(
  session: string,
  person: string,
  { book, sounds, pen = takePen, reseal = sealOnDevice }: Deletion,
): Promise<number> {
  const held = await pen(session);
  if (held === null) throw new Error('Another window works on this session. Close it first.');
  try {
    const read = await readSessionRecord(session, await book.read(session));
    const record = read.kind === 'readable' ? read.record : null;
    const last = record?.entries.at(-1);
    if (!record || !last || record.verification.kind === 'broken')
      throw new Error('Its record is broken: nothing more is written to it.');
    const there = soundsLeft(record, await sounds.hashes(session));
    if (there.length > 0) {
      const body = { kind: 'sounds deleted', sounds: there } as const;
      const event = { seq: last.seq + 1, at: now(), source: 'touch', person, heard: null, body } as const;
      const entry = await seal(session, last.device === undefined ? event : { ...event, device: last.device }, last);
      await book.append([entry]);
      await sounds.remove(session, there);
      if (record.entries.some(({ body: { kind } }) => kind === 'closed'))
        await reseal(session, [...record.entries, entry]);
    }
    return there.length;
  } finally {
    held.release();
  }
}

/** The sounds that a record names as kept and that are there, by their hashes. */
export function soundsLeft({ entries }: Pick<SessionRecord, 'entries'>, there: readonly string[]): readonly string[] {
  const deleted = deletedSounds(entries);
  const named = namedSounds(entries).map(({ sha256 }) => sha256);
  return named.filter((sha256) => !deleted.has(sha256) && there.includes(sha256));
}

/** Takes away what the record says was deleted and is still there: the page was closed in between. */
export async function finishDeletion(
  { id, entries }: Pick<SessionRecord, 'id' | 'entries'>,
  sounds: Pick<SoundStore, 'hashes' | 'remove'>,
): Promise<void> {
  const deleted = deletedSounds(entries);
  const left = deleted.size === 0 ? [] : (await sounds.hashes(id)).filter((sha256) => deleted.has(sha256));
  if (left.length > 0) await sounds.remove(id, left);
}
