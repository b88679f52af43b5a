/** The second person’s window, and what passes between it and the window that works. */
import { said } from './said.ts';

export const secondWindow = said('secondWindow', {
  secondWindow: 'Second person’s window',
  lastReadings: 'Last readings',
  noneYet: 'None yet.',
  valueKeptFromSight: 'value hidden',
  openPoints: 'Open points',
  none: 'None.',
  workWentOn: 'The work went on just before that came, so it is not taken. Look again.',
  noWordOfSecond: (why: string) =>
    `Another window sent something that a second person cannot say; it was dropped. ${why}`,
  noAnswer: (why: string) => `Another window sent something that is not an answer; it was dropped. ${why}`,
  expectedValue: 'Expected a value of a scale',
  expectedName: (longest: number) => `Expected a name of at most ${longest} letters`,
  unreadable: 'It could not be read at all.',
});
