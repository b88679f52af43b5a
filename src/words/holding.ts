/** What is said while both hands are under a weight. */
import { said } from './said.ts';

export const holding = said('holding', {
  setDown: 'Say set down when it is down.',
  help: 'Help! Somebody to the load, now!',
  helpOf: (name: string) => `Help! ${name}, to the load, now!`,
});
