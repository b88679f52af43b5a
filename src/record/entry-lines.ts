/** Entries as JSON Lines: one entry a line, in canonical JSON (RFC 8785) and UTF-8, each line ended by a line feed. */
import { recordFindings } from '../words/record-findings.ts';
import { canonical } from './canonical.ts';
import { Line, Misread, type Entry } from './entry.ts';

const LINE_FEED = 0x0a;

/** The lines of entries. @throws where an entry has no canonical form, as no entry of a record that is whole */
export const entryLines = (entries: readonly Entry[]): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(entries.map((entry) => `${canonical(entry)}\n`).join(''));

/** What the lines hold, in order: a JSON value with its line for each, or a `Misread` that says why there is none. */
export function readEntryLines(bytes: Uint8Array): readonly (Line | Misread)[] {
  const found: (Line | Misread)[] = [];
  for (let from = 0; from < bytes.length;) {
    const end = bytes.indexOf(LINE_FEED, from);
    found.push(end < 0 ? new Misread(recordFindings.lineCutOff) : readLine(bytes.subarray(from, end)));
    from = end < 0 ? bytes.length : end + 1;
  }
  return found;
}

/** How many lines there are, the last one counted where it is not ended. */
export function countLines(bytes: Uint8Array): number {
  let count = 0;
  for (let from = 0; from < bytes.length; count++) {
    const end = bytes.indexOf(LINE_FEED, from);
    from = end < 0 ? bytes.length : end + 1;
  }
  return count;
}

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

function readLine(line: Uint8Array): Line | Misread {
  try {
    const text = utf8.decode(line);
    const value: unknown = JSON.parse(text);
    // An entry is written in one way only. What reads the same and is written otherwise was touched.
    return canonical(value) === text ? new Line(value, text) : new Misread(recordFindings.lineRewritten);
  } catch {
    return new Misread(recordFindings.lineUnreadable);
  }
}
