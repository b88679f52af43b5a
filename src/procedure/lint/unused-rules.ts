/** What the file describes and never uses: often a step was forgotten. */
import { lint } from '../../words/lint.ts';
import type { Procedure } from '../schema.ts';
import { type Rule, stepsOf } from './rule.ts';

const unused = (
  list: 'tools' | 'adapters' | 'seals' | 'conditions',
  what: Parameters<typeof lint.unused>[0],
  usedBy: (procedure: Procedure) => readonly (string | undefined)[],
): Rule => {
  return (procedure) => {
    const used = new Set(usedBy(procedure));
    return procedure[list].flatMap(({ id }, i) =>
      used.has(id) ? [] : [{ path: `${list}.${i}`, message: lint.unused(what, id) }],
    );
  };
};

export const toolNeverUsed = unused('tools', 'tool', (procedure) =>
  stepsOf(procedure, 'tighten').flatMap(({ step }) => [step.tool, step.runDown?.tool]),
);
export const adapterNeverUsed = unused('adapters', 'adapter', (procedure) =>
  stepsOf(procedure, 'tighten').map(({ step }) => step.adapter),
);
export const conditionNeverUsed = unused('conditions', 'condition', ({ steps }) =>
  steps.map(({ applies }) => applies?.condition),
);
export const sealNeverUsed = unused('seals', 'seal', (procedure) =>
  [...stepsOf(procedure, 'do'), ...stepsOf(procedure, 'check')].flatMap(({ step }) =>
    step.seals.map(({ seal }) => seal),
  ),
);
