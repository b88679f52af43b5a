/** A session as text: its story, and the readings as tables. */
import { readingMatrices, type MatrixCell, type ReadingMatrix } from '../record/reading-matrix.ts';
import { stateAfter, type SessionRecord } from '../record/session-record.ts';
import type { Entry } from '../record/entry.ts';
import { describe } from '../ui/describe.ts';

/** One entry in words. */
export interface StoryLine {
  readonly seq: number;
  /** UTC (RFC 3339). */
  readonly at: string;
  readonly person: string;
  readonly source: Entry['source'];
  readonly what: string;
  readonly heard: string | null;
}

/** The entries that can be trusted, in words, oldest first: by the same fold that ran live. */
export function* storyOf(record: SessionRecord): Generator<StoryLine> {
  for (const entry of record.entries) {
    const { seq, at, person, source, heard } = entry;
    const what = describe(entry, stateAfter(record, seq + 1));
    yield { seq, at: at.utc, person, source, what, heard: heard?.text ?? null };
  }
}

/** "  18  2026-03-12 07:44:56Z  Ida Falk, by voice: Stud 1, pass 1: 12 N·m, inside the window (heard: “…”)" */
export const storyText = ({ seq, at, person, source, what, heard }: StoryLine): string =>
  `${`${seq}`.padStart(5)}  ${at.replace('T', ' ').replace(/\.\d+Z$/, 'Z')}  ${person}, by ${source}: ${what}${heard === null ? '' : ` (heard: “${heard}”)`}`;

/** What stands at the end of the trusted entries: one table for each step that tightens. */
export const matricesOf = (record: SessionRecord): readonly ReadingMatrix[] =>
  readingMatrices(stateAfter(record, record.entries.length));

/** A matrix as lines: a line for each fastener, a column for each pass. */
export function matrixText({ title, label, passes, rows }: ReadingMatrix): readonly string[] {
  const heads = [label, ...passes.map(({ index, name }) => (index === 0 ? name : `pass ${index}: ${name}`))];
  const table = [heads, ...rows.map(({ fastener, cells }) => [`${fastener}`, ...cells.map(cellText)])];
  const widths = heads.map((_, column) => Math.max(...table.map((row) => row[column]?.length ?? 0)));
  return [
    title,
    ...table.map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    ),
  ];
}

/** "24.5 N·m, in, Ida Falk; witness Tom Brandt 24.5 N·m" */
function cellText(cell: MatrixCell): string {
  if (cell === null) return '–';
  if (cell.kind !== 'read') return cell.kind;
  const { reading, verdict, person, witnessed } = cell.reading;
  const witness = witnessed ? `; witness ${witnessed.person} ${witnessed.reading.value} ${witnessed.reading.unit}` : '';
  return `${reading.value} ${reading.unit}, ${verdict}, ${person}${witness}`;
}
