import type { ProcedureFile } from '../../src/procedure/procedure.ts';

const newtonMetres = (value: string) => ({ value, unit: 'N·m' }) as const;

/** A job of three steps around three bolts, invented, for tests that listen in real time. */
export const smallProcedure: ProcedureFile = {
  format: 'bothhands-procedure',
  version: 1,
  id: 'small-cover',
  title: 'Small cover',
  invented: true,
  source: { document: 'Invented sheet 1', revision: 'A' },
  component: { name: 'Small cover', dryMass: { value: '2', unit: 'kg' } },
  tools: [
    {
      id: 'wrench',
      name: 'Indicating wrench, 5 to 60 N·m',
      type: 'indicating',
      range: { min: newtonMetres('5'), max: newtonMetres('60') },
      resolution: newtonMetres('0.5'),
      calibrationDue: '2031-03-31',
    },
  ],
  patterns: [
    {
      id: 'cover',
      name: 'Cover, three bolts',
      fastener: 'bolt',
      layout: { shape: 'ring', count: 3 },
      order: { kind: 'explicit', numbers: [1, 3, 2] },
    },
  ],
  steps: [
    { id: 'fit', kind: 'do', title: 'Fit', text: 'Fit the cover.' },
    {
      id: 'tighten',
      kind: 'tighten',
      title: 'Tighten',
      text: 'Tighten the bolts.',
      pattern: 'cover',
      tool: 'wrench',
      passes: [
        {
          kind: 'torque',
          name: 'final',
          target: newtonMetres('12'),
          window: { min: newtonMetres('11'), max: newtonMetres('13') },
        },
      ],
    },
    { id: 'look', kind: 'do', title: 'Look', text: 'Look at the cover.' },
  ],
};
