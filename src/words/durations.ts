/** How long something takes, as it is spoken. The number comes as it is and in words. */
import { said } from './said.ts';

export const durations = said('durations', {
  seconds: (number: number, inWords: string) => `${inWords} second${number === 1 ? '' : 's'}`,
  minutes: (number: number, inWords: string) => `${inWords} minute${number === 1 ? '' : 's'}`,
  minutesAndSeconds: (minutes: string, seconds: string) => `${minutes}, ${seconds}`,
  /** Of work that was broken off. */
  brokenOff: {
    minutes: (inWords: string) => `${inWords} minutes`,
    hours: (inWords: string) => `${inWords} hours`,
    days: (inWords: string) => `${inWords} days`,
  },
});
