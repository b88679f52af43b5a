import type { ProcedureFile } from '../../procedure/procedure.ts';

const newtonMetres = (value: string) => ({ value, unit: 'N·m' }) as const;

/** Two minutes of listening and answering. Nothing is worked on; all of it is invented. */
export const practiceProcedure: ProcedureFile = {
  format: 'bothhands-procedure',
  version: 1,
  id: 'practice',
  title: 'Practice, no work',
  invented: true,
  source: { document: 'Practice; no manual', revision: 'none' },
  component: { name: 'Plate that you imagine', dryMass: { value: '0.1', unit: 'kg' } },
  tools: [
    {
      id: 'wrench',
      name: 'Wrench that you imagine, 5 to 60 N·m',
      type: 'indicating',
      range: { min: newtonMetres('5'), max: newtonMetres('60') },
      resolution: newtonMetres('0.5'),
      calibrationDue: '2099-12-31',
    },
  ],
  patterns: [
    {
      id: 'plate',
      name: 'Plate that you imagine, one bolt',
      fastener: 'bolt',
      layout: { shape: 'ring', count: 1 },
      order: { kind: 'explicit', numbers: [1] },
    },
  ],
  steps: [
    {
      id: 'go-on',
      kind: 'do',
      title: 'Go on',
      text: 'This is practice: leave the tools where they are. Wait until it has spoken. Then say “next”.',
      say: 'Leave the tools where they are. Say: next.',
    },
    {
      id: 'reading',
      kind: 'tighten',
      title: 'Give a reading',
      text: 'A bolt is called with its value. Say what a wrench would show, digit by digit: “one two”. It is read back: say “affirm” where it was heard rightly, “negative” where not.',
      say: 'Say a reading: one two. When it is read back, say: affirm.',
      pattern: 'plate',
      tool: 'wrench',
      passes: [
        {
          kind: 'torque',
          name: 'practice',
          target: newtonMetres('12'),
          window: { min: newtonMetres('11'), max: newtonMetres('13') },
        },
      ],
    },
  ],
};
