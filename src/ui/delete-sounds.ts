/** Deletes the sounds of a session for good. Their hashes stay in the record, and so does the entry that says who did it. */
import { seal } from '../record/entry.ts';
import { deletedSounds, namedSounds } from '../record/sounds.ts';
import { readSessionRecord, type SessionRecord } from '../record/session-record.ts';
import { takePen, type Pen } from '../storage/pen.ts';
import type { RecordBook } from '../storage/record-book.ts';
import type { SoundStore } from '../storage/sound-store.ts';
import { keptSounds } from '../words/kept-sounds.ts';
import { now } from './clock.ts';

export interface Deletion {
  readonly book: Pick<RecordBook, 'read' | 'append'>;
  readonly sounds: Pick<SoundStore, 'hashes' | 'remove'>;
  readonly pen?: (session: string) => Promise<Pen | null>;
}

/**
 * The entry comes first: after it a power cut leaves sounds that are deleted by the record, and `removeStrays` takes them
 * away. The seal of a closed record stays that of its closing: deletions may follow what it covers.
 * @param person who deletes them
 * @returns how many were deleted
 * @throws where another window writes this session, or its record is broken: a broken record is left as it is
 */
export async function deleteSounds(
  session: string,
  person: string,
  { book, sounds, pen = takePen }: Deletion,
): Promise<number> {
  const held = await pen(session);
  if (held === null) throw new Error(keptSounds.writtenElsewhere);
  try {
    const record = await wholeRecord(session, book);
    const last = record?.entries.at(-1);
    if (!record || !last) throw new Error(keptSounds.recordBroken);
    const stored = await sounds.hashes(session);
    const there = soundsLeft(record, stored);
    if (there.length > 0) {
      const body = { kind: 'sounds deleted', sounds: there } as const;
      const event = { seq: last.seq + 1, at: now(), source: 'touch', person, heard: null, body } as const;
      await book.append([
        await seal(session, last.device === undefined ? event : { ...event, device: last.device }, last),
      ]);
    }
    await sounds.remove(session, stored);
    return there.length;
  } finally {
    held.release();
  }
}

/** The record of a session, where all of it can be trusted. */
async function wholeRecord(session: string, book: Pick<RecordBook, 'read'>): Promise<SessionRecord | null> {
  const read = await readSessionRecord(session, await book.read(session));
  return read.kind === 'readable' && read.record.verification.kind === 'intact' ? read.record : null;
}

/** The sounds that a record names as kept and that are there, by their hashes. */
export function soundsLeft({ entries }: Pick<SessionRecord, 'entries'>, there: readonly string[]): readonly string[] {
  const deleted = deletedSounds(entries);
  const named = namedSounds(entries).map(({ sha256 }) => sha256);
  return named.filter((sha256) => !deleted.has(sha256) && there.includes(sha256));
}

/**
 * Takes away the sounds that a record does not have: those that were deleted by it, and those whose entry was never
 * written. In both cases something broke off in between. Where another window writes the session, the entry may be under
 * way, and where the record is broken, it may have been lost: then nothing is taken.
 */
export async function removeStrays(session: string, { book, sounds, pen = takePen }: Deletion): Promise<void> {
  if ((await straysOf(session, { book, sounds })).length === 0) return;
  const held = await pen(session);
  if (held === null) return;
  try {
    await sounds.remove(session, await straysOf(session, { book, sounds }));
  } finally {
    held.release();
  }
}

async function straysOf(session: string, { book, sounds }: Omit<Deletion, 'pen'>): Promise<readonly string[]> {
  const stored = await sounds.hashes(session);
  const record = stored.length === 0 ? null : await wholeRecord(session, book);
  const wanted = new Set(record && soundsLeft(record, stored));
  return record === null ? [] : stored.filter((sha256) => !wanted.has(sha256));
}
