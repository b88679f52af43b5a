/** What is asked before the work goes on. */
import { said } from './said.ts';

export const asked = said('asked', {
  isAllAsLeft: (length: string) => `Work was broken off for ${length}. Is everything as it was left?`,
  affirmGoesOn: 'Affirm: the work goes on. Negative: it stands by.',
  handsOver: (name: string) => `${name} hands over.`,
  whoTakesOver: 'Whoever takes over types their name below. To go on as before, say continue.',
  sayWhy: 'Say why, or type it.',
  quoted: (reason: string) => `“${reason}”`,
  isThatCorrect: 'Is that correct? Affirm or negative.',
  lookAtThis: (name: string) => `${name}, look at this:`,
  inspector: 'Inspector',
  secondPerson: 'Second person',
  tapWhatYouFound: 'Type your name and tap what you found.',
  sayWitness: 'Say witness affirm or witness negative.',
  nobodyIsSecond: 'Nobody is named as second person. Somebody joins below; the mechanic cannot witness.',
  thenMore: (count: number) => `Then ${count} more of this step, one by one.`,
  note: (text: string) => `Note: ${text}`,
  toBeDecided: 'Still to be decided',
});
