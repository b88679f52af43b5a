/** A session played back: the page, its keys, and the sound of what was heard. */
import { said } from './said.ts';

export const replay = said('replay', {
  title: (procedure: string) => `Replay: ${procedure}`,
  practised: 'This is what a record shows: the reading that you gave is below.',
  timesIn: (zone: string) => `Times in ${zone}`,
  timesFrom: (from: string, zone: string) => `from ${from} on in ${zone}`,
  recordSheet: 'Record sheet',
  screenThen: 'The work screen at that moment',
  saving: 'Save',
  saveReadings: 'Save readings as CSV',
  saveValues: 'Save observed values as CSV',

  controls: 'Play and step',
  stepBack: 'Step back',
  stepOn: 'Step on',
  play: 'Play',
  pause: 'Pause',
  speed: 'Speed',
  times: (faster: number) => `${faster}×`,
  entryOf: (entry: number, last: number) => `Entry ${entry} of ${last}`,
  entryTold: (entry: number, what: string) => `Entry ${entry}: ${what}`,
  stops: {
    reading: { name: 'reading', by: 'By reading', next: 'Next reading', previous: 'Previous reading' },
    doubt: { name: 'doubt', by: 'By doubt', next: 'Next doubt', previous: 'Previous doubt' },
    deviation: { name: 'deviation', by: 'By deviation', next: 'Next deviation', previous: 'Previous deviation' },
    correction: { name: 'correction', by: 'By correction', next: 'Next correction', previous: 'Previous correction' },
  },

  sound: {
    notKept: (why: string) => `Its sound was not kept: ${why}`,
    deleted: 'Its sound was deleted, as the record says.',
    absent: 'Its sound is not here. The record names it by its hash.',
    changed: 'The sound here is not the one in the record: it is not played.',
    checked: 'Its sound, as it was kept (hash checked)',
  },
});
