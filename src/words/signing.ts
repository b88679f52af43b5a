/** What is typed and tapped before a record is closed, an inspection, and a fresh consumable. */
import { said } from './said.ts';

export const signing = said('signing', {
  beforeClosing: 'Before the record is closed',
  whoDecides: 'Who decides',
  noteIfAny: 'Note, if any',
  whatBecomesOfIt: 'What becomes of it',
  disposition: {
    'accepted as is': 'accepted as is',
    repaired: 'repaired',
    'part replaced': 'part replaced',
    deferred: 'deferred',
    'worked again': 'worked again',
  },
  signs: (role: 'mechanic' | 'inspector', name: string | null) =>
    `${role === 'mechanic' ? 'The mechanic signs' : 'The inspector signs'}${name === null ? '' : `: ${name}`}`,
  yourName: 'Your name',
  holdToSign: 'Hold for two seconds to sign',
  pressTwice: 'Or press this twice to sign',
  pressOnceMore: 'Press once more to sign',
  inspection: 'Inspection',
  inspectorsName: 'Inspector’s name',
  whatWasFound: 'What was found',
  passed: 'Passed',
  notPassed: 'Not passed',
  fresh: (name: string) => `Fresh ${name}`,
  batch: 'Batch, as on the packing',
  useBy: 'Use by',
  howMany: 'How many there are now',
  freshIsHere: 'The fresh one is here',
  closedRecord: 'The closed record',
  replayAndSave: 'Replay and save',
});
