/** What is wrong with a sealed file around its entries, and with its seal. */
import { said } from './said.ts';

export const fileFindings = said('fileFindings', {
  noSealedFile: (why: string) => `It is not a sealed session file: ${why}.`,
  tooLarge: (mebibytes: number) => `it is larger than ${mebibytes} MiB`,
  noArchive: 'it does not begin as a zip archive does',
  formatNotFirst: 'it does not begin with “format.json”',
  noFormat: (format: string) => `“format.json” does not say “${format}”`,
  strangePart: (quotedName: string) => `it holds ${quotedName}, which no sealed file has`,
  partOutOfPlace: (part: string) => `“${part}” is in it twice or out of its place`,
  compressed: (part: string) => `“${part}” is compressed; the parts of a sealed file are stored as they are`,
  sizeMissing: (part: string) => `“${part}” does not state its size`,

  tooManyEntries: (most: number) => `It holds more than ${most} entries, which no session has.`,
  tooOld: (version: number) => `Its format is version ${version}, which this program can no longer read.`,
  tooNew: (version: number, known: number) =>
    `Its format is version ${version}; this program reads up to ${known}: a newer program is needed.`,
  formatNotAsExpected: (path: string) => `Its “format.json” is not as expected: ${path}.`,

  cutOffInside: (part: string) => `it is cut off inside “${part}”`,
  cutOffBehind: (part: string) => `it is cut off after “${part}”`,
  partMissing: (part: string) => `“${part}” is missing`,
  addedBehind: 'something was added after its end',
  partChanged: (part: string) => `“${part}” does not match its header: it was changed after it was packed`,
  listChanged: 'its list of parts was changed',
  procedureIsNoCopy: '“procedure.json” is not the procedure that is in the record',
  otherSound: (entry: number) => `the sound of entry ${entry} is not the one whose hash it states`,
  straySound: (name: string) => `no entry has the sound “${name}”`,

  seal: {
    missing: 'it has no seal: whether it was cut off or rewritten cannot be told',
    bad: (why: string) => `the seal: ${why}`,
    otherKey: (thumbprint: string) => `it is sealed by another key, ${thumbprint}`,
    noSeal: (path: string, fault: string) => `it is not a seal of this format: ${path} ${fault}`,
    otherThumbprint: 'the thumbprint in it is not that of its key',
    signatureNotWell: 'its signature is malformed',
    signatureNotFitting: 'its signature does not match: it was changed after it was signed, or never was one',
    statementUnreadable: (path: string, fault: string) => `what it states cannot be read: ${path} ${fault}`,
    otherEntries: 'the entries are not those that were sealed',
    writtenAnew: 'the entries are not those that were sealed: they were rewritten',
    otherSession: (session: string) => `it is of another session, ${session}`,
    cutOff: (sealed: number, left: number) => `it was cut off: ${sealed} entries were sealed, ${left} are left`,
    addedLater: 'it was added after the record was sealed',
    otherStatement: 'what it states is not what the entries say',
  },
});
