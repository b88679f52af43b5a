/** The observed values of a session as a table for a spreadsheet: CSV as in RFC 4180. */
import type { ObservedValue } from '../session/observed.ts';
import { csvCell } from './readings-csv.ts';
import { stateAfter, type SessionRecord } from './session-record.ts';

type Column = readonly [name: string, cell: (value: ObservedValue, record: SessionRecord) => string];

const COLUMNS: readonly Column[] = [
  ['session', (_, { id }) => id],
  ['entry', ({ seq }) => `${seq}`],
  ['time (UTC)', ({ at }) => at.utc],
  ['person', ({ person }) => person],
  ['step', ({ step }) => step],
  ['step title', ({ step }, { procedure }) => procedure.steps.find(({ id }) => id === step)?.title ?? ''],
  ['value', ({ value }) => value],
  ['unit', ({ unit }) => unit],
  ['window min', ({ window }) => window?.min ?? ''],
  ['window max', ({ window }) => window?.max ?? ''],
  ['verdict', ({ verdict }) => verdict],
  ['status', ({ status }) => status],
  ['waited, s', ({ waited }) => (waited === null ? '' : `${waited}`)],
  ['left open', ({ leftOpen }) => (leftOpen ? 'yes' : 'no')],
  ['stands in for entry', ({ corrects }) => (corrects === null ? '' : `${corrects}`)],
];

/** Every value that was ever observed, in the order of the record, with what became of it. Numbers are its decimal text. */
export function valuesCsv(record: SessionRecord): string {
  const { observed } = stateAfter(record, record.entries.length);
  const rows = observed.map((value) => COLUMNS.map(([, cell]) => cell(value, record)));
  return [COLUMNS.map(([name]) => name), ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}
