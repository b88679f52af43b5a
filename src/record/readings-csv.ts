/** The readings of a session as a table for a spreadsheet: CSV as in RFC 4180. */
import type { Basis } from '../session/event.ts';
import type { Reading } from '../session/reading.ts';
import { spreadsheets } from '../words/spreadsheets.ts';
import { stateAfter, type SessionRecord } from './session-record.ts';

type Cell = (reading: Reading, record: SessionRecord) => string;

const torqueBasis = ({ basis }: Reading): Extract<Basis, { of: 'torque' }> | null =>
  basis.of === 'torque' ? basis : null;
const titleOf = (reading: Reading, { procedure }: SessionRecord): string =>
  procedure.steps.find(({ id }) => id === reading.step)?.title ?? '';

/** What stands in each column. Verdicts, states and the like are there as the record writes them. */
const CELLS: Readonly<Record<keyof typeof spreadsheets.readings, Cell>> = {
  session: (_, { id }) => id,
  entry: ({ seq }) => `${seq}`,
  time: ({ at }) => at.utc,
  person: ({ person }) => person,
  step: ({ step }) => step,
  stepTitle: titleOf,
  pass: ({ pass }) => `${pass}`,
  fastener: ({ fastener }) => `${fastener}`,
  evidence: ({ evidence }) => evidence,
  reading: ({ reading }) => reading.value,
  unit: ({ reading }) => reading.unit,
  verdict: ({ verdict }) => verdict,
  status: ({ status }) => status,
  inDoubt: ({ doubts = [] }) => doubts.join(', '),
  standsInFor: ({ corrects }) => (corrects === null ? '' : `${corrects}`),
  witness: ({ witnessed }) => witnessed?.person ?? '',
  witnessReading: ({ witnessed }) => witnessed?.reading.value ?? '',
  witnessUnit: ({ witnessed }) => witnessed?.reading.unit ?? '',
  tool: ({ basis }) => basis.tool,
  target: (reading) => torqueBasis(reading)?.target.value ?? '',
  targetUnit: (reading) => torqueBasis(reading)?.target.unit ?? '',
  runningTorque: (reading) => torqueBasis(reading)?.runningTorque?.value ?? '',
  runningTorqueUnit: (reading) => torqueBasis(reading)?.runningTorque?.unit ?? '',
  windowMin: (reading) => torqueBasis(reading)?.window.min.value ?? '',
  windowMax: (reading) => torqueBasis(reading)?.window.max.value ?? '',
  windowUnit: (reading) => torqueBasis(reading)?.window.max.unit ?? '',
  judgedBy: (reading) => torqueBasis(reading)?.judging.rule ?? '',
};
const COLUMNS = Object.keys(CELLS) as readonly (keyof typeof CELLS)[];

/**
 * Every reading that was ever captured, in the order of the record, with what became of it and what it was judged by.
 * Numbers are the decimal text of the record. Of a broken record, only what comes before the break is in the table.
 */
export function readingsCsv(record: SessionRecord): string {
  const { readings } = stateAfter(record, record.entries.length);
  const rows = readings.map((reading) => COLUMNS.map((column) => CELLS[column](reading, record)));
  return [COLUMNS.map((column) => spreadsheets.readings[column]), ...rows]
    .map((row) => `${row.map(csvCell).join(',')}\r\n`)
    .join('');
}

/** A spreadsheet takes what begins so for a formula and runs it; the wide forms too, in some. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;
/** What needs no quotes, whatever a spreadsheet takes for a separator. */
const PLAIN = /^[\p{L}\p{N} .:·_-]*$/u;

/** A cell of a table. Text that a spreadsheet would run as a formula is led by an apostrophe, so that it stays text. */
export function csvCell(text: string): string {
  const safe = FORMULA.test(text) ? `'${text}` : text;
  return PLAIN.test(safe) ? safe : `"${safe.replaceAll('"', '""')}"`;
}
