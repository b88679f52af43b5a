/** The short signals before answers. */
import { said } from './said.ts';

export const signals = said('signals', {
  signals: 'Signals',
  whatTheyAre:
    'A short signal before each answer, louder in a louder room. What it tells stands on the screen as well.',
  heard: 'Heard',
  logged: 'Logged',
  question: 'Question',
  stop: 'Stop',
});
