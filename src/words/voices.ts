/** Why a voice is not used, and why nothing sounds. */
import { said } from './said.ts';

const NAMES = {
  system: "The system's voice",
  embedded: 'The embedded voice',
  tones: 'The tone generator',
};

export const voices = said('voices', {
  notUsed: (voice: 'system' | 'embedded' | 'tones', why: string) => `${NAMES[voice]} is not used: ${why}.`,
  /** Each of these ends the sentence `notUsed`. */
  didNotStart: (milliseconds: number) => `it did not start within ${milliseconds} ms`,
  didNotEnd: (milliseconds: number) => `it did not end within ${milliseconds} ms`,
  didNotLoad: (milliseconds: number) => `it did not load within ${milliseconds} ms`,
  noSound: (milliseconds: number) => `it made no sound within ${milliseconds} ms`,
  workerFailed: (detail: string) => `its worker failed${detail ? ` (${detail})` : ''}`,
  noneHere: 'this browser offers none',
  noneChosen: 'no voice was chosen',
  noLocalEnglish: (milliseconds: number) => `no local English voice was found within ${milliseconds} ms`,
  failedCheck: (name: string, why: string) => `${name} failed its check, ${why}`,
  reports: (error: string) => `it reports "${error}"`,

  outputClosed: 'The sound output is closed.',
  outputNotRunning: 'The sound output is not running: touch the screen once.',
  outputInterrupted: 'The sound output was interrupted: touch the screen once.',
  noOutput: 'This browser lets pages make no sound.',
});
