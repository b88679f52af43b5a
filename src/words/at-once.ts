/** What is said where a word and a gesture of one moment do not agree. */
import { said } from './said.ts';

export const atOnce = said('atOnce', {
  nodCounted: 'Negative was said with a nod that has counted. See whether all is right, and go back where it is not.',
  wordCounted:
    'A head was shaken with an affirm that has counted. See whether all is right, and go back where it is not.',
});
