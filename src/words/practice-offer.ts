/** The offer to practise. */
import { said } from './said.ts';

export const practiceOffer = said('practiceOffer', {
  newHere: 'New here?',
  practice: 'Practice',
  twoMinutes:
    'Two minutes by voice: it says what to say, hears it, logs one reading, and plays it back. Nothing is worked on.',
  practise: 'Practise by voice',
  notNow: 'Not now',
  cannotBegin: (why: string) => `Practice cannot begin: ${why}`,
});
