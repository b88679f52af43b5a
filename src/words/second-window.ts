/** The second person’s window, and what passes between it and the window that works. */
import { said } from './said.ts';

export const secondWindow = said('secondWindow', {
  secondWindow: 'Second person’s window',
  lastReadings: 'Last readings',
  noneYet: 'None yet.',
  valueKeptFromSight: 'value kept from sight',
  openPoints: 'Open points',
  none: 'None.',
  workWentOn: 'The work went on just before that came, so it is not taken. Look again.',
  noWordOfSecond: (why: string) => `Another window sent what is no word of a second person; it was dropped. ${why}`,
  noAnswer: (why: string) => `Another window sent what is no answer; it was dropped. ${why}`,
  expectedValue: 'Expected a value of a scale',
  expectedName: (longest: number) => `Expected a name of at most ${longest} letters`,
  unreadable: 'It could not be read at all.',
});
