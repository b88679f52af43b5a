/** Why nothing more is logged: shown in full, and said in short. */
import { said } from './said.ts';

export const sessionStopped = said('sessionStopped', {
  nothingLogged: 'Nothing is logged any more. Stop, and load the page again.',
  notWritten: (why: string) => `This could not be written, so it does not count: ${why} Load the page again.`,
  sayNotWritten: 'That is not logged: the record cannot be written. Stop, and load the page again.',
  fault: (why: string) => `A fault in this page: ${why} What is listed as logged stands. Load the page again.`,
  sayFault: 'A fault in this page. Stop, and load the page again.',
  writtenElsewhere: 'Another window has written to this session.',
  gaveUpWriting: 'The browser gave up writing to the record.',
});
