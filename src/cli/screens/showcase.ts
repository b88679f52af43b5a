import type { ProcedureFile } from '../../procedure/procedure.ts';

const newtonMetres = (value: string) => ({ value, unit: 'N·m' }) as const;
const window = (min: string, max: string) => ({ min: newtonMetres(min), max: newtonMetres(max) });

/** A short job, invented, in which each main state of the work screen comes up once. */
export const showcase: ProcedureFile = {
  format: 'bothhands-procedure',
  version: 1,
  id: 'screens-showcase',
  title: 'Circulation pump of a winter garden',
  invented: true,
  source: { document: 'Invented sheet 7', revision: 'B' },
  component: { name: 'Circulation pump', dryMass: { value: '14', unit: 'kg' } },
  openings: [
    { id: 'inlet', name: 'inlet port', closure: 'cap' },
    { id: 'outlet', name: 'outlet port', closure: 'cap' },
  ],
  tools: [
    {
      id: 'wrench',
      name: 'Indicating wrench, 5 to 60 N·m',
      type: 'indicating',
      range: window('5', '60'),
      resolution: newtonMetres('0.5'),
      calibrationDue: '2099-12-31',
    },
  ],
  patterns: [
    {
      id: 'ring',
      name: 'Pump on its ring, ten studs',
      fastener: 'stud',
      layout: { shape: 'ring', count: 10 },
      order: { kind: 'explicit', numbers: [10, 5, 3, 8, 1, 6, 4, 9, 2, 7] },
    },
    {
      id: 'flange',
      name: 'Flange, three bolts',
      fastener: 'bolt',
      layout: { shape: 'ring', count: 3 },
      order: { kind: 'explicit', numbers: [2, 1, 3] },
    },
  ],
  signatures: ['mechanic'],
  steps: [
    {
      id: 'drain',
      kind: 'do',
      title: 'Drain the housing',
      text: 'Open the drain below the pump and let it run into the pan until it only drips.',
      hazards: [
        {
          signal: 'warning',
          consequence: 'person',
          text: 'The water can be hot. Wait until the housing can be touched with a bare hand.',
        },
        { signal: 'caution', consequence: 'equipment', text: 'Keep the water away from the motor.' },
        { signal: 'notice', consequence: 'equipment', text: 'Twelve litres run out.' },
      ],
      notes: ['The drain key hangs at the door.'],
    },
    { id: 'open-inlet', kind: 'open', title: 'Inlet', text: 'Take the inlet hose off.', opening: 'inlet' },
    {
      id: 'look',
      kind: 'check',
      title: 'Impeller',
      text: 'Turn the impeller by hand. It turns freely and does not touch the housing.',
      outcomes: [
        { id: 'free', text: 'It turns freely.', then: 'go on' },
        { id: 'rubs', text: 'It rubs or stands. Clean it, and look again.', then: 'stay' },
      ],
    },
    {
      id: 'carry',
      kind: 'hold',
      title: 'Take the pump off',
      text: 'Two people take the pump straight off the studs.',
      hazards: [{ signal: 'danger', consequence: 'person', text: 'Nobody stands below the pump.' }],
      orientation: 'ports up',
      calls: ['Straight off', 'Two steps back', 'Down on the stand'],
    },
    {
      id: 'tighten',
      kind: 'tighten',
      title: 'Tighten the ring',
      text: 'Tighten the studs crosswise.',
      pattern: 'ring',
      tool: 'wrench',
      passes: [{ kind: 'torque', name: 'final', target: newtonMetres('24.5'), window: window('23', '26') }],
      onDeviation: [{ what: 'damage', text: 'Replace the stud before the pump is run.' }],
    },
    {
      id: 'witnessed',
      kind: 'tighten',
      title: 'Flange, with the second person',
      text: 'Tighten the flange; the second person reads too.',
      pattern: 'flange',
      tool: 'wrench',
      confirm: 'witness each',
      passes: [{ kind: 'torque', name: 'final', target: newtonMetres('24.5'), window: window('23', '26') }],
    },
    { id: 'close-inlet', kind: 'close', title: 'Inlet', text: 'Put the inlet hose on again.', opening: 'inlet' },
    {
      id: 'level',
      kind: 'measure',
      title: 'Level',
      text: 'Read the level at the glass, the pump standing.',
      what: 'water level',
      unit: 'mm',
      window: { min: '40', max: '60' },
    },
  ],
};
