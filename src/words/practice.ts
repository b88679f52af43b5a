/** Practice: a record that nobody takes for work. */
import { said } from './said.ts';

export const practice = said('practice', {
  /** Stands wherever a practice record is shown, and in the record itself. */
  noWork: 'Practice: no work was done.',
  /** The mechanic who gave no name. */
  nobody: 'Practice',
});
