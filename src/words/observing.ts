/** Values that are read off something else than a torque tool, as they are spoken. */
import { said } from './said.ts';

export const observing = said('observing', {
  beginWait: (duration: string) => `Say next when the wait begins. It is ${duration}.`,
  sayValue: (unit: string) => `Say the value in ${unit}.`,
  notBefore: (duration: string) => `Not before ${duration} are over.`,
  waitOver: (unit: string) => `The wait is over. Say the value in ${unit}.`,
  orLeaveOpen: 'Or say leave open.',
  theValue: 'the value',
  value: (what: string, value: string, unit: string) => `${what}, ${value} ${unit}.`,
  isOutside: { under: 'That is under the window.', over: 'That is over the window.' },
  isCorrect: 'Is that correct?',
  stillOutside: {
    under: 'It is under the window. Put it right and read again, or say leave open.',
    over: 'It is over the window. Put it right and read again, or say leave open.',
  },
});
