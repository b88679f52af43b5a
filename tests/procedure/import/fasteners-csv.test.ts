import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fastenersFromCsv, LARGEST_TABLE } from '../../../src/procedure/import/fasteners-csv.ts';

const read = (text: string) => {
  const found = fastenersFromCsv(text);
  if (found.kind === 'faulty') throw new Error(found.faults.map(({ message }) => message).join('\n'));
  return found;
};
const faults = (text: string): readonly string[] => {
  const found = fastenersFromCsv(text);
  if (found.kind === 'read') return [];
  return found.faults.map(({ line, column, message }) => `${line}:${column ?? '-'} ${message}`);
};

describe('a table of fasteners', () => {
  it('gives free places with the numbers marked on the part', () => {
    expect(read('number,x,y\n1,0,0\n7,12.5,-3\n').layout).toEqual({
      shape: 'free',
      places: [
        { x: '0', y: '0' },
        { x: '12.5', y: '-3' },
      ],
      numbers: [1, 7],
    });
  });

  it.each([
    ['semicolons', 'Number;X;Y\n1;0;1\n2;3;4\n'],
    ['tabs', 'number\tx\ty\n1\t0\t1\n2\t3\t4'],
    ['other line ends and an empty line', 'number,x,y\r\n1,0,1\r\n\r\n2,3,4\r\n'],
    ['a mark of the encoding before it', '\uFEFFnumber,x,y\n1,0,1\n2,3,4\n'],
    ['quoted fields', '"number","x","y"\n"1","0","1"\n"2","3","4"\n'],
    ['columns in another order, and more of them', 'remark,y,x,bolt\n"by the pump, low",1,0,1\n,4,3,2\n'],
  ])('is read with %s', (_, text) => {
    expect(read(text).layout).toMatchObject({
      places: [
        { x: '0', y: '1' },
        { x: '3', y: '4' },
      ],
      numbers: [1, 2],
    });
  });

  it('may name one thread, quoted where it holds a separator', () => {
    expect(read('number;x;y;thread\n1;0;0;"M8; fine"\n2;1;0;"M8; fine"\n').thread).toBe('M8; fine');
    expect(faults('number,x,y,thread\n1,0,0,M8\n2,1,0,M10\n')).toEqual([
      '3:4 found "M10" after "M8", expected one thread: a pattern has one',
    ]);
  });

  it('is read as it was written by whoever wrote it so', () => {
    const fastener = fc.record({ x: fc.integer({ min: -9999, max: 9999 }), y: fc.integer({ min: -9999, max: 9999 }) });
    fc.assert(
      fc.property(fc.array(fastener, { minLength: 1, maxLength: 40 }), fc.constantFrom(',', ';', '\t'), (all, mark) => {
        const decimal = (value: number): string => (value / 100).toFixed(2);
        const rows = all.map(({ x, y }, i) => [i + 1, decimal(x), decimal(y)].join(mark));
        const { layout } = read([['number', 'x', 'y'].join(mark), ...rows].join('\n'));
        expect(layout.numbers).toEqual(all.map((_, i) => i + 1));
        expect(layout.places).toEqual(all.map(({ x, y }) => ({ x: decimal(x), y: decimal(y) })));
      }),
    );
  });
});

describe('a decimal comma', () => {
  it('is read as a point in a field of its own, and counted', () => {
    const found = read('number;x;y\n1;0,5;"1,25"\n');
    expect(found.layout.places).toEqual([{ x: '0.5', y: '1.25' }]);
    expect(found.decimalCommas).toBe(2);
  });

  it('is refused where commas part the fields', () => {
    expect(faults('number,x,y\n1,0,5,2\n')).toEqual([
      '2:- found 4 fields, expected 3 as in the header: with commas between the fields, decimals are written with a point',
    ]);
  });

  it('is refused where it may as well mark thousands', () => {
    expect(faults('number;x;y\n1;1,000;2\n')[0]).toMatch(/^2:2 .*may be thousands or a decimal comma/);
  });

  it('makes a point beside it doubtful that may as well mark thousands', () => {
    expect(faults('number;x;y\n1;1.250;12,5\n2;3.5;4\n')).toEqual([
      '2:2 found "1.250" in a table with decimal commas; its point may be that of thousands',
    ]);
    expect(read('number;x;y\n1;1.250;12.5\n').layout).toMatchObject({ places: [{ x: '1.250', y: '12.5' }] });
  });
});

describe('a table that cannot be used is refused at its line and column:', () => {
  it.each([
    ['nothing', '', '1:- found an empty table'],
    ['only a header', 'number,x,y\n', '1:- found only a header'],
    ['no column for a place', 'number,x\n1,2\n', '1:- found the header "number", "x", expected also: y'],
    ['a column twice', 'number,x,y,x\n', '1:4 found a second column for x'],
    ['a number that is none', 'number,x,y\n1,0,0\none,1,0\n', '3:1 found "one", expected the whole number'],
    ['a fastener twice', 'number,x,y\n1,0,0\n\n1,1,0\n', '4:1 found fastener 1 again, which line 2 has'],
    ['a place that is no number', 'number,x,y\n1,0,1e3\n', '2:3 found "1e3", expected a decimal number'],
    ['a missing field', 'number,x,y\n1,0\n', '2:- found 2 fields, expected 3'],
    ['a quote that is never closed', 'number,x,y\n1,0,"0\n2,1,0\n', '2:- a quote is opened here and never closed'],
    ['too many fasteners', `number,x,y\n${'1,0,0\n'.repeat(1001)}`, '1:- expected 1000 fasteners at most'],
    ['too large a file', ' '.repeat(LARGEST_TABLE + 1), '1:- expected'],
  ])('%s', (_, text, words) => {
    expect(faults(text)[0]).toContain(words);
  });

  it('and all that is wrong is told at once, with lines counted through quoted fields', () => {
    const text = 'number,x,y,remark\n1,0,0,"two\nlines"\n2,a,0,\n3,0,b,\n';
    expect(faults(text).map((fault) => fault.split(' ')[0])).toEqual(['4:2', '5:3']);
  });

  it('and no text at all makes it fail in any other way', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(',', ';', '"', '\n', '1', 'x', 'y') })),
        (text) => {
          expect(['read', 'faulty']).toContain(fastenersFromCsv(`number,x,y\n${text}`).kind);
        },
      ),
    );
  });
});
