/** The observed values of a session as a table for a spreadsheet: CSV as in RFC 4180. */
import type { ObservedValue } from '../session/observed.ts';
import { spreadsheets } from '../words/spreadsheets.ts';
import { csvCell } from './readings-csv.ts';
import { stateAfter, type SessionRecord } from './session-record.ts';

type Cell = (value: ObservedValue, record: SessionRecord) => string;

/** What stands in each column. Verdicts, states and the like are there as the record writes them. */
const CELLS: Readonly<Record<keyof typeof spreadsheets.values, Cell>> = {
  session: (_, { id }) => id,
  entry: ({ seq }) => `${seq}`,
  time: ({ at }) => at.utc,
  person: ({ person }) => person,
  step: ({ step }) => step,
  stepTitle: ({ step }, { procedure }) => procedure.steps.find(({ id }) => id === step)?.title ?? '',
  value: ({ value }) => value,
  unit: ({ unit }) => unit,
  windowMin: ({ window }) => window?.min ?? '',
  windowMax: ({ window }) => window?.max ?? '',
  verdict: ({ verdict }) => verdict,
  status: ({ status }) => status,
  waited: ({ waited }) => (waited === null ? '' : `${waited}`),
  leftOpen: ({ leftOpen }) => (leftOpen ? spreadsheets.yes : spreadsheets.no),
  standsInFor: ({ corrects }) => (corrects === null ? '' : `${corrects}`),
};
const COLUMNS = Object.keys(CELLS) as readonly (keyof typeof CELLS)[];

/** Every value that was ever observed, in the order of the record, with what became of it. Numbers are its decimal text. */
export function valuesCsv(record: SessionRecord): string {
  const { observed } = stateAfter(record, record.entries.length);
  const rows = observed.map((value) => COLUMNS.map((column) => CELLS[column](value, record)));
  return [COLUMNS.map((column) => spreadsheets.values[column]), ...rows]
    .map((row) => `${row.map(csvCell).join(',')}\r\n`)
    .join('');
}
