import 'fake-indexeddb/auto';
import { createHash } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import fc from 'fast-check';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Line } from '../../src/hearing/download.ts';
import { HearingError } from '../../src/hearing/failures.ts';
import { openKeptParts } from '../../src/hearing/kept-parts.ts';
import { fetchArchive } from '../../src/hearing/model-archive.ts';

/** Looks like an archive, and every byte can be told from its neighbours. */
const ARCHIVE = Buffer.from(Array.from({ length: 700_000 }, (_, at) => (at * at * 31 + (at >> 7)) & 0xff));
ARCHIVE.set([0x1f, 0x8b], 0);
const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

const line: Line = { parts: openKeptParts(), stall: 300, first: [1, 1], again: [1, 1, 1] };
const never = new AbortController().signal;

type Answer = (request: IncomingMessage, response: ServerResponse, from: number) => void;
/** What the server does with each request in turn; afterwards it serves properly. */
let answers: Answer[] = [];
/** The first byte that each request asked for. */
let asked: number[] = [];
let url: string;

/** A proper answer to a range, up to a byte where the line breaks. */
const upTo =
  (breaks: number, file = ARCHIVE): Answer =>
  (_, response, from) => {
    const rest = file.subarray(from);
    if (from > 0 && rest.length === 0) return void response.writeHead(416).end();
    response.writeHead(from > 0 ? 206 : 200, {
      'content-length': rest.length,
      ...(from > 0 ? { 'content-range': `bytes ${from}-${file.length - 1}/${file.length}` } : {}),
    });
    if (breaks >= file.length) return void response.end(rest);
    response.write(file.subarray(from, Math.max(from, breaks)), () => setTimeout(() => response.destroy(), 5));
  };

const server = createServer((request, response) => {
  const from = Number(/^bytes=(\d+)-$/.exec(request.headers.range ?? '')?.[1] ?? 0);
  asked.push(from);
  (answers.shift() ?? upTo(Infinity))(request, response, from);
});

beforeAll(async () => {
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/model.tar.gz`;
});
afterAll(() => {
  server.closeAllConnections();
  server.close();
});
beforeEach(async () => {
  answers = [];
  asked = [];
  await line.parts.clear();
});

const entry = (bytes = ARCHIVE) => ({ file: 'model.tar.gz', url, sha256: sha256(bytes), bytes: bytes.length });

type Told = readonly [received: number, total: number | null, isWaiting: boolean];
async function fetched(told: Told[] = [], signal = never): Promise<Buffer> {
  const progress = (received: number, total: number | null, isWaiting = false): void =>
    void told.push([received, total, isWaiting]);
  return Buffer.from((await fetchArchive(entry(), progress, signal, line)).bytes);
}
const failureOf = (loading: Promise<unknown>): Promise<string> =>
  loading.then(
    () => 'none',
    (error: unknown) => (error instanceof HearingError ? error.failure.code : String(error)),
  );

describe('a broken line goes on where it was', () => {
  test('wherever it breaks, the file is whole and no byte that arrived is asked for again', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: ARCHIVE.length - 1 }), { maxLength: 4 }), async (breaks) => {
        answers = breaks.toSorted((one, other) => one - other).map((at) => upTo(at));
        asked = [];
        expect((await fetched()).equals(ARCHIVE)).toBe(true);
        // What was sent before a break may be lost under way, but nothing is asked for twice that had come.
        expect(asked).toEqual(asked.toSorted((one, other) => one - other));
        expect(asked[0]).toBe(0);
      }),
      { numRuns: 25 },
    );
  });

  test('also after the page was closed: the next one asks for the rest only', async () => {
    answers = [upTo(400_000)];
    const leaving = new AbortController();
    const told: Told[] = [];
    const first = fetched(told, leaving.signal);
    while ((told.at(-1)?.[0] ?? 0) < 400_000) await new Promise((resolve) => setTimeout(resolve, 1));
    leaving.abort();
    expect(await failureOf(first)).toBe('model load cancelled');

    const again: Told[] = [];
    expect((await fetched(again)).equals(ARCHIVE)).toBe(true);
    expect(asked.at(-1)).toBe(400_000);
    expect(again[0]).toEqual([400_000, ARCHIVE.length, false]);
  });

  test('and tells how far it is, and that it waits', async () => {
    answers = [upTo(300_000)];
    const told: Told[] = [];
    await fetched(told);
    const waited = told.filter(([, , isWaiting]) => isWaiting);
    expect(waited).toEqual([[300_000, ARCHIVE.length, true]]);
    expect(told.at(-1)).toEqual([ARCHIVE.length, ARCHIVE.length, false]);
  });

  test('a line that brings nothing any more is a broken one', async () => {
    answers = [(_, response) => void response.writeHead(200).write(ARCHIVE.subarray(0, 100_000))];
    expect((await fetched()).equals(ARCHIVE)).toBe(true);
    expect(asked).toEqual([0, 100_000]);
  });
});

describe('what cannot be pieced together is fetched anew', () => {
  test('from a server that knows no ranges', async () => {
    answers = [upTo(200_000), (_, response) => void response.writeHead(200).end(ARCHIVE)];
    expect((await fetched()).equals(ARCHIVE)).toBe(true);
    expect(asked).toEqual([0, 200_000]);
  });

  test('where the rest is of another file: the checksum tells, and it is fetched once more in one piece', async () => {
    const other = Buffer.from(ARCHIVE).fill(7, 2);
    answers = [upTo(200_000, other)];
    expect((await fetched()).equals(ARCHIVE)).toBe(true);
    expect(asked).toEqual([0, 200_000, 0]);
  });

  test('where the file has become shorter than what was kept', async () => {
    answers = [upTo(600_000), upTo(Infinity, ARCHIVE.subarray(0, 500_000))];
    expect((await fetched()).equals(ARCHIVE)).toBe(true);
    expect(asked).toEqual([0, 600_000, 0]);
  });
});

describe('it ends', () => {
  test('at once where the server has no such file; what had come stays kept', async () => {
    answers = [upTo(300_000), (_, response) => void response.writeHead(503).end()];
    expect(await failureOf(fetched())).toBe('model unreachable');
    expect((await fetched()).equals(ARCHIVE)).toBe(true);
    expect(asked).toEqual([0, 300_000, 300_000]);
  });

  test('after some tries that bring nothing', async () => {
    const dead: Answer = (_, response) => void response.destroy();
    answers = [dead, dead, dead, dead];
    expect(await failureOf(fetched())).toBe('model unreachable');
    expect(asked).toHaveLength(1 + line.first.length);
  });

  test('with a file that is wrong and came in one piece', async () => {
    answers = [upTo(Infinity, Buffer.from(ARCHIVE).fill(7, 2))];
    expect(await failureOf(fetched())).toBe('model checksum');
    expect(asked).toEqual([0]);
  });

  test('and keeps no pieces of what is whole', async () => {
    answers = [upTo(300_000)];
    await fetched();
    expect(await line.parts.read(entry().sha256)).toEqual([]);
  });
});
