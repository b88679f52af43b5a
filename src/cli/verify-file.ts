/** Opens sealed files of sessions from a disk, for the commands that an auditor uses. */
import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { LARGEST_FILE } from '../record/container.ts';
import { openSessionFile, type SessionFile } from '../record/sealed-file.ts';
import type { SoundsFound } from '../record/sounds.ts';

/** Reads and checks one file. It never throws: a file that cannot be read is refused with the reason. */
export async function openFile(name: string, keys: readonly string[]): Promise<SessionFile> {
  const bytes = await readSealed(name);
  if (typeof bytes === 'string') return { kind: 'refused', why: bytes };
  return openSessionFile(bytes, { now: new Date().toISOString(), keys });
}

/** The content of a file, or why there is none. A file that is too large is not read. */
export async function readSealed(name: string): Promise<Uint8Array | string> {
  try {
    // What is no file, such as a pipe, may never be ready to be read: it is not waited for.
    const file = await open(name, constants.O_RDONLY | constants.O_NONBLOCK);
    try {
      const found = await file.stat();
      if (!found.isFile()) return 'It is no file.';
      if (found.size > LARGEST_FILE)
        return `It is larger than ${LARGEST_FILE / 2 ** 20} MiB: no sealed file of a session is.`;
      return await file.readFile();
    } finally {
      await file.close();
    }
  } catch (error) {
    return `It cannot be opened (${(error as NodeJS.ErrnoException).code ?? String(error)}).`;
  }
}

/** How many are under way at once: some are read from the disk while another is checked. */
const AT_ONCE = 4;

/**
 * Works on items a few at a time, and gives what came of each in the order of the items. However many there are, only
 * those few are in memory, and no more is begun while whoever asks is busy.
 */
export async function* inOrder<Item, Result>(
  items: AsyncIterable<Item>,
  work: (item: Item) => Promise<Result>,
): AsyncGenerator<Result> {
  const underWay: Promise<Result>[] = [];
  for await (const item of items) {
    underWay.push(work(item));
    const first = underWay.length === AT_ONCE ? underWay.shift() : undefined;
    if (first) yield await first;
  }
  for (const each of underWay) yield await each;
}

/** One line of text that steers no terminal, whatever stands in the file or in its name. */
export const printable = (text: string): string =>
  text.replace(
    /[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu,
    (sign) => `\\u{${(sign.codePointAt(0) ?? 0).toString(16).padStart(4, '0')}}`,
  );

/** The verdict on a file, as one line for people. */
export function verdictLine(name: string, file: SessionFile): string {
  return printable(`${name}: ${verdictText(file)}`);
}

function verdictText(file: SessionFile): string {
  if (file.kind === 'refused') return `NOT READABLE: ${file.why}`;
  const { verdict } = file;
  if (verdict.kind === 'not intact') {
    return verdict.at === null ? `NOT INTACT: ${verdict.why}` : `NOT INTACT at entry ${verdict.at}: ${verdict.why}`;
  }
  const closed = verdict.closedAt === null ? 'work still under way' : `closed ${verdict.closedAt}`;
  return `intact: ${verdict.entries} entries, ${closed}${soundsText(file.sounds)}, sealed by key ${verdict.thumbprint}`;
}

/** What became of the sounds of a file; nothing where it has none. */
function soundsText({ sounds, deleted, missing }: SoundsFound): string {
  const found = [
    ...(sounds.size > 0 ? [`${sounds.size} there`] : []),
    ...(deleted.length > 0 ? [`${deleted.length} deleted`] : []),
    ...(missing.length > 0 ? [`missing those of entries ${missing.map(({ entry }) => entry).join(', ')}`] : []),
  ];
  return found.length === 0 ? '' : `, sounds: ${found.join(', ')}`;
}

/** The verdict on a file, as an object for programs. */
export interface VerdictObject {
  readonly file: string;
  readonly verdict: 'intact' | 'not intact' | 'not readable';
  /** The first bad entry; null where no entry is to blame. */
  readonly at: number | null;
  readonly why: string | null;
  readonly session: string | null;
  /** Entries that were found, good or bad. */
  readonly entries: number | null;
  /** Hash of the last entry, where all are good. */
  readonly head: string | null;
  readonly thumbprint: string | null;
  readonly closedAt: string | null;
  /** How many of its sounds are there, were deleted as an entry says, and are missing. */
  readonly sounds: { readonly there: number; readonly deleted: number; readonly missing: number } | null;
}

const NOTHING = {
  at: null,
  why: null,
  session: null,
  entries: null,
  head: null,
  thumbprint: null,
  closedAt: null,
  sounds: null,
};

export function verdictObject(name: string, file: SessionFile): VerdictObject {
  if (file.kind === 'refused') return { file: name, verdict: 'not readable', ...NOTHING, why: file.why };
  const { session, verdict, seal, sounds } = file;
  const { id, found } = session.kind === 'readable' ? session.record : session;
  return {
    file: name,
    verdict: verdict.kind,
    ...NOTHING,
    session: id,
    entries: found,
    thumbprint: seal.kind === 'good' ? seal.thumbprint : null,
    sounds: { there: sounds.sounds.size, deleted: sounds.deleted.length, missing: sounds.missing.length },
    ...(verdict.kind === 'intact'
      ? { head: verdict.head, closedAt: verdict.closedAt }
      : { at: verdict.at, why: verdict.why }),
  };
}

/** 0: intact; 1: not intact; 2: not readable. */
export function exitCodeFor(file: SessionFile): 0 | 1 | 2 {
  if (file.kind === 'refused') return 2;
  return file.verdict.kind === 'intact' ? 0 : 1;
}

/** Writes a line, and waits where whoever reads is slower: thousands of lines do not pile up in memory. */
export function printLine(line: string): Promise<void> {
  return new Promise((resolve) => {
    if (process.stdout.write(`${line}\n`)) resolve();
    else process.stdout.once('drain', resolve);
  });
}

/** Ends quietly where whoever reads has gone, as `head` does. */
export function endWithReader(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit();
  });
}
