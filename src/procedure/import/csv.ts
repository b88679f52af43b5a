/** Tables as text (CSV, RFC 4180), with any mark between the fields, and with what is wrong with their quotes. */

export interface CsvRow {
  /** Where it begins in the text, from 1: a quoted field may hold line breaks. */
  readonly line: number;
  /** Without the spaces around them. */
  readonly cells: readonly string[];
  /** Quotes that are never closed, or that stand alone inside a quoted field. */
  readonly quotes: readonly ('not closed' | 'in a field')[];
}

const LINE_BREAK = /\r\n|\r|\n/g;

/** The rows of a text, empty ones among them. @param mark the character that parts the fields */
export function* csvRows(text: string, mark: string): Generator<CsvRow> {
  let at = 0;
  let line = 1;
  while (at < text.length) {
    const from = at;
    const row = { line, cells: [] as string[], quotes: [] as ('not closed' | 'in a field')[] };
    do {
      if (row.cells.length > 0) at += 1;
      row.cells.push((text[at] === '"' ? quotedField(row.quotes) : plainField()).trim());
    } while (text[at] === mark);
    yield row;
    at += text.startsWith('\r\n', at) ? 2 : 1;
    line += text.slice(from, at).match(LINE_BREAK)?.length ?? 0;
  }

  function plainField(): string {
    const from = at;
    while (at < text.length && !isEnd(at)) at += 1;
    return text.slice(from, at);
  }

  /** Two quotes are one of the field; one ends it, where nothing but spaces comes before the next mark. */
  function quotedField(quotes: CsvRow['quotes'][number][]): string {
    const from = at + 1;
    for (at = from; ; at++) {
      at = text.indexOf('"', at);
      if (at < 0) {
        quotes.push('not closed');
        at = text.length;
        return text.slice(from);
      }
      if (text[at + 1] === '"') {
        at += 1;
        continue;
      }
      const field = text.slice(from, at).replaceAll('""', '"');
      let next = at + 1;
      while (text[next] === ' ') next += 1;
      if (next >= text.length || isEnd(next)) {
        at = next;
        return field;
      }
      quotes.push('in a field');
    }
  }

  function isEnd(place: number): boolean {
    const character = text[place];
    return character === mark || character === '\n' || character === '\r';
  }
}
