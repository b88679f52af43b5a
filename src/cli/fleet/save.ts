/** The folder that a site takes away: the tables, what their columns mean, and the figures as a page. */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { FleetDatabase } from './database.ts';
import type { Answered } from './figures.ts';
import { pageOf } from './page.ts';
import { TABLE_NAMES, TABLES, type Table } from './tables.ts';

/** Writes everything into a folder that is there. */
export async function saveFleet(database: FleetDatabase, figures: readonly Answered[], folder: string): Promise<void> {
  await database.save(folder);
  await writeFile(path.join(folder, 'README.txt'), README);
  await writeFile(path.join(folder, 'fleet.html'), pageOf(figures));
}

/** What is said about the tables, for whoever has the files and not the program. */
export const README = `Sessions of Bothhands as tables, one Parquet file for each.

Every session in them is from a sealed file that was intact. Each table but “files” is about these alone; “files” lists
every file that was found. Torques are in N·m by exact factors, times in UTC, lengths of time in seconds by the wall clock
of the device. Numbers are as they were said and reckoned, not rounded. An empty cell (NULL) says: there is none.

People can be told by these tables where names were asked for, by the names of files and what is quoted of a faulty one in
“files”, and often by the times alone. Keep them as your rules for
data about people want it; no table was made to compare people.

${TABLE_NAMES.map((name) => tableText(name, TABLES[name])).join('\n')}`;

function tableText(name: string, table: Table): string {
  const width = Math.max(...Object.keys(table).map(({ length }) => length));
  const lines = Object.entries(table).map(
    ([column, [type, meaning]]) => `  ${column.padEnd(width)}  ${type.padEnd('TIMESTAMPTZ'.length)}  ${meaning}`,
  );
  return [`${name}.parquet`, ...lines, ''].join('\n');
}
