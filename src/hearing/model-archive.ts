import { HearingError, textOf } from './failures.ts';

export interface Archive {
  readonly name: string;
  readonly sha256: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Tells how many bytes have arrived, and of how many, where that is known. */
export type Progress = (received: number, total: number | null) => void;

/** A download that brings nothing for this long has failed. */
const STALL_MS = 8_000;

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
 * Fetches a listed archive and checks it against its entry.
 * @throws HearingError `model unreachable`, `model not an archive`, `model checksum`, `model load cancelled`
 */
export async function fetchArchive(
  entry: { readonly file: string; readonly url: string; readonly sha256: string; readonly bytes: number },
  progress: Progress,
  signal: AbortSignal,
): Promise<Archive> {
  const archive = await archiveOf(entry.file, await download(entry, progress, signal));
  if (archive.sha256 !== entry.sha256) {
    throw new HearingError('model checksum', `${entry.file}: listed ${entry.sha256}, arrived ${archive.sha256}`);
  }
  return archive;
}

async function download(
  { url, bytes: expected }: { readonly url: string; readonly bytes: number },
  progress: Progress,
  signal: AbortSignal,
): Promise<Uint8Array<ArrayBuffer>> {
  const stalled = new AbortController();
  let timer = setTimeout(() => stalled.abort(), STALL_MS);
  try {
    const response = await fetch(url, { signal: AbortSignal.any([signal, stalled.signal]), cache: 'no-store' });
    if (!response.ok || !response.body) throw new Error(`HTTP status ${response.status}`);
    const parts: Uint8Array[] = [];
    let received = 0;
    progress(0, expected);
    for (const reader = response.body.getReader(); ;) {
      const { done, value } = await reader.read();
      if (done) break;
      clearTimeout(timer);
      timer = setTimeout(() => stalled.abort(), STALL_MS);
      parts.push(value);
      received += value.length;
      progress(received, Math.max(expected, received));
    }
    return joined(parts, received);
  } catch (error) {
    if (signal.aborted) throw new HearingError('model load cancelled');
    const why = stalled.signal.aborted ? `nothing arrived for ${STALL_MS / 1000} s` : textOf(error);
    throw new HearingError('model unreachable', `${url}: ${why}`);
  } finally {
    clearTimeout(timer);
  }
}

function joined(parts: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
