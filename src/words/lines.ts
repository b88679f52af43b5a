/** What was heard and what was logged, and the line to type in. */
import { said } from './said.ts';

const withoutValue = (logged: string): string => `${logged}; the value is not shown while two people read`;

export const lines = said('lines', {
  heard: 'Heard',
  remark: {
    taken: '',
    'not for us': ' (means nothing here)',
    'not sure': ' (not sure: not taken)',
    'too early': ' (came before this was shown: not taken)',
    'not said yet': ' (came before this was said to its end: not taken)',
    'not read yet': ' (came before this could be read: not taken)',
    'counted already': ' (said and shown at once: counted once)',
  },
  /** While a number may still go on: what will be said. */
  ifThatIsAll: (says: string) => `… if that is all: ${says}`,
  keptFromSight: 'hidden until the second person has read',
  /** What the signal that sounded last stands for. */
  signal: { heard: '♪ heard', logged: '♪ logged', question: '♪ question', stop: '♪ stop', help: '♪ help' },
  notForUs: (count: number) => ` (${count} not for us)`,
  logged: 'Logged',
  withoutValue: {
    'reading captured': withoutValue('Reading captured'),
    'reading rejected': withoutValue('Reading rejected'),
    'reading disregarded': withoutValue('Reading disregarded'),
    witnessed: withoutValue('Witnessed'),
    disputed: withoutValue('Disputed'),
    'timed out': withoutValue('Timed out'),
    refused: withoutValue('Refused'),
  },
  typeIt: 'Type what you would say',
  example: '4 24.5',
  enter: 'Enter',
});
