/**
 * Choosing with one switch or two: choices are lit one after another, and a press takes the lit one. Pure: what moves the
 * light, a clock or a second switch, is outside.
 */
import { valueKeys } from '../words/value-keys.ts';

export interface ScanItem<Value> {
  readonly label: string;
  readonly value: Value;
}

/** Choices that are lit together first, and one by one when their row is taken. */
export interface ScanRow<Value> {
  readonly label: string;
  readonly items: readonly ScanItem<Value>[];
}

/** More than these in one row take too long to wait for: then rows are lit first. */
export const MOST_IN_A_ROW = 6;
/** After so many rounds in which nothing was taken, nobody is choosing. */
export const ROUNDS = 3;

export interface Scan<Value> {
  readonly rows: readonly ScanRow<Value>[];
  /** The row whose choices are lit; null while the rows are. A single row is always entered. */
  readonly row: number | null;
  /** The place of what is lit among {@link litChoices}. */
  readonly lit: number;
  /** Rounds that went by at this level. */
  readonly round: number;
}

/** What can be lit at this level, in order. A row that was entered can be left again, last. */
export type Lit<Value> =
  | { readonly kind: 'row'; readonly label: string; readonly row: number }
  | { readonly kind: 'item'; readonly label: string; readonly value: Value }
  | { readonly kind: 'out'; readonly label: string };

export type Taken<Value> =
  | { readonly kind: 'taken'; readonly value: Value }
  /** Another level is lit now. */
  | { readonly kind: 'moved'; readonly scan: Scan<Value> };

/** Begins with the first choice lit. @throws RangeError where there is nothing to choose from */
export function beginScan<Value>(rows: readonly ScanRow<Value>[]): Scan<Value> {
  if (rows.length === 0 || rows.some(({ items }) => items.length === 0))
    throw new RangeError('A row without a choice can never be left by taking one.');
  return { rows, row: rows.length === 1 ? 0 : null, lit: 0, round: 0 };
}

/** Choices in rows of at most six, as even as they can be and in their order; each row is called by its choices. */
export function inRows<Value>(items: readonly ScanItem<Value>[]): readonly ScanRow<Value>[] {
  const count = Math.ceil(items.length / MOST_IN_A_ROW);
  return Array.from({ length: count }, (_, row) => {
    const own = items.slice(Math.round((row * items.length) / count), Math.round(((row + 1) * items.length) / count));
    return { label: own.map(({ label }) => label).join(', '), items: own };
  });
}

/** Everything that can be lit at this level. */
export function litChoices<Value>({ rows, row }: Scan<Value>): readonly Lit<Value>[] {
  const entered = row === null ? undefined : rows[row];
  if (entered === undefined) return rows.map(({ label }, at) => ({ kind: 'row', label, row: at }));
  const items = entered.items.map(({ label, value }) => ({ kind: 'item', label, value }) as const);
  return rows.length === 1 ? items : [...items, { kind: 'out', label: valueKeys.otherRows }];
}

/** What is lit now. */
export const litNow = <Value>(scan: Scan<Value>): Lit<Value> | undefined => litChoices(scan)[scan.lit];

/** The next choice is lit; null where the rounds are over and nobody chose. */
export function moveOn<Value>(scan: Scan<Value>): Scan<Value> | null {
  const lit = scan.lit + 1;
  if (lit < litChoices(scan).length) return { ...scan, lit };
  return scan.round + 1 < ROUNDS ? { ...scan, lit: 0, round: scan.round + 1 } : null;
}

/** Takes what is lit. */
export function takeLit<Value>(scan: Scan<Value>): Taken<Value> {
  const lit = litNow(scan);
  if (lit?.kind === 'item') return { kind: 'taken', value: lit.value };
  const row = lit?.kind === 'row' ? lit.row : null;
  // Out of a row, the light goes on behind it: the row itself was not what was wanted.
  const next = lit?.kind === 'out' && scan.row !== null ? (scan.row + 1) % scan.rows.length : 0;
  return { kind: 'moved', scan: { ...scan, row, lit: next, round: 0 } };
}
