/** What is said where a word and a gesture of one moment do not agree. */
import { said } from './said.ts';

export const atOnce = said('atOnce', {
  nodCounted: 'Negative was said, but a nod had counted already. See whether all is right; if not, go back.',
  wordCounted: 'A head was shaken, but an affirm had counted already. See whether all is right; if not, go back.',
});
