/** The readings of a session as a table for a spreadsheet: CSV as in RFC 4180. */
import type { Basis } from '../session/event.ts';
import type { Reading } from '../session/reading.ts';
import { stateAfter, type SessionRecord } from './session-record.ts';

type Column = readonly [name: string, cell: (reading: Reading, record: SessionRecord) => string];

const torqueBasis = ({ basis }: Reading): Extract<Basis, { of: 'torque' }> | null =>
  basis.of === 'torque' ? basis : null;
const titleOf = (reading: Reading, { procedure }: SessionRecord): string =>
  procedure.steps.find(({ id }) => id === reading.step)?.title ?? '';

const COLUMNS: readonly Column[] = [
  ['session', (_, { id }) => id],
  ['entry', ({ seq }) => `${seq}`],
  ['time (UTC)', ({ at }) => at.utc],
  ['person', ({ person }) => person],
  ['step', ({ step }) => step],
  ['step title', titleOf],
  ['pass', ({ pass }) => `${pass}`],
  ['fastener', ({ fastener }) => `${fastener}`],
  ['evidence', ({ evidence }) => evidence],
  ['reading', ({ reading }) => reading.value],
  ['unit', ({ reading }) => reading.unit],
  ['verdict', ({ verdict }) => verdict],
  ['status', ({ status }) => status],
  ['in doubt', ({ doubts = [] }) => doubts.join(', ')],
  ['stands in for entry', ({ corrects }) => (corrects === null ? '' : `${corrects}`)],
  ['witness', ({ witnessed }) => witnessed?.person ?? ''],
  ['witness reading', ({ witnessed }) => witnessed?.reading.value ?? ''],
  ['witness unit', ({ witnessed }) => witnessed?.reading.unit ?? ''],
  ['tool', ({ basis }) => basis.tool],
  ['target at the fastener', (reading) => torqueBasis(reading)?.target.value ?? ''],
  ['target unit', (reading) => torqueBasis(reading)?.target.unit ?? ''],
  ['running torque added', (reading) => torqueBasis(reading)?.runningTorque?.value ?? ''],
  ['running torque unit', (reading) => torqueBasis(reading)?.runningTorque?.unit ?? ''],
  ['window min at the wrench', (reading) => torqueBasis(reading)?.window.min.value ?? ''],
  ['window max at the wrench', (reading) => torqueBasis(reading)?.window.max.value ?? ''],
  ['window unit', (reading) => torqueBasis(reading)?.window.max.unit ?? ''],
  ['judged by', (reading) => torqueBasis(reading)?.judging.rule ?? ''],
];

/**
 * Every reading that was ever captured, in the order of the record, with what became of it and what it was judged by.
 * Numbers are the decimal text of the record. Of a broken record, only what comes before the break is in the table.
 */
export function readingsCsv(record: SessionRecord): string {
  const { readings } = stateAfter(record, record.entries.length);
  const rows = readings.map((reading) => COLUMNS.map(([, cell]) => cell(reading, record)));
  return [COLUMNS.map(([name]) => name), ...rows].map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
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
