import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { packParts, type PartName } from '../../src/record/container.ts';
import { canonical, seal, type Entry } from '../../src/record/entry.ts';
import { openSessionFile, type FileVerdict } from '../../src/record/sealed-file.ts';
import { makeKey } from './keys.ts';
import { shortSession } from './random-sessions.ts';
import { packed, rehashed, sealAll, type Packed } from './sealed.ts';

// Ten thousand tries in all. Each says what was done, and which entry must be named for it.
const TRIES = { flip: 4000, cut: 2000, events: 4000 };
const LONG = 600_000;

const key = await makeKey();
const files: readonly Packed[] = await Promise.all(
  fc.sample(shortSession, { numRuns: 6, seed: 6962 }).map(async ({ events }) => packed(await sealAll(events), key)),
);
const anyFile = fc.constantFrom(...files);

const verdictOn = async (bytes: Uint8Array): Promise<FileVerdict | 'refused'> => {
  const opened = await openSessionFile(bytes, { now: '2026-03-02T00:00:00.000Z' });
  return opened.kind === 'refused' ? 'refused' : opened.verdict;
};

/** Where the lines of the entries lie in a file: the first byte of each, and the end of the last. */
function linesIn({ bytes, entries }: Packed): readonly number[] {
  let at = Buffer.from(bytes).indexOf(canonical(entries[0]));
  const starts = entries.map((entry) => {
    const start = at;
    at += Buffer.byteLength(canonical(entry)) + 1;
    return start;
  });
  return [...starts, at];
}
const lines = new Map(files.map((file) => [file, linesIn(file)]));

/** The entry whose line a byte is in; null where it is in none. */
function entryAt(file: Packed, place: number): number | null {
  const starts = lines.get(file) ?? [];
  const at = starts.findLastIndex((start) => start <= place);
  return at < 0 || at >= file.entries.length ? null : at;
}

/** The file with other entries under the old seal, as somebody with this program would pack it. */
function repacked({ bytes }: Packed, entries: readonly Entry[]): Uint8Array {
  const parts = new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name as PartName, content]));
  parts.set('entries.jsonl', new TextEncoder().encode(entries.map((entry) => `${canonical(entry)}\n`).join('')));
  return packParts(parts);
}

describe(`of ${TRIES.flip + TRIES.cut + TRIES.events} changes to sealed files none passes, and the first bad entry is named`, () => {
  test('the files are intact before they are changed', async () => {
    for (const { bytes, entries } of files)
      expect(await verdictOn(bytes)).toMatchObject({ kind: 'intact', entries: entries.length });
  });

  test(
    'any byte changed to any other',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyFile, fc.nat(), fc.integer({ min: 1, max: 255 }), async (file, anywhere, change) => {
          const place = anywhere % file.bytes.length;
          const changed = Uint8Array.from(file.bytes);
          changed[place] = (changed[place] ?? 0) ^ change;
          const verdict = await verdictOn(changed);
          const at = entryAt(file, place);
          if (at !== null) expect(verdict).toMatchObject({ kind: 'not intact', at });
          // Outside the entries none is to blame. A length that was changed may cut the last of them off.
          else if (verdict !== 'refused') expect(verdict.kind).toBe('not intact');
        }),
        { numRuns: TRIES.flip },
      );
    },
    LONG,
  );

  test(
    'the file cut off anywhere',
    async () => {
      await fc.assert(
        fc.asyncProperty(anyFile, fc.nat(), async (file, anywhere) => {
          const length = anywhere % file.bytes.length;
          const verdict = await verdictOn(file.bytes.slice(0, length));
          const [first = 0, ...ends] = lines.get(file) ?? [];
          // Before its first entry there is little: too little to be read as a session, or none of its entries.
          if (length <= first && verdict === 'refused') return;
          const whole = ends.filter((end) => end <= length).length;
          expect(verdict).toMatchObject({ kind: 'not intact', at: whole === file.entries.length ? null : whole });
        }),
        { numRuns: TRIES.cut },
      );
    },
    LONG,
  );

  type Outcome = readonly [readonly Entry[], number | null];
  /** Each: what is done to the entries at a place, and the entry that must be named. */
  type Change = (entries: readonly Entry[], i: number, other: number) => Outcome | Promise<Outcome>;
  const entryOf = (entries: readonly Entry[], i: number): Entry => {
    const entry = entries[i];
    if (!entry) throw new RangeError(`There is no entry ${i}.`);
    return entry;
  };
  const changes: Readonly<Record<string, Change>> = {
    dropped: (all, i) => [all.toSpliced(i, 1), i],
    repeated: (all, i) => [all.toSpliced(i, 0, entryOf(all, i)), i + 1],
    swapped: (all, i, other) => {
      const [low, high] = i < other ? [i, other] : [other, i];
      return [all.with(low, entryOf(all, high)).with(high, entryOf(all, low)), low];
    },
    'inserted as a copy of another': (all, i, other) => [
      all.toSpliced(i, 0, entryOf(all, other)),
      other === i ? i + 1 : i,
    ],
    // Bound as the program binds it, so that it is good by itself: the one after it does not follow any more.
    'inserted and bound': async (all, i) => {
      const before = entryOf(all, i);
      const added = await seal(before.session, { ...before, seq: i + 1, body: { kind: 'repeat asked' } }, before);
      return [all.toSpliced(i + 1, 0, await rehashed(added, {})), i === all.length - 1 ? i + 1 : i + 2];
    },
    'changed and hashed anew': async (all, i) => {
      const forged = await rehashed(entryOf(all, i), { person: 'Somebody else' });
      return [all.with(i, forged), i === all.length - 1 ? null : i + 1];
    },
    'cut off from here on': (all, i) => [all.slice(0, i), i],
    'written anew from here on': async (all, i) => {
      const rewritten = await sealAll(
        all.map(({ v: _v, session: _s, prev: _p, hash: _h, ...event }, at) =>
          at < i ? event : { ...event, person: 'Somebody else' },
        ),
      );
      return [rewritten, null];
    },
  };

  test.each(Object.entries(changes))(
    'an entry %s',
    async (_, change) => {
      await fc.assert(
        fc.asyncProperty(anyFile, fc.nat(), fc.nat(), async (file, some, more) => {
          const count = file.entries.length;
          const [i, other] = [some % count, more % count];
          const [entries, at] = await change(file.entries, i, other);
          fc.pre(entries.map(({ hash }) => hash).join() !== file.entries.map(({ hash }) => hash).join());
          expect(await verdictOn(repacked(file, entries))).toMatchObject({ kind: 'not intact', at });
        }),
        { numRuns: TRIES.events / Object.keys(changes).length },
      );
    },
    LONG,
  );
});
