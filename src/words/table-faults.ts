/** What is wrong with a table of fasteners: found, and expected there. */
import { said } from './said.ts';

type Column = 'number' | 'x' | 'y' | 'thread';

export const tableFaults = said('tableFaults', {
  tooLong: (most: number) => `expected ${most} characters at most`,
  empty: 'found an empty table, expected a header: number, x, y',
  onlyHeader: 'found only a header, expected a line for each fastener',
  tooMany: (most: number) => `expected ${most} fasteners at most`,
  quoteNotClosed: 'a quote is opened here and never closed',
  quoteInField: 'found a quote in the middle of a field, expected two quotes for one inside a quoted field',
  secondColumn: (column: Column) => `found a second column for ${column}`,
  missingColumns: (header: readonly string[], missing: readonly Column[]) =>
    `found the header ${header.join(', ')}, expected also: ${missing.join(', ')}`,
  badNumber: (found: string) => `found ${found}, expected the whole number marked on the part, from 1 to 9999`,
  numberTwice: (number: string, line: number) => `found fastener ${number} again, which line ${line} has`,
  maybeThousands: (found: string) => `found ${found}, which may be thousands or a decimal comma; write it with a point`,
  noDecimal: (found: string) => `found ${found}, expected a decimal number such as 12.5`,
  pointAmongCommas: (found: string) =>
    `found ${found} in a table with decimal commas; its point may be that of thousands`,
  twoThreads: (second: string, first: string) =>
    `found ${second} after ${first}, expected one thread: a pattern has one`,
  width: (found: number, expected: number, isCommaBetween: boolean) =>
    `found ${found} fields, expected ${expected} as in the header${isCommaBetween ? ': with commas between the fields, decimals are written with a point' : ''}`,
});
