/** Whether a record is whole and as it was sealed. */
import { entriesCounted as counted, entriesFollow } from './counted.ts';
import { said } from './said.ts';

export const integrity = said('integrity', {
  intact: (entries: number) => `Intact: ${entriesFollow(entries)}.`,
  broken: (at: number, why: string, found: number) =>
    `Broken at entry ${at}: ${why}. ${
      at === 0 ? 'Nothing of it can be trusted.' : `Only the ${counted(at)} before it can be trusted.`
    } Found: ${counted(found)}.`,

  notAsSealed: (why: string) => `Not as it was sealed when it was closed: ${why}.`,
  notSealed: (why: string) =>
    `It could not be sealed when it was closed, nor now: ${why} That is tried again whenever it is opened.`,
  sealMissing:
    'The seal from when it was closed is missing: it was removed from this device, or never made. Whether the record was changed since then cannot be told here.',
  sealedByOther: (thumbprint: string) => `It is sealed by another key than that of this device: ${thumbprint}.`,
  asSealed: (thumbprint: string) => `As it was sealed when it was closed, by the key of this device, ${thumbprint}.`,
  asSealedLater: (moment: string, thumbprint: string) =>
    `It could not be sealed when it was closed. As it was sealed later, ${moment}, by the key of this device, ${thumbprint}.`,

  headOfRecord: 'Head of the record',
  head: 'Head:',
  headBeforeBreak: 'Head of the part before the break:',
  noteIt: 'Note it elsewhere. Compared later, it shows that nothing was cut off or rewritten since.',
  compare: 'Compare with a head noted earlier',
  same: 'Same: this is the record that was noted, to its last entry.',
  grown: (at: number, since: number) => `Same up to entry ${at}: entries were only added since, ${since} of them.`,
  another:
    'Another record: no entry here has this head. It is of another session, or this one was cut off or rewritten since.',

  fileNotAsSealed: (why: string) => `It is not as it was sealed when it was closed: ${why}.`,
  fileSealMissing: 'The seal from when it was closed is missing: whether it was changed since cannot be told.',
  packedNotIntact: (why: string) => `What was packed does not verify: ${why}.`,
  fileTooLarge: (mebibytes: number) => `It is larger than ${mebibytes} MiB: no sealed file of a session is.`,
  fileNotRead: (why: string) => `It cannot be read: ${why}`,
});
