/** A record while it is opened, and one that cannot be gone on with. */
import { said } from './said.ts';

export const openedRecord = said('openedRecord', {
  opening: 'Opening the record…',
  verifying: 'Verifying the record…',
  broken: (entry: number, why: string) =>
    `This record is broken at entry ${entry}: ${why}. Nothing more is written to it.`,
  writtenElsewhere: 'Another window works on this session. This one only shows it.',
  lookAgain: 'Look again',
  notPlayedBack: (why: string) => `This session cannot be played back: ${why}`,
});
