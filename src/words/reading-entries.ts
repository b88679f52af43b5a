/** A reading as a line of the record, with what was found of it. */
import { said } from './said.ts';

type Doubt =
  | ('not sure' | 'off the scale' | 'between marks' | 'sounds like another')
  | ('out by ten' | 'digits swapped' | 'digit count' | 'too soon');

export const readingEntries = said('readingEntries', {
  hidden: (place: string) => `${place}: value taken, not shown before both have read it`,
  /** @param instead the reading that it stands in for, where there is one */
  captured: (
    place: string,
    value: string,
    verdict: string,
    { byClick, instead, doubts }: { byClick: boolean; instead: string | null; doubts: readonly Doubt[] },
  ) =>
    `${place}: ${value}${byClick ? ' by the click of the wrench' : ''}, ${verdict}${instead === null ? '' : `. It stands in for ${instead}`}${doubts.length > 0 ? `. In doubt: ${doubts.join(', ')}` : ''}`,
  named: (place: string, value: string) => `${place}, ${value}`,
  noReading: (entry: number) => `entry ${entry}, which is not a reading`,

  /** @param window the limits, and whether they are at the wrench, where that is not the value of the manual */
  torque: {
    in: (window: string, atWrench: boolean) => `inside ${the(window, atWrench)}`,
    under: (window: string, atWrench: boolean) => `under ${the(window, atWrench)}`,
    over: (window: string, atWrench: boolean) => `over ${the(window, atWrench)}`,
    'not provable': (window: string, atWrench: boolean) =>
      `too near a limit of ${the(window, atWrench)} for this tool to prove`,
    'nut worn': () => 'below the minimum: the nut is worn',
  },
  /** @param minimum null where none is stated */
  runningTorque: {
    in: (minimum: string | null) => (minimum === null ? 'no minimum is stated' : `not below the minimum ${minimum}`),
    under: () => 'under what the step allows',
    over: () => 'too much for the tools of this step',
    'not provable': () => 'too near a limit of what the step allows for this tool to prove',
    'nut worn': (minimum: string | null) =>
      `below the minimum${minimum === null ? '' : ` ${minimum}`}: the nut is worn`,
  },
});

const the = (window: string, atWrench: boolean): string => `the window ${window}${atWrench ? ' at the wrench' : ''}`;
