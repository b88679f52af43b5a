/** The table of fasteners and passes in a replay. */
import { said } from './said.ts';

export const matrix = said('matrix', {
  title: 'Fasteners and passes',
  none: 'No step of this procedure tightens anything.',
  summary: (title: string, fasteners: number, label: string, passes: number) =>
    `${title}: ${counted(fasteners, label)}, ${counted(passes, 'pass')}`,
  pass: (number: number, name: string) => `Pass ${number}: ${name}`,
  verdicts: {
    in: '✓ in',
    under: '▼ under',
    over: '▲ over',
    'not provable': '◆ not provable',
    'nut worn': '▼ nut worn',
  },
  withoutReading: { 'by hand': 'by hand', 'left open': 'left open', open: 'open', skipped: 'skipped' },
  /** What a fastener is called where the procedure has no name for it. */
  unnamed: 'fastener',
  notInPass: '–',
  toEntry: (entry: number) => `To entry ${entry}`,
  fastener: (label: string, number: number) => `${label} ${number}:`,
  value: (value: string, unit: string) => `${value} ${unit}`,
  windowAndPerson: (window: string, person: string) => `${window}. ${person}`,
  witness: (person: string, value: string) => `, witness ${person}: ${value}`,
});

const counted = (many: number, what: string): string =>
  `${many} ${what}${many === 1 ? '' : what.endsWith('s') ? 'es' : 's'}`;
