import { afterEach, beforeEach, expect, it } from 'vitest';
import { settleCopies } from '../../../src/cli/fleet/copies.ts';
import { openFleetDatabase, type FleetDatabase } from '../../../src/cli/fleet/database.ts';

let database: FleetDatabase;
beforeEach(async () => {
  database = await openFleetDatabase();
});
afterEach(() => database.close());

/** Files by name, each with the hashes of its entries: its session is the first letter of its name. */
async function settled(files: Readonly<Record<string, string>>) {
  for (const [i, [file, hashes]] of Object.entries(files).entries()) {
    const session = file.slice(0, 1);
    const row = { file, verdict: 'intact', entry: null, why: null, session, entries: hashes.length, head: hashes.at(-1) ?? '', thumbprint: 'key' }; // prettier-ignore
    const stop = { session, kind: 'break', step: null, began_at: null, ended_at: null, seconds: hashes.length };
    database.add({ files: [row], stops: [stop] }, i);
  }
  const aside = await settleCopies(database, (file) =>
    Promise.resolve([...(files[file] ?? '')].map((hash) => ({ hash }))),
  );
  const left = await database.ask('SELECT session, seconds FROM stops ORDER BY session');
  return { aside: aside.map(({ file, verdict }) => `${file} ${verdict}`), left: left.map((row) => Object.values(row)) };
}

it('of one session in several files, the one that goes furthest counts, once', async () =>
  expect(await settled({ a1: 'xy', a2: 'xyz', a3: 'xyz', b1: 'p' })).toEqual({
    aside: ['a3 copy', 'a1 copy'],
    left: [
      ['a', 3],
      ['b', 1],
    ],
  }));

it('where two files tell of one session differently, none of its files counts', async () =>
  expect(await settled({ a1: 'xy', a2: 'xzz', b1: 'p' })).toEqual({
    aside: ['a2 contradicted', 'a1 contradicted'],
    left: [['b', 1]],
  }));

it('a file of as many entries with another end is no copy', async () =>
  expect((await settled({ a1: 'xy', a2: 'xz' })).aside).toEqual(['a1 contradicted', 'a2 contradicted']));
