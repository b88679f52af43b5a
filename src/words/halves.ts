/** The screen as two halves, for a knuckle or an elbow. */
import { said } from './said.ts';

export const halves = said('halves', {
  screenAsHalves: 'The screen as two halves',
  back: '◀ Back, negative',
  backLong: 'long: say again',
  leave: 'Leave halves',
  next: 'Next, affirm ▶',
  nextLong: 'long: stand by',
});
