import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { unzipSync, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { packParts, soundName, type PartName } from '../../src/record/container.ts';
import { openSessionFile, packSession, type SessionFile } from '../../src/record/sealed-file.ts';
import { readSessionRecord } from '../../src/record/session-record.ts';
import { checkSounds, deletedSounds, namedSounds, type Sounds } from '../../src/record/sounds.ts';
import type { SessionEvent } from '../../src/session/event.ts';
import { eventOf } from '../session/play.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { makeKey } from './keys.ts';
import { recordOf } from './sealed.ts';
import { all, deletion, EVENTS, hashes, packedWith, recordWith, SOUNDS } from './sounded.ts';

const NOW = '2026-03-02T00:00:00.000Z';
const key = await makeKey();
const record = await recordWith();
const bytes = await packedWith(record, all, key);
const [first = '', second = '', third = ''] = hashes;

/** Where the seal begins: the sounds lie behind it. */
const beforeSounds = Buffer.from(bytes).indexOf('PK\x03\x04', Buffer.from(bytes).indexOf('procedure.json{'));

type Opened = Extract<SessionFile, { kind: 'opened' }>;
async function open(found: Uint8Array, now = NOW): Promise<Opened> {
  const file = await openSessionFile(found, { now });
  if (file.kind === 'refused') throw new Error(file.why);
  return file;
}
const parts = (): Map<PartName, Uint8Array> =>
  new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name as PartName, content]));
/** The file packed anew with other sounds, as somebody with this program would. */
function repacked(change: (parts: Map<PartName, Uint8Array>) => void): Uint8Array {
  const changed = parts();
  change(changed);
  return packParts(changed);
}

describe('the sounds of a record', () => {
  test('are named by its entries, each once, at the first', () =>
    expect(namedSounds(record.entries)).toEqual([
      { sha256: first, entry: 1 },
      { sha256: second, entry: 2 },
      { sha256: third, entry: 3 },
    ]));
  test('are in its sealed file, and opened with it', async () => {
    const { verdict, sounds } = await open(bytes);
    expect(verdict).toMatchObject({ kind: 'intact', entries: 6 });
    expect(new Map(sounds.sounds)).toEqual(all);
    expect([sounds.missing, sounds.changed, sounds.deleted, sounds.strays]).toEqual([[], [], [], []]);
  });
  test('lie in the file as WAV files by their hashes, where any tool finds them', () =>
    expect(Object.keys(unzipSync(bytes)).slice(5)).toEqual([...hashes].sort().map((hash) => `evidence/${hash}.wav`)));
  test('make the same file, in whatever order they are given', () => {
    const turned: Sounds = new Map([...all].reverse());
    expect(packSession(record, null, turned)).toEqual(packSession(record, null, all));
  });
  test('that no entry names stay out of its file', async () => {
    const more: Sounds = new Map([...all, ['0'.repeat(64), new Uint8Array(9)]]);
    expect(Object.keys(unzipSync(await packedWith(record, more, key)))).toHaveLength(5 + 3);
  });
});

describe('a sound in a file', () => {
  test('with any byte of it changed, and its packing made right again, is named, and the file is not intact', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(2), fc.nat(), fc.integer({ min: 1, max: 255 }), async (which, anywhere, change) => {
        const sound = Uint8Array.from(SOUNDS[which] ?? []);
        const place = anywhere % sound.length;
        sound[place] = (sound[place] ?? 0) ^ change;
        const { verdict, sounds } = await open(repacked((all) => all.set(soundName(hashes[which] ?? ''), sound)));
        const why = `the sound of entry ${which + 1} is not the one whose hash it states`;
        expect(verdict).toEqual({ kind: 'not intact', at: null, why });
        expect(sounds.sounds.has(hashes[which] ?? '')).toBe(false);
        expect(sounds.changed).toEqual([{ sha256: hashes[which], entry: which + 1 }]);
      }),
      { numRuns: 120 },
    );
  });
  test('with any byte of it changed where it lies makes the file not intact', async () => {
    const until = Buffer.from(bytes).lastIndexOf('PK\x01\x02');
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: beforeSounds, max: until }),
        fc.integer({ min: 1, max: 255 }),
        async (at, change) => {
          const changed = Uint8Array.from(bytes);
          changed[at] = (changed[at] ?? 0) ^ change;
          const file = await openSessionFile(changed, { now: NOW });
          if (file.kind === 'opened') expect(file.verdict.kind).toBe('not intact');
        },
      ),
      { numRuns: 120 },
    );
  });
  test('cut short or made longer is named', async () => {
    for (const sound of [SOUNDS[1]?.slice(0, -1), Uint8Array.of(...(SOUNDS[1] ?? []), 0), new Uint8Array()])
      expect(
        (await open(repacked((all) => all.set(soundName(second), sound ?? new Uint8Array())))).verdict,
      ).toMatchObject({
        kind: 'not intact',
        why: 'the sound of entry 2 is not the one whose hash it states',
      });
  });
  test('that was changed over with another is named, and so is the other', async () => {
    const { verdict, sounds } = await open(
      repacked((all) => {
        all.set(soundName(first), SOUNDS[2] ?? new Uint8Array());
        all.set(soundName(third), SOUNDS[0] ?? new Uint8Array());
      }),
    );
    expect(verdict).toMatchObject({ kind: 'not intact', why: expect.stringContaining('entry 1') as string });
    expect(sounds.changed.map(({ entry }) => entry)).toEqual([1, 3]);
    expect([...sounds.sounds.keys()]).toEqual([second]);
  });
  test('that was left out is named as missing; what is written stands', async () => {
    const { verdict, sounds } = await open(repacked((all) => all.delete(soundName(second))));
    expect(verdict).toMatchObject({ kind: 'intact' });
    expect(sounds.missing).toEqual([{ sha256: second, entry: 2 }]);
    expect(sounds.sounds.size).toBe(2);
  });
  test('that belongs to no entry makes the file not intact', async () => {
    const sha256 = 'ab'.repeat(32);
    const { verdict } = await open(repacked((all) => all.set(soundName(sha256), new Uint8Array(4))));
    expect(verdict).toMatchObject({ kind: 'not intact', why: `no entry has the sound “evidence/${sha256}.wav”` });
  });
  test('cannot be cut off unseen', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: beforeSounds, max: bytes.length - 1 }), async (at) => {
        expect((await open(bytes.slice(0, at))).verdict.kind).toBe('not intact');
      }),
      { numRuns: 80 },
    );
  });
  test.each(['evidence/x.wav', `evidence/${first}.mp3`, `evidence/../${first}.wav`, `Evidence/${first}.wav`])(
    'under the name %s is no part of a sealed file',
    async (name) => {
      const stored = Object.fromEntries(
        [...parts(), [name, new Uint8Array(4)] as const].map(([part, content]) => [
          part,
          [content, { level: 0 }] as const,
        ]),
      );
      expect(await openSessionFile(zipSync(stored as Parameters<typeof zipSync>[0]), { now: NOW })).toMatchObject({
        kind: 'refused',
        why: expect.stringContaining('which no sealed file has') as string,
      });
    },
  );
});

describe('a sound that was deleted', () => {
  const closed = eventOf({ kind: 'closed' }, EVENTS.length);

  test('leaves its hash and an entry behind, and the record as whole as before', async () => {
    const after = await recordWith(deletion(EVENTS.length, first, second));
    const { verdict, sounds } = await open(await packedWith(after, all, key));
    expect(verdict).toMatchObject({ kind: 'intact', entries: 7 });
    expect(sounds.deleted.map(({ sha256 }) => sha256)).toEqual([first, second]);
    expect([...sounds.sounds.keys()]).toEqual([third]);
    expect(sounds.missing).toEqual([]);
    expect(deletedSounds(after.entries)).toEqual(new Set([first, second]));
  });
  test('may be deleted after the record was closed, and nothing else may come then', async () => {
    const read = async (...more: readonly SessionEvent[]) =>
      readSessionRecord('session', await recordOf(smallProcedure, [...EVENTS, closed, ...more]));
    const at = EVENTS.length + 1;
    expect(await read(deletion(at, first), deletion(at + 1, second))).toMatchObject({
      record: { verification: { kind: 'intact' }, entries: { length: 9 } },
    });
    expect(await read(deletion(at, first), eventOf({ kind: 'reopened' }, at + 1))).toMatchObject({
      record: {
        entries: { length: 8 },
        verification: { kind: 'broken', at: 8, why: 'it comes after the record was closed' },
      },
    });
  });
  test('and put back into a file makes it not intact', async () => {
    const after = await recordWith(deletion(EVENTS.length, first));
    const changed = new Map(
      Object.entries(unzipSync(await packedWith(after, all, key))).map(([name, content]) => [
        name as PartName,
        content,
      ]),
    ).set(soundName(first), SOUNDS[0] ?? new Uint8Array());
    expect((await open(packParts(changed))).verdict).toMatchObject({
      kind: 'not intact',
      why: `no entry has the sound “evidence/${first}.wav”`,
    });
  });
});

test('sounds in a store are held against their hashes in the same way', async () => {
  const found: Sounds = new Map([
    [first, SOUNDS[0] ?? new Uint8Array()],
    [second, new Uint8Array(3)],
  ]);
  expect(await checkSounds(record.entries, found)).toMatchObject({
    changed: [{ sha256: second }],
    missing: [{ sha256: third }],
  });
});

const fixture = (name: string) => new Uint8Array(readFileSync(new URL(`fixtures/${name}`, import.meta.url)));

describe('a sealed file whose entries are of version 1, from before sounds', () => {
  test('still verifies, to its last entry, by its own seal', async () => {
    const { session, verdict, sounds } = await open(fixture('format-1.bhsession'), '2026-04-01T00:00:00.000Z');
    expect(verdict).toMatchObject({ kind: 'intact', entries: 108 });
    expect(session.kind === 'readable' && session.record.entries.every((entry) => entry.v === 1)).toBe(true);
    expect(sounds.sounds.size + sounds.missing.length).toBe(0);
  });
});

describe('a sealed file whose entries are of version 2, from before the points of a step', () => {
  test('still verifies, to its last entry, by its own seal; all of its sounds but one were left out here', async () => {
    const { session, verdict, sounds } = await open(fixture('format-2.bhsession'), '2026-04-01T00:00:00.000Z');
    expect(verdict).toMatchObject({ kind: 'intact', entries: 108 });
    expect(session.kind === 'readable' && session.record.entries.every((entry) => entry.v === 2)).toBe(true);
    expect([sounds.sounds.size, sounds.missing.length]).toEqual([1, 31]);
  });
});
