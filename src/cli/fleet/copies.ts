/**
 * One session may be in several files: a copy, or one that was sealed while work was under way and again later. The file
 * that goes furthest counts, once. Where two files tell of one session differently, nobody can say which is right from
 * the files alone: neither counts.
 */
import type { Entry } from '../../record/entry.ts';
import { quoted, type FleetDatabase } from './database.ts';
import { TABLE_NAMES } from './tables.ts';

/** A file that is intact and still not in the figures. */
export interface SetAside {
  readonly file: string;
  readonly verdict: 'copy' | 'contradicted';
  readonly why: string;
}

interface Intact {
  readonly source: number;
  readonly file: string;
  readonly entries: number;
  readonly head: string;
}

/**
 * Takes out of the tables what is in them twice.
 * @param entriesOf opens an intact file again
 */
export async function settleCopies(
  database: FleetDatabase,
  entriesOf: (file: string) => Promise<readonly Pick<Entry, 'hash'>[]>,
): Promise<readonly SetAside[]> {
  const aside: (SetAside & Pick<Intact, 'source'>)[] = [];
  for (const [furthest, ...others] of await filesOfOneSession(database)) {
    const isSame = others.every(({ head }) => head === furthest.head);
    const entries = isSame ? [] : await entriesOf(furthest.file);
    const differs = others.find(
      ({ head, entries: count }) => head !== furthest.head && entries[count - 1]?.hash !== head,
    );
    for (const { source, file } of differs ? [furthest, ...others] : others) {
      const other = differs && file === furthest.file ? differs.file : furthest.file;
      const why = differs
        ? `“${other}” tells of the same session differently: none of its files counts`
        : `“${other}” holds the same session, as far or further`;
      aside.push({ source, file, verdict: differs ? 'contradicted' : 'copy', why });
    }
  }
  if (aside.length > 0) await takeOut(database, aside);
  return aside.map(({ file, verdict, why }) => ({ file, verdict, why }));
}

/** The files of each session that is in more than one, the one that goes furthest first. */
async function filesOfOneSession(database: FleetDatabase): Promise<Iterable<readonly [Intact, ...Intact[]]>> {
  const rows = await database.ask(
    `SELECT source, file, session, entries, head FROM files WHERE verdict = 'intact'
     QUALIFY count(*) OVER (PARTITION BY session) > 1 ORDER BY session, entries DESC, source`,
  );
  const groups = new Map<string, [Intact, ...Intact[]]>();
  for (const row of rows) {
    const [session, file, head] = [String(row.session), String(row.file), String(row.head)];
    const found = { source: Number(row.source), file, entries: Number(row.entries), head };
    const group = groups.get(session);
    if (group) group.push(found);
    else groups.set(session, [found]);
  }
  return groups.values();
}

async function takeOut(database: FleetDatabase, aside: readonly (SetAside & Pick<Intact, 'source'>)[]): Promise<void> {
  const values = aside.map(({ source, verdict, why }) => `(${source}, ${quoted(verdict)}, ${quoted(why)})`);
  await database.run(
    `UPDATE files SET verdict = aside.verdict, why = aside.why
     FROM (VALUES ${values.join(', ')}) AS aside(source, verdict, why) WHERE files.source = aside.source`,
  );
  const sources = aside.map(({ source }) => source).join(', ');
  for (const name of TABLE_NAMES)
    if (name !== 'files') await database.run(`DELETE FROM ${name} WHERE source IN (${sources})`);
}
