/**
 * A value entered without voice and without a keyboard: with one switch, figures are lit and taken; with two, one counts up
 * and the other takes. Pure. Which figures come first depends on nothing: least of all on the value that is wanted.
 */
import { beginScan, litNow, moveOn, takeLit, type Scan, type ScanRow } from '../gesture/scan.ts';
import { valueKeys } from '../words/value-keys.ts';
import { deleted, isValue, keyedIn } from './second-entry.ts';

/** What can be keyed in; `read it` ends the value, `leave` the entry. */
export type EntryKey = string;

const figures = (label: string, ...keys: readonly string[]): ScanRow<EntryKey> => ({
  label,
  items: keys.map((key) => ({ label: key, value: key })),
});

const rows = (): readonly ScanRow<EntryKey>[] => [
  figures(valueKeys.oneToFive, '1', '2', '3', '4', '5'),
  figures(valueKeys.sixToNought, '6', '7', '8', '9', '0'),
  {
    label: valueKeys.otherKeys,
    items: [
      { label: valueKeys.point, value: '.' },
      { label: valueKeys.readIt, value: 'read it' },
      { label: valueKeys.delete, value: 'delete' },
      { label: valueKeys.leave, value: 'leave' },
    ],
  },
];

/** In the order in which they are counted up, and round again. */
const COUNTED: readonly EntryKey[] = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '0', '.', 'delete', 'leave'];

export type HandEntry =
  | { readonly by: 'light'; readonly text: string; readonly scan: Scan<EntryKey> }
  /** `counted` is null before the first count: to take then reads the value. */
  | { readonly by: 'count'; readonly text: string; readonly counted: EntryKey | null };

export type Entered =
  | { readonly kind: 'goes on'; readonly entry: HandEntry }
  | { readonly kind: 'value'; readonly value: string }
  | { readonly kind: 'left' };

export const beginEntry = (by: HandEntry['by'], text = ''): HandEntry =>
  by === 'light' ? { by, text, scan: beginScan(rows()) } : { by, text, counted: null };

/** The light moves on, or one is counted up. Null where nobody has taken anything for some rounds. */
export function movedOn(entry: HandEntry): HandEntry | null {
  if (entry.by === 'light') {
    const scan = moveOn(entry.scan);
    return scan && { ...entry, scan };
  }
  const from = entry.counted === null ? 0 : COUNTED.indexOf(entry.counted) + 1;
  // What leads to no value is not counted: no second point, nothing to delete.
  const counted = COUNTED.slice(from).find((key) => leadsOn(entry.text, key));
  return { ...entry, counted: counted ?? null };
}

/** Takes what is lit or counted. */
export function taken(entry: HandEntry): Entered {
  if (entry.by === 'light') {
    const took = takeLit(entry.scan);
    return took.kind === 'moved' ? { kind: 'goes on', entry: { ...entry, scan: took.scan } } : keyed(entry, took.value);
  }
  return keyed(entry, entry.counted ?? 'read it');
}

function keyed(entry: HandEntry, key: EntryKey): Entered {
  switch (key) {
    case 'leave':
      return { kind: 'left' };
    case 'read it':
      return isValue(entry.text)
        ? { kind: 'value', value: entry.text }
        : { kind: 'goes on', entry: beginEntry(entry.by, entry.text) };
    case 'delete':
      return { kind: 'goes on', entry: beginEntry(entry.by, deleted(entry.text)) };
    default:
      return { kind: 'goes on', entry: beginEntry(entry.by, keyedIn(entry.text, key)) };
  }
}

const leadsOn = (text: string, key: EntryKey): boolean =>
  key === 'leave' || (key === 'delete' ? text !== '' : keyedIn(text, key) !== text);

/** What is lit, or counted, in words. */
export function offered(entry: HandEntry): string {
  if (entry.by === 'light') return litNow(entry.scan)?.label ?? '';
  switch (entry.counted) {
    case null:
      return isValue(entry.text) ? valueKeys.readIt : valueKeys.nothingYet;
    case '.':
      return valueKeys.point;
    case 'delete':
      return valueKeys.delete;
    case 'leave':
      return valueKeys.leave;
    default:
      return entry.counted;
  }
}
