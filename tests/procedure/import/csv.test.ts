import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { csvRows } from '../../../src/procedure/import/csv.ts';

const cells = (text: string, mark = ','): readonly (readonly string[])[] =>
  [...csvRows(text, mark)].map((row) => row.cells);

describe('a table as text', () => {
  it.each([
    [
      'rows, the last with a line break or without',
      'aaa,bbb\r\nzzz,yyy\r\n',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    [
      'quoted fields',
      '"aaa","bbb"\nzzz,yyy',
      [
        ['aaa', 'bbb'],
        ['zzz', 'yyy'],
      ],
    ],
    ['line breaks, marks and quotes in quoted fields', '"a\r\nb","c,d","e""f"', [['a\r\nb', 'c,d', 'e"f']]],
    [
      'empty fields',
      ',\n"",',
      [
        ['', ''],
        ['', ''],
      ],
    ],
    ['an empty row', 'a\n\nb', [['a'], [''], ['b']]],
    ['nothing', '', []],
  ])('has %s (RFC 4180, 2)', (_, text, rows) => expect(cells(text)).toEqual(rows));

  it('keeps a quote that stands inside a field without quotes', () =>
    expect(cells('M8 "fine",5" pipe')).toEqual([['M8 "fine"', '5" pipe']]));
  it('may have spaces around fields, and behind a closing quote', () =>
    expect(cells('"a"  , b ;"c"', ',')).toEqual([['a', 'b ;"c"']]));
  it('says in which line a row begins', () =>
    expect([...csvRows('a\r\n"b\nb\rb"\n\rc\n', ',')].map(({ line }) => line)).toEqual([1, 2, 5, 6]));
  it('says what is wrong with its quotes, and goes on', () => {
    const rows = [...csvRows('"a"b",c\n"d,e', ',')];
    expect(rows.map(({ quotes }) => quotes)).toEqual([['in a field'], ['not closed']]);
    expect(rows.map((row) => row.cells)).toEqual([['a"b', 'c'], ['d,e']]);
  });

  it('is read as it was written, whatever is in it', () => {
    const field = fc.string({ unit: fc.constantFrom('a', '1', ',', ';', '"', '\n', '\r', ' ', 'é') });
    const table = fc.array(
      fc.array(
        field.map((text) => text.trim()),
        { minLength: 1, maxLength: 4 },
      ),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(table, fc.constantFrom(',', ';', '\t'), fc.constantFrom('\n', '\r\n', '\r'), (rows, mark, end) => {
        const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
        const text = rows.map((row) => row.map(quoted).join(mark) + end).join('');
        expect(cells(text, mark)).toEqual(rows);
        expect([...csvRows(text, mark)].flatMap(({ quotes }) => quotes)).toEqual([]);
      }),
    );
  });
});
