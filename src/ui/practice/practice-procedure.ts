import type { ProcedureFile } from '../../procedure/procedure.ts';
import { practice } from '../../words/practice.ts';

const newtonMetres = (value: string) => ({ value, unit: 'N·m' }) as const;

const range = { min: newtonMetres('5'), max: newtonMetres('60') };

/**
 * Two minutes of listening and answering. Nothing is worked on; all of it is invented. Its window is the whole scale: a value
 * outside would have to be decided about, by others.
 */
export const practiceProcedure = (): ProcedureFile => ({
  format: 'bothhands-procedure',
  version: 1,
  id: 'practice',
  title: practice.title,
  invented: true,
  source: { document: practice.source, revision: practice.noRevision },
  component: { name: practice.plate, dryMass: { value: '0.1', unit: 'kg' } },
  tools: [
    {
      id: 'wrench',
      name: practice.wrench,
      type: 'indicating',
      range,
      resolution: newtonMetres('0.5'),
      calibrationDue: '2099-12-31',
    },
  ],
  patterns: [
    {
      id: 'plate',
      name: practice.pattern,
      fastener: 'bolt',
      layout: { shape: 'ring', count: 1 },
      order: { kind: 'explicit', numbers: [1] },
    },
  ],
  steps: [
    {
      id: 'go-on',
      kind: 'do',
      ...practice.goOn,
    },
    {
      id: 'reading',
      kind: 'tighten',
      ...practice.reading,
      pattern: 'plate',
      tool: 'wrench',
      passes: [
        {
          kind: 'torque',
          name: practice.pass,
          target: newtonMetres('12'),
          window: range,
        },
      ],
    },
  ],
});
