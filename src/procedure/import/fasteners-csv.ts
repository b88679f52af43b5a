/** A table of fasteners (CSV, RFC 4180) as a layout: a number and a place each, and perhaps the thread of them all. */
import Papa from 'papaparse';
import { DECIMAL } from '../../units/index.ts';
import { tableFaults } from '../../words/table-faults.ts';
import { quoted } from '../fault.ts';
import type { JsonFields } from '../edit/draft.ts';

/** Characters. A thousand fasteners have a hundredth of it. */
export const LARGEST_TABLE = 2_000_000;
const MOST_FASTENERS = 1000;

/** Something wrong with a table, at its line and column, both from 1; column null for the line as a whole. */
export interface TableFault {
  readonly line: number;
  readonly column: number | null;
  readonly message: string;
}

export type Fasteners =
  | {
      readonly kind: 'read';
      /** Free places with their numbers, as they stand in a procedure file. */
      readonly layout: JsonFields;
      readonly count: number;
      /** Null where the table has no such column, or nothing in it. */
      readonly thread: string | null;
      /** How many decimal commas were read as points: worth a word to the person. */
      readonly decimalCommas: number;
    }
  | { readonly kind: 'faulty'; readonly faults: readonly TableFault[] };

/** A line of the table and where it begins in the text. */
interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

const NAMES = {
  number: ['number', 'no', 'no.', 'nr', 'nr.', '#', 'fastener', 'bolt', 'stud', 'position'],
  x: ['x'],
  y: ['y'],
  thread: ['thread'],
} as const;
type Column = keyof typeof NAMES;
type Columns = Readonly<Record<Column, number>>;

/**
 * Reads fasteners from a table with a header: number, x, y, and perhaps thread, in any order, x to the right and y down,
 * in any one unit of length. Fields are parted by semicolons, commas or tabs. A decimal comma is never guessed at: with
 * commas between the fields it is refused; in a field of its own it is read as a point and counted, unless it may be thousands.
 */
export function fastenersFromCsv(text: string): Fasteners {
  if (text.length > LARGEST_TABLE) return faulty(1, null, tableFaults.tooLong(LARGEST_TABLE));
  const { rows, faults, separator } = rowsOf(text);
  if (faults.length > 0) return { kind: 'faulty', faults };
  const [header, ...body] = rows;
  if (header === undefined) return faulty(1, null, tableFaults.empty);
  const columns = columnsOf(header);
  if ('message' in columns) return { kind: 'faulty', faults: [columns] };
  if (body.length === 0) return faulty(header.line, null, tableFaults.onlyHeader);
  if (body.length > MOST_FASTENERS) return faulty(header.line, null, tableFaults.tooMany(MOST_FASTENERS));
  return fastenersOf(body, columns, header.cells.length, separator);
}

const faulty = (line: number, column: number | null, message: string): Fasteners => ({
  kind: 'faulty',
  faults: [{ line, column, message }],
});

const BYTE_ORDER_MARK = '\uFEFF';

function rowsOf(marked: string): {
  readonly rows: readonly Row[];
  readonly faults: readonly TableFault[];
  readonly separator: string;
} {
  const text = marked.startsWith(BYTE_ORDER_MARK) ? marked.slice(1) : marked;
  const separator = separatorOf(text);
  const rows: Row[] = [];
  const faults: TableFault[] = [];
  let from = 0;
  let line = 1;
  Papa.parse<string[]>(text, {
    delimiter: separator,
    step({ data, errors, meta }, parser) {
      for (const { message } of errors) faults.push({ line, column: null, message: quoteFault(message) });
      const cells = data.map((cell) => cell.trim());
      if (cells.some((cell) => cell !== '')) rows.push({ line, cells });
      line += text.slice(from, meta.cursor).match(/\r\n|\r|\n/g)?.length ?? 0;
      from = meta.cursor;
      if (rows.length > MOST_FASTENERS + 1) parser.abort();
    },
  });
  return { rows, faults, separator };
}

/** The words of the library are for programmers. */
function quoteFault(message: string): string {
  if (/unterminated/i.test(message)) return tableFaults.quoteNotClosed;
  return /quote/i.test(message) ? tableFaults.quoteInField : message;
}

/** What parts the fields of the header parts them all: names hold none of these. */
function separatorOf(text: string): string {
  const header = /^[^\r\n]*/.exec(text.trimStart())?.[0] ?? '';
  return [';', '\t'].find((mark) => header.includes(mark)) ?? ',';
}

function columnsOf({ line, cells }: Row): Columns | TableFault {
  const names = cells.map((cell) => cell.toLowerCase());
  const found: Record<Column, number> = { number: -1, x: -1, y: -1, thread: -1 };
  for (const [i, name] of names.entries()) {
    const column = columnNamed(name);
    if (column === null) continue;
    if (found[column] >= 0) return { line, column: i + 1, message: tableFaults.secondColumn(column) };
    found[column] = i;
  }
  const missing = (['number', 'x', 'y'] as const).filter((column) => found[column] < 0);
  if (missing.length === 0) return found;
  return { line, column: null, message: tableFaults.missingColumns(names.map(quoted), missing) };
}

const columnNamed = (name: string): Column | null =>
  (Object.keys(NAMES) as Column[]).find((column) => (NAMES[column] as readonly string[]).includes(name)) ?? null;

function fastenersOf(rows: readonly Row[], columns: Columns, width: number, separator: string): Fasteners {
  const faults: TableFault[] = [];
  const at = ({ line, cells }: Row, column: Column): { readonly text: string; fault(message: string): void } => ({
    text: cells[columns[column]] ?? '',
    fault: (message) => faults.push({ line, column: columns[column] + 1, message }),
  });
  const seen = new Map<string, number>();
  const threads = new Map<string, number>();
  const numbers: number[] = [];
  let decimalCommas = 0;
  const maybeThousands: (() => void)[] = [];
  const places: JsonFields[] = [];
  for (const row of rows) {
    if (row.cells.length !== width) {
      faults.push({ line: row.line, column: null, message: widthFault(row.cells.length, width, separator) });
      continue;
    }
    const number = at(row, 'number');
    const twin = seen.get(number.text);
    if (!/^[1-9]\d{0,3}$/.test(number.text)) {
      number.fault(tableFaults.badNumber(quoted(number.text)));
    } else if (twin !== undefined) number.fault(tableFaults.numberTwice(number.text, twin));
    else seen.set(number.text, row.line);
    numbers.push(Number(number.text));
    const [x, y] = (['x', 'y'] as const).map((column) => {
      const cell = at(row, column);
      if (AMBIGUOUS.test(cell.text)) {
        cell.fault(tableFaults.maybeThousands(quoted(cell.text)));
      }
      const decimal = decimalOf(cell.text);
      if (decimal === null) cell.fault(tableFaults.noDecimal(quoted(cell.text)));
      if (cell.text.includes(',')) decimalCommas += 1;
      if (POINT_OF_THOUSANDS.test(cell.text)) {
        maybeThousands.push(() => cell.fault(tableFaults.pointAmongCommas(quoted(cell.text))));
      }
      return decimal ?? '0';
    });
    places.push({ x: x ?? '0', y: y ?? '0' });
    const thread = at(row, 'thread').text;
    if (thread !== '' && !threads.has(thread)) threads.set(thread, row.line);
  }
  if (decimalCommas > 0) for (const fault of maybeThousands) fault();
  const [first, second] = [...threads];
  if (first && second) {
    const message = tableFaults.twoThreads(quoted(second[0]), quoted(first[0]));
    faults.push({ line: second[1], column: columns.thread + 1, message });
  }
  if (faults.length > 0) return { kind: 'faulty', faults };
  const layout = { shape: 'free', places, numbers };
  return { kind: 'read', layout, count: places.length, thread: first?.[0] ?? null, decimalCommas };
}

const widthFault = (found: number, expected: number, separator: string): string =>
  tableFaults.width(found, expected, separator === ',' && found > expected);

/** Three figures after a comma: nobody can tell which it is. */
const AMBIGUOUS = /^[+-]?\d{1,3},\d{3}$/;

/** The same with a point, where other numbers of the table have decimal commas. */
const POINT_OF_THOUSANDS = /^[+-]?\d{1,3}\.\d{3}$/;

/** One comma and no point is a decimal comma. Null for anything else odd. */
function decimalOf(text: string): string | null {
  const pointed = /^[+-]?\d+,\d+$/.test(text) ? text.replace(',', '.') : text;
  const plain = pointed
    .replace(/^\+/, '')
    .replace(/^(-?)\./, '$10.')
    .replace(/^(-?)0+(?=\d)/, '$1');
  return DECIMAL.test(plain) && plain.length <= 20 ? plain : null;
}
