/**
 * One session may be in several files: a copy, or one that was sealed while work was under way and again later. The file
 * that goes furthest counts, once. Where two files tell of one session differently, nobody can say which is right from
 * the files alone: neither counts.
 */
import type { Entry } from '../../record/entry.ts';
import type { FleetDatabase } from './database.ts';
import { quoted } from './database.ts';
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
  const sessions = await database.ask(
    `SELECT session FROM files WHERE verdict = 'intact' GROUP BY session HAVING count(*) > 1 ORDER BY session`,
  );
  const aside: SetAside[] = [];
  for (const { session } of sessions) {
    const [furthest, ...others] = await filesOf(database, String(session));
    if (!furthest) continue;
    const isSame = others.every(({ head }) => head === furthest.head);
    const entries = isSame ? [] : await entriesOf(furthest.file);
    const differs = others.find(
      ({ head, entries: count }) => head !== furthest.head && entries[count - 1]?.hash !== head,
    );
    const left = differs ? [furthest, ...others] : others;
    for (const { source, file } of left) {
      const verdict = differs ? 'contradicted' : 'copy';
      const other = differs && file === furthest.file ? differs.file : furthest.file;
      const why = differs
        ? `“${other}” tells of the same session differently: none of its files counts`
        : `“${other}” holds the same session, as far or further`;
      aside.push({ file, verdict, why });
      await takeOut(database, source, verdict, why);
    }
  }
  return aside;
}

async function filesOf(database: FleetDatabase, session: string): Promise<readonly Intact[]> {
  const rows = await database.ask(
    `SELECT source, file, entries, head FROM files WHERE verdict = 'intact' AND session = ${quoted(session)}
     ORDER BY entries DESC, source`,
  );
  return rows.map(({ source, file, entries, head }) => ({
    source: Number(source),
    file: String(file),
    entries: Number(entries),
    head: String(head),
  }));
}

async function takeOut(database: FleetDatabase, source: number, verdict: string, why: string): Promise<void> {
  await database.run(`UPDATE files SET verdict = ${quoted(verdict)}, why = ${quoted(why)} WHERE source = ${source}`);
  for (const name of TABLE_NAMES)
    if (name !== 'files') await database.run(`DELETE FROM ${name} WHERE source = ${source}`);
}
