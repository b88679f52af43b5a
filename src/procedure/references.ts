/** Names within a procedure: each given once, and every pointer leads to something. */
import { procedureFile } from '../words/procedure-file.ts';
import { shown, type Fault } from './fault.ts';
import type { Procedure } from './schema.ts';
import type { Step, StepOf } from './steps.ts';

type Named = { readonly id: string };
type List = 'conditions' | 'openings' | 'tools' | 'adapters' | 'seals' | 'consumables' | 'patterns';

/** Every id that is given twice, and every pointer to nothing. */
export function referenceFaults(procedure: Procedure): Fault[] {
  const { conditions, openings, tools, adapters, seals, consumables, patterns, steps } = procedure;
  const lists = { conditions, openings, tools, adapters, seals, consumables, patterns, steps };
  return [
    ...Object.entries(lists).flatMap(([name, list]) => twins(name, list)),
    ...steps.flatMap((step, i) => (step.kind === 'check' ? outcomeTwins(step, `steps.${i}.outcomes`) : [])),
    ...pointersOf(procedure).flatMap((pointer) => dangling(procedure, pointer)),
  ];
}

function twins(path: string, list: readonly Named[]): Fault[] {
  return list.flatMap(({ id }, i) => {
    const first = list.findIndex((other) => other.id === id);
    return first === i
      ? []
      : [{ path: `${path}.${i}.id`, message: procedureFile.idTwice(shown(id), `${path}.${first}`) }];
  });
}

/** Two outcomes that are said alike could not be told apart. */
function outcomeTwins({ outcomes }: StepOf<'check'>, path: string): Fault[] {
  const saidBy = new Map<string, number>();
  const faults = twins(path, outcomes);
  for (const [i, { id, say }] of outcomes.entries()) {
    for (const [j, saying] of (say ?? [id]).entries()) {
      const first = saidBy.get(saying.toLowerCase());
      if (first === undefined) saidBy.set(saying.toLowerCase(), i);
      else if (first !== i && outcomes[first]?.id !== id) {
        const at = say === undefined ? 'id' : `say.${j}`;
        faults.push({
          path: `${path}.${i}.${at}`,
          message: procedureFile.saidTwice(shown(saying), first),
        });
      }
    }
  }
  return faults;
}

interface Pointer {
  readonly path: string;
  readonly to: List;
  readonly id: string;
}

function pointersOf({ seals, patterns, steps }: Procedure): Pointer[] {
  return [
    ...seals.flatMap(({ coatedFrom, replacedBy }, i) => [
      ...pointer(`seals.${i}.coatedFrom`, 'consumables', coatedFrom),
      ...pointer(`seals.${i}.replacedBy`, 'consumables', replacedBy),
    ]),
    ...patterns.flatMap(({ seal }, i) => pointer(`patterns.${i}.seal`, 'seals', seal)),
    ...steps.flatMap((step, i) => [
      ...pointer(`steps.${i}.applies.condition`, 'conditions', step.applies?.condition),
      ...stepPointers(step, `steps.${i}`),
    ]),
  ];
}

function stepPointers(step: Step, path: string): Pointer[] {
  switch (step.kind) {
    case 'do':
      return [
        ...sealPointers(step, path),
        ...step.opens.flatMap((id, i) => pointer(`${path}.opens.${i}`, 'openings', id)),
        ...step.closes.flatMap((id, i) => pointer(`${path}.closes.${i}`, 'openings', id)),
        ...step.handStart.flatMap((id, i) => pointer(`${path}.handStart.${i}`, 'patterns', id)),
      ];
    case 'check':
      return sealPointers(step, path);
    case 'open':
    case 'close':
      return pointer(`${path}.opening`, 'openings', step.opening);
    case 'loosen':
      return pointer(`${path}.pattern`, 'patterns', step.pattern);
    case 'tighten':
      return [
        ...pointer(`${path}.pattern`, 'patterns', step.pattern),
        ...pointer(`${path}.tool`, 'tools', step.tool),
        ...pointer(`${path}.adapter`, 'adapters', step.adapter),
        ...pointer(`${path}.runDown.tool`, 'tools', step.runDown?.tool),
      ];
    case 'hold':
    case 'measure':
    case 'witness':
    case 'note':
      return [];
  }
}

const sealPointers = ({ seals }: StepOf<'do' | 'check'>, path: string): Pointer[] =>
  seals.flatMap(({ seal }, i) => pointer(`${path}.seals.${i}.seal`, 'seals', seal));

const pointer = (path: string, to: List, id: string | undefined): Pointer[] =>
  id === undefined ? [] : [{ path, to, id }];

function dangling(procedure: Procedure, { path, to, id }: Pointer): Fault[] {
  const known = procedure[to].map((item) => item.id);
  if (known.includes(id)) return [];
  const found = shown(id);
  const message =
    known.length === 0 ? procedureFile.noneToPointTo(found, to) : procedureFile.pointsToNothing(found, to, known);
  return [{ path, message }];
}
