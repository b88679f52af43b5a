/** A value that is read off something else than a torque tool. */
import { said } from './said.ts';

export const measured = said('measured', {
  sayIt: 'Say the value, or type it.',
  readOutside: (value: string) => `Read ${value}. Put it right and read again, or leave open.`,
  inUnit: (what: string, unit: string) => `${what}, in ${unit}.`,
  window: (what: string, window: string, unit: string) => `${what}. Window ${window} ${unit}.`,
  nextBeginsWait: (minutes: number) => `Next begins the wait: ${minutes} min.`,
  waitIsOver: 'The wait is over.',
  wait: (time: string) => `Wait ${time}`,
});
