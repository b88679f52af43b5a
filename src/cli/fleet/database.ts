/** The tables in a database of their own, on disk: however many sessions there are, little of them is in memory. */
import { rmSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import {
  DuckDBDataChunkWriter,
  DuckDBInstance,
  JSToDuckDBValueConverter,
  type DuckDBAppender,
  type DuckDBConnection,
  type JS,
} from '@duckdb/node-api';
import { TABLE_NAMES, TABLES, type Row, type Rows, type Table, type TableName } from './tables.ts';

/** A cell of an answer. Counts are asked for as INTEGER, so that none is a bigint. */
export type Cell = string | number | boolean | Date | null;
export type Answer = readonly Readonly<Record<string, Cell>>[];

/** Of the memory of the database. What does not fit waits on disk. */
const MEMORY = '256MB';

export interface FleetDatabase {
  /** Adds rows to their tables. `file` numbers the file that they come from. */
  add(rows: Rows, file: number): void;
  /** Asks in SQL, once all that was added is there. */
  ask(sql: string): Promise<Answer>;
  /** Changes in SQL. */
  run(sql: string): Promise<void>;
  /** Writes each table as a Parquet file into a folder that is there. */
  save(folder: string): Promise<void>;
  close(): Promise<void>;
}

/** An empty database with all tables, beside the system's other temporary files; it is gone when it is closed. */
export async function openFleetDatabase(): Promise<FleetDatabase> {
  const folder = await mkdtemp(path.join(tmpdir(), 'fleet-'));
  const removeNow = (): void => rmSync(folder, { recursive: true, force: true });
  process.once('exit', removeNow);
  const instance = await DuckDBInstance.create(path.join(folder, 'fleet.duckdb'), {
    memory_limit: MEMORY,
    // Nothing is ever fetched: Parquet is built in.
    autoinstall_known_extensions: 'false',
    autoload_known_extensions: 'false',
  });
  const connection = await instance.connect();
  const writers = new Map<TableName, TableWriter>();
  for (const name of TABLE_NAMES) {
    await connection.run(`CREATE TABLE ${name} (source INTEGER, ${columnsOf(name)})`);
    writers.set(name, await TableWriter.on(connection, name));
  }
  const flush = (): void => writers.forEach((writer) => writer.flush());
  return {
    add(rows, file) {
      for (const name of TABLE_NAMES) for (const row of rows[name] ?? []) writers.get(name)?.add(row, file);
    },
    async ask(sql) {
      flush();
      const reader = await connection.runAndReadAll(sql);
      return reader.getRowObjectsJS().map((row) => Object.fromEntries(Object.entries(row).map(asCell)));
    },
    async run(sql) {
      flush();
      await connection.run(sql);
    },
    async save(into) {
      flush();
      for (const name of TABLE_NAMES) {
        const file = quoted(path.join(into, `${name}.parquet`));
        await connection.run(
          `COPY (SELECT * EXCLUDE (source) FROM ${name} ORDER BY source, rowid) TO ${file} (FORMAT parquet)`,
        );
      }
    },
    async close() {
      writers.forEach((writer) => writer.close());
      connection.closeSync();
      instance.closeSync();
      await rm(folder, { recursive: true, force: true });
      process.off('exit', removeNow);
    },
  };
}

/** Rows of one table, handed over by the thousand. */
class TableWriter {
  readonly #columns: readonly string[];
  readonly #appender: DuckDBAppender;
  readonly #writer: DuckDBDataChunkWriter<JS>;

  private constructor(name: TableName, appender: DuckDBAppender) {
    this.#columns = Object.keys(TABLES[name]);
    this.#appender = appender;
    this.#writer = DuckDBDataChunkWriter.forAppender(appender, { converter: JSToDuckDBValueConverter });
  }

  static on = async (connection: DuckDBConnection, name: TableName): Promise<TableWriter> =>
    new TableWriter(name, await connection.createAppender(name));

  add(row: Row<TableName>, file: number): void {
    const cells = row as Readonly<Record<string, Cell>>;
    this.#writer.appendRow([file, ...this.#columns.map((column) => cells[column] ?? null)]);
  }

  flush(): void {
    this.#writer.flush();
    this.#appender.flushSync();
  }

  close(): void {
    this.#appender.closeSync();
  }
}

const columnsOf = (name: TableName): string =>
  Object.entries<Table[string]>(TABLES[name])
    .map(([column, [type]]) => `"${column}" ${type}`)
    .join(', ');

/** A text in SQL. */
export const quoted = (text: string): string => `'${text.replaceAll("'", "''")}'`;

function asCell([name, value]: [string, unknown]): [string, Cell] {
  if (value === null || value instanceof Date) return [name, value];
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return [name, value];
  throw new TypeError(`The column ${name} of an answer has no plain value.`);
}
