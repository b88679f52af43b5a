/** Files of the page on which a procedure is written: opened, imported, compared, saved. */
import { said } from './said.ts';

export const editorFiles = said('editorFiles', {
  begin: 'Begin a job with it',
  cannotBegin: 'A job cannot begin with it yet.',
  lookBelow: 'The list below names what is still missing or wrong; each line leads to its field.',
  save: 'Save as a file',
  saved: (file: string) => `${file} is saved.`,
  undo: 'Undo',
  newOne: 'New procedure',
  newIsOpen: 'A new procedure. What was here before comes back with “Undo”.',
  notRead: (file: string) => `${file} cannot be read.`,

  open: 'Open a procedure',
  isOpen: (file: string) => `${file} is open. What was here before comes back with “Undo”.`,
  notOpened: (file: string) => `${file} cannot be opened.`,
  tooLong: (characters: number, most: number) => `It has ${characters} characters; at most ${most} are read.`,
  noProcedure: 'It is no procedure of Bothhands.',

  importModule: 'Import a data module',
  takenOver: (file: string) => `${file} is taken over, but for what is listed here.`,
  notTakenOver: (file: string) => `${file} is not taken over.`,
  leftOut: {
    title: (file: string) => `Not taken over from ${file}`,
    lookUp: 'Look these up in the source and put in by hand what the work needs:',
    nothing: 'Nothing: all of it is here.',
    isLookedUp: 'I have looked all of it up',
  },

  compare: 'Compare with a version',
  notCompared: (file: string) => `${file} cannot be compared.`,
  since: (file: string) => `Since ${file}`,
  differences: (count: number) =>
    count === 0 ? 'Nothing differs.' : count === 1 ? '1 difference:' : `${count} differences:`,

  table: {
    take: 'Take places from a table (CSV)',
    header: 'Its header names number, x and y, and perhaps thread. X goes to the right, y down.',
    taken: (fasteners: number, file: string) =>
      `${fasteners === 1 ? '1 fastener was' : `${fasteners} fasteners were`} taken from ${file}.`,
    decimalCommas: (count: number) =>
      `${count === 1 ? '1 decimal comma was read as a point' : `${count} decimal commas were read as points`}: look at the drawing.`,
    notRead: (file: string, why: string) => `${file} cannot be read: ${why}`,
    fault: (line: number, column: number | null, what: string) =>
      `Line ${line}${column === null ? '' : `, column ${column}`}: ${what}.`,
  },
});
