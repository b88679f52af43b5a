/** Links from one screen to another that several screens have. */
import { said } from './said.ts';

export const ways = said('ways', {
  allSessions: 'All sessions',
  backToJob: 'Back to the job',
  backToStart: 'Back to the start',
  backToPreparation: 'Back to the preparation',
});
