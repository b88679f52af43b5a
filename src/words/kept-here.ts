/** What this device keeps of sessions, for how long, and what of it lies nowhere else. */
import { said } from './said.ts';

export const keptHere = said('keptHere', {
  sessionsHere: 'Sessions on this device',
  looking: 'Looking…',
  notListed: (why: string) => `The sessions cannot be listed: ${why}`,
  noneYet: 'None yet.',
  verifying: (id: string) => `${id}: verifying…`,
  session: (id: string) => `Session ${id}`,
  closed: 'closed',
  atStep: (number: number, count: number) => `at step ${number} of ${count}`,
  goOn: 'Go on',
  notShown: (why: string) => `It cannot be shown: ${why}`,
  replay: 'Replay',

  persistence: {
    kept: 'The browser keeps the records until somebody clears them.',
    'may be cleared':
      'The browser may clear the records when space runs out, or when this page was not visited for long. Save each session as a sealed file.',
    unknown: 'Whether the browser keeps the records cannot be told. Save each session as a sealed file.',
  },
  roomRunsOut: 'This device is running out of space. Save what is kept here, and free some.',
  littleRoom: (megabytes: number) =>
    `Only ${megabytes} MB are left for records on this device. Save the sealed files elsewhere, and free some space: what does not fit cannot be logged.`,

  neverSaved: 'On this device only: it was never saved as a sealed file.',
  notAllSaved: (entries: number) =>
    `Not all of it was saved: ${entries} ${entries === 1 ? 'entry is' : 'entries are'} newer than the sealed file.`,
  soundsNotInFile: 'Its sounds were too large for the sealed file: they are not in it.',

  noSession: (id: string) => `There is no session ${id} on this device.`,
  sessionBroken: (id: string, entry: number, why: string) =>
    `The record of session ${id} is broken at entry ${entry}: ${why}. Nothing of it can be shown.`,
});
