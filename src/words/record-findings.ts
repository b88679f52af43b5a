/** What is wrong with a record, each said behind the number of an entry: "Not intact at entry 4: …". */
import { said } from './said.ts';

export const recordFindings = said('recordFindings', {
  lineCutOff: 'its line is cut off',
  lineRewritten: 'its line is not as it was written',
  lineUnreadable: 'its line cannot be read',
  noEntry: (reason: string) => `not an entry of a record: ${reason}`,
  otherSession: 'it belongs to another session',
  outOfPlace: (number: number) => `its number is ${number}: an entry is missing, doubled or out of its place`,
  doesNotFollow: 'it does not follow from the entry before it',
  changed: 'its content was changed after it was written',
  unreadable: (reason: string) => `what it says cannot be read: ${reason}`,

  /** Each behind the name of a field: "body.at Expected a day of the calendar". */
  notAsExpected: (expected: string | null, found: string) =>
    expected === null ? `Found ${found}` : `Expected ${expected}, found ${found}`,
  notFinite: 'Expected a finite value',
  noDay: 'Expected a day of the calendar',
  minAboveMax: 'Expected a min that is not above its max',

  noEntries: 'it has no entries',
  notOpened: 'a session begins by being opened',
  openedTwice: 'the session is opened a second time',
  otherProcedure: 'the procedure in it is not the one whose hash it states',
  procedureUnreadable: (path: string, fault: string) => `the procedure in it cannot be read: ${path}: ${fault}`,
  afterClosing: 'it comes after the record was closed',
  preparedTooLate: 'it says what was found before the work, and the work had begun',
  notYetCome: (dated: string, now: string) => `it is dated ${dated}, which has not come yet: it is ${now} here`,

  head: {
    noDigit: (character: string) => `“${character}” is not a digit of a head; they are 0 to 9 and a to f.`,
    length: (digits: number, found: number) => `A head has ${digits} digits; these are ${found}.`,
  },
});
