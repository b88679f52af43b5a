/** A session as text: its story, and the readings as tables. */
import { readingMatrices, type MatrixCell, type ReadingMatrix } from '../record/reading-matrix.ts';
import { cameIn, type CameIn } from '../record/came-in.ts';
import { fateOf, historyOf, type Fate } from '../record/reading-history.ts';
import { stateAfter, type SessionRecord } from '../record/session-record.ts';
import type { Entry } from '../record/entry.ts';
import type { Reading } from '../session/state.ts';
import { describe } from '../ui/describe.ts';
import { fates } from '../words/fates.ts';

/** One entry in words. */
export interface StoryLine {
  readonly seq: number;
  /** UTC (RFC 3339). */
  readonly at: string;
  readonly person: string;
  readonly source: Entry['source'];
  readonly what: string;
  /** The words that came in, and how. */
  readonly heard: string | null;
  readonly cameIn: CameIn | null;
}

/** The entries that can be trusted, in words, oldest first: by the same fold that ran live. */
export function* storyOf(record: SessionRecord): Generator<StoryLine> {
  for (const entry of record.entries) {
    const { seq, at, person, source, heard } = entry;
    const what = describe(entry, stateAfter(record, seq + 1));
    yield { seq, at: at.utc, person, source, what, heard: heard?.text ?? null, cameIn: heard && cameIn(source, heard) };
  }
}

/** "  18  2026-03-12 07:44:56Z  Ida Falk, by voice: Stud 1, pass 1: 12 N·m, inside the window (heard: “…”)" */
export const storyText = ({ seq, at, person, source, what, heard, cameIn }: StoryLine): string =>
  `${`${seq}`.padStart(5)}  ${at.replace('T', ' ').replace(/\.\d+Z$/, 'Z')}  ${person}, by ${source}: ${what}${heard === null ? '' : ` (${cameIn}: “${heard}”)`}`;

/** The readings of a step that tightens: a table of what stands, and every other reading that was ever taken. */
export interface StepReadings extends ReadingMatrix {
  readonly others: readonly { readonly reading: Reading; readonly fate: Fate }[];
}

/** As it is at the end of the trusted entries: one for each step that tightens. */
export function stepReadingsOf(record: SessionRecord): readonly StepReadings[] {
  const state = stateAfter(record, record.entries.length);
  return readingMatrices(state).map((matrix) => {
    const cells = matrix.rows.flatMap((row) => row.cells);
    const inTable = new Set(cells.flatMap((cell) => (cell?.kind === 'read' ? [cell.reading.seq] : [])));
    const others = state.readings.filter(({ step, seq }) => step === matrix.step && !inTable.has(seq));
    return {
      ...matrix,
      others: others.map((reading) => ({ reading, fate: fateOf(reading, historyOf(state.readings, reading)) })),
    };
  });
}

/** Them as lines: a line for each fastener with a column for each pass, then a line for each reading that is not in the table. */
export function stepReadingsText({ title, label, passes, rows, others }: StepReadings): readonly string[] {
  const heads = [label, ...passes.map(head)];
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
    ...others.map(({ reading, fate }) => {
      const pass = passes.find(({ index }) => index === reading.pass);
      return `  entry ${reading.seq}: ${label} ${reading.fastener}, ${pass ? head(pass) : reading.pass}: ${readingText(reading)}: ${fates[fate]}`;
    }),
  ];
}

const head = ({ index, name }: ReadingMatrix['passes'][number]): string =>
  index === 0 ? name : `pass ${index}: ${name}`;

function cellText(cell: MatrixCell): string {
  if (cell === null) return '–';
  if (cell.kind !== 'read') return cell.kind;
  return `${readingText(cell.reading)}${cell.isLeftOpen ? '; left open' : ''}`;
}

/** "24.5 N·m, in, Ida Falk; witness Tom Brandt 24.5 N·m" */
function readingText({ reading, verdict, person, witnessed }: Reading): string {
  const witness = witnessed ? `; witness ${witnessed.person} ${witnessed.reading.value} ${witnessed.reading.unit}` : '';
  return `${reading.value} ${reading.unit}, ${verdict}, ${person}${witness}`;
}
