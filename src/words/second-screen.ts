/** The second person's own window. */
import { said } from './said.ts';

export const secondScreen = said('secondScreen', {
  windowTitle: 'Second person – Bothhands',
  nobodyWorks:
    'No window is working on this session, so nothing is taken here. Open it in the mechanic’s window, under “Sessions on this device”. This window then goes on by itself.',
  loadAgain: (why: string) => `${why} Load both windows again.`,
  wantedOfYou: 'What you are asked for',
  step: (number: number, count: number, title: string) => `Step ${number} of ${count}: ${title}`,
  fastener: (label: string, number: number) => `${label} ${number}`,
  read: 'Read the tool now. Key it in.',
  look: (what: string) => `Look at this: ${what}`,
  affirm: 'Witness affirm',
  negative: 'Witness negative',
  onItsWay: 'On its way…',
  noAnswer:
    'No answer came, so it is not known whether that was taken. Look at the last readings before you say it again.',
  taken: (sentence: string) => `Taken: ${sentence}`,
  notTaken: (sentence: string) => `Not taken: ${sentence}`,
});
