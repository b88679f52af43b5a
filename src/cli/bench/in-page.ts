/** The part of the measuring that runs in a page. */
import { seal } from '../../record/entry.ts';
import { openSessionFile } from '../../record/sealed-file.ts';
import { stateAfter, type SessionRecord } from '../../record/session-record.ts';
import { openRecordBook } from '../../storage/record-book.ts';
import { findSession } from '../../ui/session-file.ts';

export interface Asked {
  /** A sealed file, in Base64. */
  readonly file: string;
  readonly session: string;
  readonly rounds: number;
  /** Entries that are added one after another, each on disk before the next. */
  readonly added: number;
}

export interface InPage {
  /** Milliseconds, the best of the rounds. */
  readonly openFile: number;
  readonly openKept: number;
  /** Milliseconds for each entry. */
  readonly adding: readonly number[];
}

export async function measureInPage({ file, session, rounds, added }: Asked): Promise<InPage> {
  const bytes = Uint8Array.from(atob(file), (character) => character.charCodeAt(0));
  const book = openRecordBook();
  const ofFile = async (): Promise<SessionRecord> => {
    const opened = await openSessionFile(bytes, { now: new Date().toISOString() });
    if (opened.kind === 'refused' || opened.verdict.kind !== 'intact' || opened.session.kind === 'unreadable')
      throw new Error('The measured file is not intact.');
    return toItsEnd(opened.session.record);
  };
  const ofBook = async (): Promise<SessionRecord> => {
    const read = await findSession(book, session);
    if (read.kind === 'unreadable' || read.record.verification.kind !== 'intact')
      throw new Error('The measured session is not intact.');
    return toItsEnd(read.record);
  };
  const { entries } = await ofFile();
  await book.append(entries);
  const [openFile, openKept] = [await best(rounds, ofFile), await best(rounds, ofBook)];
  const adding: number[] = [];
  let last = entries.at(-1) ?? null;
  for (let i = 0; i < added && last !== null; i++) {
    const from = performance.now();
    last = await seal(session, { ...eventOf(last), seq: last.seq + 1, body: { kind: 'repeat asked' } }, last);
    await book.append([last]);
    adding.push(performance.now() - from);
  }
  return { openFile, openKept, adding };
}

function toItsEnd(record: SessionRecord): SessionRecord {
  stateAfter(record, record.entries.length);
  return record;
}

const eventOf = ({ at, source, person, heard }: SessionRecord['entries'][number]) => ({ at, source, person, heard });

async function best(rounds: number, work: () => Promise<unknown>): Promise<number> {
  let least = Infinity;
  for (let round = 0; round < rounds; round++) {
    const from = performance.now();
    await work();
    least = Math.min(least, performance.now() - from);
  }
  return least;
}
