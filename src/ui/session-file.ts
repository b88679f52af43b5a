import { canonical, seal, sha256, type Entry } from '../record/entry.ts';
import { readSessionRecord, type SessionRead, type SessionRecord } from '../record/session-record.ts';
import type { EventBody, People, SessionEvent } from '../session/event.ts';
import { checkSounds, type SoundsFound } from '../record/sounds.ts';
import type { RecordBook } from '../storage/record-book.ts';
import { openSoundStore, type SoundStore } from '../storage/sound-store.ts';
import { keptHere } from '../words/kept-here.ts';
import { now } from './clock.ts';
import { PRACTICE } from './practice/is-practice.ts';

export { stateAfter, type SessionRecord as KeptSession } from '../record/session-record.ts';

/** Why a kept session cannot be shown. */
export class Unreadable extends Error {
  override readonly name = 'Unreadable';
}

const APP = 'Bothhands';

/** This program with its version, as records name it. */
export const appName = (): string => `${APP} ${__APP_VERSION__}`;

/** What is written down at the start of a session, besides its procedure. */
export interface Beginning {
  readonly people: People;
  /** Whether everybody agreed that the sound around readings is kept. */
  readonly sound: 'agreed' | 'not agreed';
  /** The speech model that listens; null where none is loaded. */
  readonly model: { readonly name: string; readonly sha256: string } | null;
  /** Thumbprint of the key of this device; null where it keeps none. */
  readonly device: string | null;
  /** What was found and said before the first step. */
  readonly prepared: readonly EventBody[];
  /** Nothing is worked on: the record is named so, and nobody takes it for work. */
  readonly isPractice?: boolean;
}

/**
 * Begins a session: its first entry carries the procedure itself, those behind it what was found before the work. Settles
 * when all of them are on disk, which they are together or not at all.
 */
export async function startSession(
  book: RecordBook,
  procedureJson: unknown,
  { people, sound, model, device, prepared, isPractice = false }: Beginning,
): Promise<string> {
  const at = now();
  const session = `${isPractice ? PRACTICE : ''}${at.utc.replace(/[:.]/g, '-')}-${crypto.randomUUID().slice(0, 8)}`;
  const opened: EventBody = {
    kind: 'opened',
    format: 1,
    app: appName(),
    people,
    procedureHash: await sha256(canonical(procedureJson)),
    procedure: procedureJson,
    sound,
    model,
  };
  const entries: Entry[] = [];
  for (const body of [opened, ...prepared]) {
    const written = { seq: entries.length, at, source: 'touch', person: people.mechanic, heard: null, body } as const;
    const event: SessionEvent = device === null ? written : { ...written, device };
    entries.push(await seal(session, event, entries.at(-1) ?? null));
  }
  await book.append(entries);
  return session;
}

/** Whether nothing was done in a session but to begin it: its entries are those of one moment. */
export const isFresh = ({ entries: [first, ...rest] }: SessionRecord): boolean =>
  rest.every(({ at }) => at.utc === first?.at.utc && at.monotonic === first.at.monotonic);

/** The sounds of a session that are kept on this device, each held against its hash. */
export const soundsOf = async (
  { id, entries }: SessionRecord,
  store: Pick<SoundStore, 'read'> = openSoundStore(),
): Promise<SoundsFound> => checkSounds(entries, await store.read(id));

/** Reads a session from the book and verifies it, whatever is found there. */
export const findSession = async (book: RecordBook, id: string): Promise<SessionRead> =>
  readSessionRecord(id, await book.read(id));

/** Reads a session to show it. @throws Unreadable where there is none, or not even its beginning can be trusted */
export async function readSession(book: RecordBook, id: string): Promise<SessionRecord> {
  const read = await findSession(book, id);
  if (read.kind === 'readable') return read.record;
  const { at, why } = read.verification;
  throw new Unreadable(read.found === 0 ? keptHere.noSession(id) : keptHere.sessionBroken(id, at, why));
}
