/** The fields of a step of a procedure, and the texts that a new one begins with. */
import { said } from './said.ts';

export const stepForm = said('stepForm', {
  title: 'Steps',
  untitled: 'without a title',
  remarks: (count: number) => (count === 0 ? '' : count === 1 ? '1 remark' : `${count} remarks`),
  nextKind: 'Kind of the next step',
  kind: 'Kind of step',
  kinds: {
    do: 'do',
    check: 'check',
    open: 'open',
    close: 'close',
    hold: 'hold',
    loosen: 'loosen',
    tighten: 'tighten',
    measure: 'measure',
    witness: 'witness',
    note: 'note',
  },
  ofStep: 'Title of the step',
  text: 'What is to be done',
  say: 'The same, short, as spoken',
  notes: 'Notes, one per line',
  witness: 'A second person must take part',

  applies: 'Done',
  always: 'always',
  onlyIf: (answer: 'yes' | 'no', question: string) => `only if ${answer}: ${question}`,

  free: {
    pattern: 'Pattern to free',
    stages: 'Stages, one per line',
    stagesExample: 'break loose, a quarter turn each',
  },
  opening: 'Opening',
  opens: 'Opened here',
  closes: 'Connected again here',
  handStart: 'All fasteners started by hand',
  outcome: {
    id: 'Answer',
    text: 'What is said then',
    then: 'Then',
    thens: { 'go on': 'go on', stay: 'stay' },
    /** The texts of a new check. */
    affirm: 'Go on.',
    negative: 'Stay here and put it right.',
  },
  hold: { orientation: 'Orientation', everySeconds: 'Said every … seconds' },
  measure: {
    what: 'What is measured',
    unit: 'Unit',
    atLeast: 'At least',
    atMost: 'At most',
    belowZero: 'The scale goes below zero',
    waitMinutes: 'After a wait of … minutes',
  },
  inspection: {
    what: 'What the second person looks at',
    independent: 'By somebody who took no part in the work',
  },
  seal: {
    name: 'Seal',
    is: 'is',
    states: { inspected: 'inspected', lubricated: 'lubricated', seated: 'seated', discarded: 'discarded' },
  },
  hazard: {
    signal: 'Signal word',
    signals: { danger: 'danger', warning: 'warning', caution: 'caution', notice: 'notice' },
    consequence: 'Harm to',
    consequences: { person: 'person', equipment: 'equipment' },
    text: 'Hazard',
  },
});
