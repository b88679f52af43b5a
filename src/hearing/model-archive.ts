import { download, type Downloaded, type Line, type Progress, type Wanted } from './download.ts';
import { HearingError, textOf } from './failures.ts';
import { openKeptParts } from './kept-parts.ts';

export type { Progress };

export interface Archive {
  readonly name: string;
  readonly sha256: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

const LINE: Line = {
  parts: openKeptParts(),
  stall: 8_000,
  first: [1_000, 2_000],
  // Two minutes: a walk through a hall and back.
  again: [1_000, 2_000, 4_000, 8_000, 15_000, 30_000, 60_000],
};

const GZIP = [0x1f, 0x8b];
const ZIP = [0x50, 0x4b, 0x03, 0x04];

const startsWith = (bytes: Uint8Array, magic: readonly number[]): boolean =>
  magic.every((byte, at) => bytes[at] === byte);

const hex = (bytes: Uint8Array): string => Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');

/** @throws HearingError `model not an archive` */
async function archiveOf(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<Archive> {
  if (!startsWith(bytes, GZIP) && !startsWith(bytes, ZIP)) {
    throw new HearingError(
      'model not an archive',
      `${name}: ${bytes.length} bytes that begin ${hex(bytes.slice(0, 4))}`,
    );
  }
  return { name, bytes, sha256: hex(new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))) };
}

/**
 * Reads an archive that a person chose.
 * @throws HearingError `model not an archive`, `model unreadable`
 */
export async function readArchive(file: File, progress: Progress): Promise<Archive> {
  progress(0, file.size);
  const buffer = await file.arrayBuffer().catch((error: unknown) => {
    throw new HearingError('model unreadable', `${file.name}: ${textOf(error)}`);
  });
  progress(file.size, file.size);
  return archiveOf(file.name, new Uint8Array(buffer));
}

/**
 * Fetches a listed archive and checks it against its entry. What a broken line left is kept until it is whole, or wrong.
 * @throws HearingError `model unreachable`, `model not an archive`, `model checksum`, `model load cancelled`
 */
export async function fetchArchive(
  entry: Wanted & { readonly file: string },
  progress: Progress,
  signal: AbortSignal,
  line: Line = LINE,
): Promise<Archive> {
  const arrived = await download(entry, progress, signal, line);
  await line.parts.clear();
  try {
    return await checked(entry, arrived);
  } catch (error) {
    if (!arrived.isPieced) throw error;
    // Its pieces may have been of two different files: once more, in one piece.
    const whole = await download(entry, progress, signal, line);
    await line.parts.clear();
    return checked(entry, whole);
  }
}

async function checked(entry: Wanted & { readonly file: string }, { bytes }: Downloaded): Promise<Archive> {
  const archive = await archiveOf(entry.file, bytes);
  if (archive.sha256 !== entry.sha256) {
    throw new HearingError('model checksum', `${entry.file}: listed ${entry.sha256}, arrived ${archive.sha256}`);
  }
  return archive;
}
