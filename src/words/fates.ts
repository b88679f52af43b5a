/** What became of a reading. */
import { said } from './said.ts';

export const fates = said('fates', {
  captured: 'not confirmed',
  stands: 'stands',
  'read again': 'confirmed, then read again',
  rejected: 'rejected at its read-back',
  disregarded: 'disregarded',
  replaced: 'corrected',
  disputed: 'disputed by the witness',
  'set aside': 'set aside: the pass was begun again',
});
