/** A manifest: which recordings there are, and what was said in each. Tab-separated text with a header. */
import { NotUsable } from './refusal.ts';

export interface ManifestRow {
  /** Of the manifest, counted from 1 with its header. */
  readonly line: number;
  /** As written: relative to the manifest. */
  readonly file: string;
  /** What was said, in lower case with single spaces; empty for a recording that holds nothing for us. */
  readonly transcript: string;
  /** What sort of recording it is, where the manifest has such a column. */
  readonly kind: string | null;
}

export interface Manifest {
  readonly rows: readonly ManifestRow[];
  /** Rows that could not be read, each with its line and the mend. */
  readonly faults: readonly string[];
}

const WANTED = ['file', 'transcript'] as const;
const MEND = 'the first line names the columns, separated by tabs, and has at least file and transcript';

/**
 * Reads a manifest. A row that is wrong is told and left out; the others stand.
 * @throws NotUsable when the header is wrong, or there are no rows
 */
export function readManifest(bytes: Uint8Array): Manifest {
  const [header = '', ...lines] = textOf(bytes).split(/\r\n|\n|\r/);
  const columns = header.split('\t').map((name) => name.trim().toLowerCase());
  for (const name of WANTED) {
    const count = columns.filter((column) => column === name).length;
    if (count === 0) throw new NotUsable(`line 1: there is no column "${name}"; ${MEND}`);
    if (count > 1) throw new NotUsable(`line 1: there are ${count} columns "${name}"; keep one`);
  }
  const rows: ManifestRow[] = [];
  const faults: string[] = [];
  for (const [at, text] of lines.entries()) {
    if (text.trim() === '') continue;
    const line = at + 2;
    const cells = text.split('\t');
    const cell = (name: string): string | undefined => cells[columns.indexOf(name)];
    const [file, transcript] = [cell('file')?.trim(), cell('transcript')];
    if (cells.length > columns.length || transcript === undefined)
      faults.push(`line ${line}: ${cells.length} cells, and the header has ${columns.length}; put a tab between cells`);
    else if (!file) faults.push(`line ${line}: the file is not named; name it relative to the manifest`);
    else rows.push({ line, file, transcript: plain(transcript), kind: cell('kind')?.trim() ?? null });
  }
  if (rows.length === 0 && faults.length === 0) throw new NotUsable('it lists no recordings; add a line for each');
  return { rows, faults };
}

function textOf(bytes: Uint8Array): string {
  try {
    // A mark of the byte order at the beginning is left out.
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new NotUsable(`it is not UTF-8 text; ${MEND}`);
  }
}

const plain = (transcript: string): string => transcript.trim().toLowerCase().replace(/\s+/g, ' ');
