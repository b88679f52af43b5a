import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { csvCell, readingsCsv } from '../../src/record/readings-csv.ts';
import { smallProcedure } from '../support/small-procedure.ts';
import { affirm, correction, negative, next, reading, tell } from '../session/play.ts';
import { opening, recordIn, recordOf, sealAll } from './sealed.ts';

const played = tell(
  await opening(smallProcedure),
  ...[next, reading('12'), affirm, reading('14'), negative, reading('12.5'), affirm, correction('13'), affirm],
);
const record = await recordIn(await sealAll(played.events));
const csv = readingsCsv(record);

/** A table as RFC 4180 reads it: quotes doubled inside quotes, lines ended by CR LF. */
function parse(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const row: string[] = [];
    for (;;) {
      let cell = '';
      if (text[at] === '"') {
        for (at++; text[at] !== '"' || text[at + 1] === '"'; at++) {
          if (text[at] === '"') at++;
          cell += text[at] ?? '';
        }
        at++;
      } else for (; at < text.length && text[at] !== ',' && text[at] !== '\r'; at++) cell += text[at] ?? '';
      row.push(cell);
      if (text[at] !== ',') break;
      at++;
    }
    expect(text.slice(at, at + 2)).toBe('\r\n');
    at += 2;
    rows.push(row);
  }
  return rows;
}

const [names = [], ...rows] = parse(csv);
const column = (name: string): readonly string[] => rows.map((row) => row[names.indexOf(name)] ?? '');

describe('the readings as CSV (RFC 4180)', () => {
  test('are one line each, with what became of it', () => {
    expect(column('reading')).toEqual(['12', '14', '12.5', '13']);
    expect(column('status')).toEqual(['confirmed', 'rejected', 'replaced', 'confirmed']);
    expect(column('verdict')).toEqual(['in', 'over', 'in', 'in']);
    expect(column('fastener')).toEqual(['1', '3', '3', '3']);
    expect(new Set(column('unit'))).toEqual(new Set(['N·m']));
    expect(column('stands in for entry')).toEqual(['', '', '', column('entry')[2]]);
  });
  test('say what they were judged by', () => {
    expect(column('window min at the wrench')).toEqual(['11', '11', '11', '11']);
    expect(column('window max at the wrench')).toEqual(['13', '13', '13', '13']);
    expect(new Set(column('judged by'))).toEqual(new Set(['simple']));
    expect(new Set(column('tool'))).toEqual(new Set(['wrench']));
  });
  test('have as many cells as the first line has names', () =>
    expect(new Set(rows.map(({ length }) => length))).toEqual(new Set([names.length])));
  test('are none where nothing was read', async () =>
    expect(parse(readingsCsv(await recordIn(await recordOf(smallProcedure, []))))).toEqual([names]));
});

describe('a cell', () => {
  test.each([
    ['24.5', '24.5'],
    ['N·m', 'N·m'],
    ['', ''],
    ['a, b', '"a, b"'],
    ['a; b', '"a; b"'],
    ['say "four"', '"say ""four"""'],
    ['two\r\nlines', '"two\r\nlines"'],
  ])('of %j is %j', (text, cell) => expect(csvCell(text)).toBe(cell));
  test.each(['=1+1', '+1', '-1', '@sum(a1)', '\t=1', '\r=1', '\n=1', '=cmd|"/c calc"!a0', '＝1', '＋1', '－1', '＠a'])(
    'of %j is no formula',
    (text) => expect(csvCell(text).replace(/^"/, '')).toMatch(/^'/),
  );
  test('reads back as the text it was made of, an apostrophe before what would be a formula', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme' }), { minLength: 1, maxLength: 4 }), (texts) => {
        const [row = []] = parse(`${texts.map(csvCell).join(',')}\r\n`);
        expect(row.map((cell, i) => (cell === texts[i] ? cell : cell.replace(/^'/, '')))).toEqual(texts);
        for (const cell of row) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/);
      }),
    );
  });
});
