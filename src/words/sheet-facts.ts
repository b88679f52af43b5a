/** The facts of a record sheet: what was worked by and on, by whom, with which tools and parts, and its hashes. */
import { entriesCounted, entriesFollow } from './counted.ts';
import { said } from './said.ts';

type SealWork = 'inspected' | 'lubricated' | 'seated' | 'discarded';

export const sheetFacts = said('sheetFacts', {
  notStated: 'not stated',
  notKnown: 'not known',

  document: 'Document',
  revision: 'Revision',
  issued: 'Issued',
  procedureFile: 'Procedure file',

  intact: (entries: number) => `Intact: ${entriesFollow(entries)}.`,
  broken: (entry: number, why: string, found: number, left: number) =>
    `NOT INTACT at entry ${entry}: ${why}. Of ${entriesCounted(found)}, only what comes before it (${left}) is on this sheet.`,

  soundAgreed: (who: readonly string[], utc: string) =>
    `It was entered that ${who.join(' and ')} agree (${utc}) that a few seconds of sound around each reading are kept.`,
  soundNotAgreed: 'That everybody agrees to keep sound was not entered: none was kept.',

  component: 'Component',
  partNumber: 'Part number',
  dryMass: 'Dry mass',
  drained: 'Drained',
  stayedInside: 'Stayed inside',
  /** @param fluid null where the procedure names none */
  ofFluid: (volume: string, fluid: string | null) => `${volume} of ${fluid ?? 'fluid'}, as the procedure states`,

  session: 'Session',
  procedureHash: 'Procedure (SHA-256)',
  head: 'Head: hash of the last entry (SHA-256)',
  noHead: 'none',
  root: 'Merkle root over the entries (RFC 6962)',
  key: 'Key of the seal: thumbprint (RFC 7638)',
  notSealed: 'not sealed',
  writtenBy: 'Written by',

  interruptions: {
    'stood by': 'standing by',
    'handover begun': 'handover',
    reopened: 'the page was opened again',
    'break noticed': 'a long break',
  },

  tool: {
    range: (min: string, max: string, mark: string) => `${min} to ${max}, marks of ${mark}`,
    accuracy: (type: 'indicating' | 'setting', toolClass: string | null, errorPercent: number | null) =>
      `${type}${toolClass === null ? '' : `, class ${toolClass}`}${errorPercent === null ? '' : `, ±${errorPercent} %`}`,
    offItsLabel: (due: string) => `${due}, read off its label`,
    notUsed: 'no reading',
    used: (first: string, last: string, calibration: 'held' | 'had run out' | 'unknown') =>
      `${first === last ? first : `${first} to ${last}`}; ${CALIBRATION[calibration]}`,
  },

  part: {
    fitted: (name: string, number: string | null, reuse: 'never' | 'if it passes inspection') =>
      `${name} (${number === null ? 'part number not stated' : `part number ${number}`}; reuse: ${reuse})`,
    /** @param answer null where nothing was asked, or nothing answered */
    worked: (done: readonly SealWork[], step: string, answer: string | null) =>
      `${done.join(', ')} in “${step}”${answer === null ? '' : `: ${answer}`}`,
  },
});

const CALIBRATION = {
  held: 'calibration held',
  'had run out': 'CALIBRATION HAD RUN OUT',
  unknown: 'CALIBRATION UNKNOWN',
};
