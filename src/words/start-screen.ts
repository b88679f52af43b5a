/** The start: who works, which job, what is kept. */
import { said } from './said.ts';

export const startScreen = said('startScreen', {
  program: 'Bothhands',
  whatItDoes:
    'Calls the job out, hears the answer, reads it back, and writes it down. The approved manual, local rules and licensed people decide; Bothhands does not.',
  display: 'Display: viewing distance, size and light',
  teach: 'Teach and try: pedals, headset buttons, gloves and gestures',
  whoWorks: 'Who works',
  mechanic: 'Mechanic',
  second: 'Second person',
  nameMissing: 'Type the name of the mechanic first: the record says by whom the work was done.',
  samePerson: 'The second person must be somebody else: nobody can witness their own work.',
  soundAgreed:
    'Everybody named here agrees that a few seconds of sound around each reading are kept with the record. It can be deleted later.',
  begin: 'Begin a job',
  goOnPreparing: (title: string) => `Go on preparing: ${title}`,
  openProcedure: 'Open a procedure file',
  writeProcedure: 'Write a procedure',
  notRead: (why: string) => `It cannot be read from the disk: ${why} Open it again, or a copy of it.`,
  source: (document: string, revision: string) => `${document}, revision ${revision}`,
  steps: (count: number) => (count === 1 ? '1 step' : `${count} steps`),
  invented: 'Demonstration: all values are invented',
  demoComing: 'Loading…',
  demoLost: 'It could not be fetched. Tap to try again.',
  notUsable: (file: string, faults: number) =>
    `${file} cannot be used. ${faults === 1 ? 'One thing is' : `${faults} things are`} wrong in it:`,
  wholeFile: 'the file',
  sealed: 'A sealed file',
  sealedIsOnlyShown: 'It is verified and played back. Nothing of it is kept on this device.',
  openSealed: 'Open a sealed file',
});
