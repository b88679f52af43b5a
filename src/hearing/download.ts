import { HearingError, textOf } from './failures.ts';
import type { KeptParts } from './kept-parts.ts';

/** Tells how many bytes have arrived, of how many, and whether the line is broken and waited for. */
export type Progress = (received: number, total: number | null, isWaiting?: boolean) => void;

export interface Wanted {
  readonly url: string;
  readonly sha256: string;
  /** As listed: only for the progress that is shown. */
  readonly bytes: number;
}

export interface Downloaded {
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** Whether some of it came from an earlier try: if the whole is wrong, that part may be to blame. */
  readonly isPieced: boolean;
}

export interface Line {
  readonly parts: KeptParts;
  /** A line that brings nothing for this long is broken, in milliseconds. */
  readonly stall: number;
  /** How long to wait before another try when nothing has come yet, one after another, in milliseconds. */
  readonly first: readonly number[];
  /** The same where some of it has come: that line worked, and may again. Counted anew whenever more arrives. */
  readonly again: readonly number[];
}

/** So much is kept at once, in bytes: a broken line loses no more than that, and nothing where it breaks under us. */
const PIECE = 256 * 1024;

/**
 * Fetches a file; over a broken line it goes on where it was (RFC 9110, range requests), also if the page was closed
 * meanwhile. Whether it is the right file, its checksum has to tell.
 * @throws HearingError `model unreachable`, `model load cancelled`; what has arrived stays kept
 */
export async function download(
  wanted: Wanted,
  progress: Progress,
  signal: AbortSignal,
  line: Line,
): Promise<Downloaded> {
  const begun = await line.parts.read(wanted.sha256);
  const file = new Arriving(wanted, begun, progress, line.parts);
  let isPieced = begun.length > 0;
  for (let fruitless = 0; ;) {
    const before = file.received;
    try {
      await arrive(file, wanted, signal, line.stall);
      return { bytes: file.joined(), isPieced };
    } catch (error) {
      if (signal.aborted) throw new HearingError('model load cancelled');
      fruitless = file.received > before ? 0 : fruitless;
      const wait = (file.received > 0 ? line.again : line.first)[fruitless++];
      if (error instanceof Refused || wait === undefined)
        throw new HearingError('model unreachable', `${wanted.url}: ${textOf(error)}`);
      file.wait();
      isPieced ||= file.received > 0;
      await pause(wait, signal);
    }
  }
}

/** The server answered, and did not give the file. */
class Refused extends Error {}

/** What has arrived, in memory and kept. */
class Arriving {
  readonly #wanted: Wanted;
  readonly #progress: Progress;
  readonly #parts: KeptParts;
  #pieces: Uint8Array[];
  #fresh: Uint8Array[] = [];
  received: number;
  #kept: number;

  constructor(wanted: Wanted, begun: readonly Uint8Array[], progress: Progress, parts: KeptParts) {
    this.#wanted = wanted;
    this.#pieces = [...begun];
    this.#progress = progress;
    this.#parts = parts;
    this.received = this.#kept = lengthOf(begun);
    this.#tell();
  }

  async take(piece: Uint8Array): Promise<void> {
    this.#fresh.push(piece);
    this.received += piece.length;
    this.#tell();
    if (this.received - this.#kept >= PIECE) await this.keep();
  }

  /** Keeps what is not kept yet. */
  async keep(): Promise<void> {
    if (this.#fresh.length === 0) return;
    const piece = joined(this.#fresh);
    const at = this.#kept;
    this.#fresh = [];
    this.#pieces.push(piece);
    this.#kept += piece.length;
    await this.#parts.add(this.#wanted.sha256, at, piece);
  }

  async beginAnew(): Promise<void> {
    this.#pieces = [];
    this.#fresh = [];
    this.received = this.#kept = 0;
    await this.#parts.clear();
    this.#tell();
  }

  wait(): void {
    this.#progress(this.received, this.#total, true);
  }

  joined(): Uint8Array<ArrayBuffer> {
    return joined([...this.#pieces, ...this.#fresh]);
  }

  get #total(): number {
    return Math.max(this.#wanted.bytes, this.received);
  }

  #tell(): void {
    this.#progress(this.received, this.#total);
  }
}

const NO_SUCH_RANGE = 416;

/** One try. It resolves when the server has given all of it. */
async function arrive(file: Arriving, { url }: Wanted, signal: AbortSignal, stall: number): Promise<void> {
  const broken = new AbortController();
  const stalls = (): void => broken.abort(new Error(`nothing arrived for ${stall / 1000} s`));
  let timer = setTimeout(stalls, stall);
  try {
    const response = await fetch(url, {
      signal: AbortSignal.any([signal, broken.signal]),
      cache: 'no-store',
      ...(file.received > 0 ? { headers: { range: `bytes=${file.received}-` } } : {}),
    });
    const goesOn = response.status === 206 && startOf(response) === file.received;
    const isElsewhere = response.status === NO_SUCH_RANGE || (response.status === 206 && !goesOn);
    // A server without ranges sends all of it again; one that has another file has no rest of this one.
    if (file.received > 0 && (isElsewhere || response.status === 200)) await file.beginAnew();
    if (isElsewhere) throw new Error('the server does not have the rest of it');
    if (!response.ok || !response.body) throw new Refused(`HTTP status ${response.status}`);
    for (const reader = response.body.getReader(); ;) {
      const { done, value } = await reader.read();
      if (done) return;
      clearTimeout(timer);
      timer = setTimeout(stalls, stall);
      await file.take(value);
    }
  } finally {
    clearTimeout(timer);
    await file.keep();
  }
}

/** Of `content-range: bytes 500-999/1000`; null where there is none. */
function startOf(response: Response): number | null {
  const [, start] = /^bytes (\d+)-/.exec(response.headers.get('content-range') ?? '') ?? [];
  return start === undefined ? null : Number(start);
}

/** Until the time is over, or sooner where the browser says that the line is back. @throws when aborted */
async function pause(ms: number, signal: AbortSignal): Promise<void> {
  const over = new AbortController();
  await new Promise<void>((resolve, reject) => {
    const timer = setTimeout(resolve, ms);
    const once = { once: true, signal: over.signal };
    globalThis.addEventListener?.('online', () => resolve(), once);
    signal.addEventListener('abort', () => reject(new HearingError('model load cancelled')), once);
    over.signal.addEventListener('abort', () => clearTimeout(timer));
  }).finally(() => over.abort());
}

const lengthOf = (pieces: readonly Uint8Array[]): number => pieces.reduce((sum, { length }) => sum + length, 0);

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(lengthOf(pieces));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
