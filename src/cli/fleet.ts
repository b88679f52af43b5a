/** Figures over many sessions: `tsx src/cli/fleet.ts FOLDER`, every sealed file checked before it counts. */
import { mkdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { SessionFile } from '../record/sealed-file.ts';
import { settleCopies, type SetAside } from './fleet/copies.ts';
import { openFleetDatabase, type FleetDatabase } from './fleet/database.ts';
import { askAll, type Answered } from './fleet/figures.ts';
import { saveFleet } from './fleet/save.ts';
import { rowsOf } from './fleet/rows.ts';
import { figureText } from './fleet/text.ts';
import { sealedFilesUnder, type Found } from './fleet/walk.ts';
import {
  endWithReader,
  exitCodeFor,
  inOrder,
  openFile,
  printable,
  printLine,
  verdictLine,
  verdictObject,
} from './verify-file.ts';

const USAGE = `Usage: npm run fleet -- [--out FOLDER] [--names] [--key THUMBPRINT]… [--json] FOLDER
Reads every sealed file (.bhsession) under a folder, lists those that are not intact or not readable and leaves them out,
and gives figures over the others: holds and stops, questions, first time right, spread of the values, trend of the tools.
  --out FOLDER      writes the tables as Parquet files, a README.txt about their columns, and the figures as a page,
                    fleet.html; files of these names are written anew
  --names           puts names of people, and the reasons that they dictated, into the tables; else they are left out.
                    No figure is ever of one person. Names of files, and what is quoted of a faulty one, stand as they
                    were found with and without it
  --key THUMBPRINT  of a key that is known (may be given several times): a seal by any other is then not good enough
  --json            one object a line: each file that is left out, then each figure
Exit code 0: all intact; 1: one is not intact; 2: one is not readable, none was found, or not used as above.`;

export async function main(args: readonly string[]): Promise<number> {
  const options = optionsOf(args);
  if (options === null) {
    console.error(USAGE);
    return 2;
  }
  if ('help' in options) {
    console.log(USAGE);
    return 0;
  }
  const trouble =
    (await troubleWith(options.folder)) ?? (options.out === null ? null : await troubleMaking(options.out));
  if (trouble !== null) {
    console.error(printable(trouble));
    return 2;
  }
  endWithReader();
  // Whoever stops it leaves nothing behind in the folder for temporary files.
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(STOPPED));
  const database = await openFleetDatabase();
  try {
    const { worst, counted } = await load(database, options);
    if (counted === 0) return worst;
    const figures = await askAll(database);
    for (const line of figures.flatMap(options.json ? figureObject : (figure) => ['', ...figureText(figure)]))
      await printLine(options.json ? line : printable(line));
    if (options.out !== null) await saveFleet(database, figures, options.out);
    return worst;
  } catch (error) {
    // A disk that is full, or a file that may not be written: everything that was read is as it was.
    console.error(
      printable(`The tables cannot be kept or written: ${error instanceof Error ? error.message : String(error)}`),
    );
    return 2;
  } finally {
    await database.close();
  }
}

/** The exit code of a program that was stopped (128 + SIGINT). */
const STOPPED = 130;

/** Reads all files into the tables and tells of those that are left out. */
async function load(database: FleetDatabase, { folder, keys, names, json }: Job): Promise<Loaded> {
  const print = (object: object, line: string): Promise<void> =>
    printLine(json ? JSON.stringify(object) : printable(line));
  const open = async ({ name, fault }: Found): Promise<Opened> => ({
    name,
    file: fault === null ? await openFile(path.join(folder, name), keys) : { kind: 'refused', why: fault },
  });
  let [found, intact, worst] = [0, 0, 0];
  for await (const { name, file } of inOrder(sealedFilesUnder(folder), open)) {
    found += 1;
    worst = Math.max(worst, exitCodeFor(file));
    const verdict = verdictObject(name, file);
    const { at, session, entries, head, thumbprint, why } = verdict;
    const row = { file: name, verdict: verdict.verdict, entry: at, why, session, entries, head, thumbprint };
    database.add({ files: [row] }, found);
    if (file.kind === 'opened' && file.verdict.kind === 'intact' && file.session.kind === 'readable') {
      intact += 1;
      database.add(rowsOf(file.session.record, { names }), found);
    } else await print({ kind: 'left out', ...verdict }, verdictLine(name, file));
  }
  const aside = await settleCopies(database, (name) => entriesIn(path.join(folder, name), keys));
  for (const each of aside) await print({ kind: 'left out', ...each }, asideLine(each));
  if (aside.some(({ verdict }) => verdict === 'contradicted')) worst = Math.max(worst, 1);
  const counted = intact - aside.length;
  await print({ kind: 'files', found, counted }, `${found} found, ${counted} in the figures.`);
  return { worst: found === 0 ? 2 : worst, counted };
}

interface Loaded {
  /** The exit code. */
  readonly worst: number;
  /** Files that are in the figures. */
  readonly counted: number;
}

interface Opened {
  readonly name: string;
  readonly file: SessionFile;
}

const asideLine = ({ file, verdict, why }: SetAside): string =>
  `${file}: ${verdict === 'contradicted' ? 'CONTRADICTED' : 'copy'}: ${why}`;

/** The entries of a file that was intact before. */
async function entriesIn(name: string, keys: readonly string[]) {
  const file = await openFile(name, keys);
  return file.kind === 'opened' && file.session.kind === 'readable' ? file.session.record.entries : [];
}

function figureObject({ id, title, about, columns, rows }: Answered): readonly string[] {
  return [JSON.stringify({ kind: 'figure', id, title, about, columns, rows })];
}

async function troubleWith(folder: string): Promise<string | null> {
  try {
    return (await stat(folder)).isDirectory() ? null : `${folder}: It is no folder.`;
  } catch (error) {
    return `${folder}: It cannot be opened (${(error as NodeJS.ErrnoException).code ?? String(error)}).`;
  }
}

async function troubleMaking(folder: string): Promise<string | null> {
  try {
    await mkdir(folder, { recursive: true });
    return null;
  } catch (error) {
    return `${folder}: It cannot be made a folder to write into (${(error as NodeJS.ErrnoException).code ?? String(error)}).`;
  }
}

interface Job {
  readonly folder: string;
  readonly out: string | null;
  readonly names: boolean;
  readonly keys: readonly string[];
  readonly json: boolean;
}

function optionsOf(args: readonly string[]): Job | { readonly help: true } | null {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        names: { type: 'boolean', default: false },
        key: { type: 'string', multiple: true, default: [] },
        json: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    });
    if (values.help) return { help: true };
    const [folder, ...more] = positionals;
    if (folder === undefined || more.length > 0) return null;
    return { folder, out: values.out ?? null, names: values.names, keys: values.key, json: values.json };
  } catch (error) {
    if (error instanceof TypeError) return null;
    throw error;
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exitCode = await main(process.argv.slice(2));
